/** The tie rod laid flat: its centreline from the inner joint to the outer, its bends, its lengths. */
import { frameFrom, pointInFrame } from '../linkage/frames.ts';
import { distance, subtract, type Vector3 } from '../math/vec3.ts';
import { tieRodChange, tieRodDiameter, tieRodStudAxis } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { bendsOf, type Run, runLength, type TubeBend } from './tube.ts';

/**
 * The rod in its own frame, mm: x from the inner joint to the outer, y towards the outer joint's stud, z normal to both.
 * The origin is the inner joint. Design pose, without turns of the adjuster.
 */
export interface RodFigure {
  readonly run: Run;
  /** Joint to joint, straight, mm: as measured, and with the turns of the adjuster that are set. */
  readonly straight: number;
  readonly set: number;
  /** Along the centreline, mm. */
  readonly length: number;
  readonly bends: readonly TubeBend[];
  /** [distance from the outer joint, diameter from there on], mm. */
  readonly profile: readonly (readonly [number, number])[];
}

/** The tie rod of a sound model, laid flat. */
export function rodFigure({ tieRod }: Model): RodFigure {
  const { inner, outer } = tieRod;
  const frame = frameFrom(inner, subtract(outer, inner), tieRodStudAxis(tieRod));
  const lay = (point: Vector3): Vector3 => pointInFrame(frame, point);
  const run: Run = {
    points: [inner, ...(tieRod.bends ?? []), outer].map(lay),
    diameter: tieRodDiameter(tieRod),
  };
  const straight = distance(inner, outer);
  return {
    run,
    straight,
    set: straight + tieRodChange(tieRod),
    length: runLength(run),
    bends: bendsOf(run),
    profile: tieRod.profile ?? [],
  };
}
