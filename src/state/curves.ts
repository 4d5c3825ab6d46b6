/**
 * Every measure over the whole travel at the present rack, for the small curves. Swept at most once a frame, and only
 * when a curve asks; the buffers are filled again and again.
 */
import { createSweep, type Sweep, sweepInto } from '../../solver/sweep.ts';
import type { BesidePosed, BesideStore } from './beside.ts';
import type { Inputs } from './inputs.ts';
import { travelRange } from './inputs.ts';
import type { Posed, PosedStore } from './posed.ts';

/** Poses of a curve over travel. */
export const CURVE_POSES = 101;

/** The curves of a design beside the present one, over as much of the present one's travel as its own goes. */
export interface BesideCurves {
  readonly design: BesidePosed;
  readonly sweep: Sweep;
}

export interface Curves {
  readonly present: Sweep;
  readonly beside: readonly BesideCurves[];
}

export type CurveStore = ReturnType<typeof createCurves>;

export function createCurves(posed: PosedStore, inputs: Inputs, besideStore: BesideStore) {
  const present = createSweep(CURVE_POSES);
  /** Made when they are first needed, and kept. */
  const sweeps: Sweep[] = [];
  let curves: Curves = { present, beside: [] };
  let version = 0;
  let corner: Posed['corner'] | null = null;
  let designs: readonly BesidePosed[] = [];
  let rack = Number.NaN;

  function sweepFor(place: number): Sweep {
    sweeps[place] ??= createSweep(CURVE_POSES);
    return sweeps[place];
  }

  function refresh(): void {
    const now = posed.current().corner;
    const beside = besideStore.current();
    const { rack: rackNow } = inputs.getState();
    if (now === corner && beside === designs && rackNow === rack) return;
    if (beside !== designs) {
      curves = { present, beside: beside.map((design, i) => ({ design, sweep: sweepFor(i) })) };
    }
    corner = now;
    designs = beside;
    rack = rackNow;
    version += 1;
    const range = travelRange(now.model);
    sweepInto(now, null, present, 'travel', range, rack);
    for (let i = 0; i < curves.beside.length; i += 1) {
      const { design, sweep } = curves.beside[i]!;
      const { corner: other } = design.posed;
      sweepInto(other, null, sweep, 'travel', range, rack, travelRange(other.model));
    }
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
