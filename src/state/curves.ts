/**
 * Every measure over the whole travel at the present rack, for the small curves. Swept at most once a frame, and only
 * when a curve asks; the buffers are filled again and again.
 */
import { createSweep, type Sweep, sweepInto } from '../../solver/sweep.ts';
import type { Inputs } from './inputs.ts';
import { travelRange } from './inputs.ts';
import type { Posed, PosedStore } from './posed.ts';

/** Poses of a curve over travel. */
export const CURVE_POSES = 101;

export interface Curves {
  readonly present: Sweep;
  /** The held design over the same travel; null while none is held. */
  readonly held: Sweep | null;
}

export type CurveStore = ReturnType<typeof createCurves>;

export function createCurves(posed: PosedStore, inputs: Inputs) {
  const present = createSweep(CURVE_POSES);
  const held = createSweep(CURVE_POSES);
  const withoutHeld: Curves = { present, held: null };
  const withHeld: Curves = { present, held };
  let curves = withoutHeld;
  let version = 0;
  let corner: Posed['corner'] | null = null;
  let heldCorner: Posed['corner'] | null = null;
  let rack = Number.NaN;

  function refresh(): void {
    const now = posed.current().corner;
    const yesterday = posed.held()?.corner ?? null;
    const { rack: rackNow } = inputs.getState();
    if (now === corner && yesterday === heldCorner && rackNow === rack) return;
    corner = now;
    heldCorner = yesterday;
    rack = rackNow;
    version += 1;
    const range = travelRange(now.model);
    sweepInto(now, null, present, 'travel', range, rack);
    if (yesterday !== null) sweepInto(yesterday, null, held, 'travel', range, rack);
    curves = yesterday === null ? withoutHeld : withHeld;
  }

  return {
    /** The curves at the present rack: the same buffers every time. */
    current(): Curves {
      refresh();
      return curves;
    },
    /** Grows whenever the curves change; call `current` first. */
    version(): number {
      return version;
    },
  };
}
