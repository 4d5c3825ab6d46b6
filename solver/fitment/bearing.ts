/**
 * The wheel bearing's side of a change of wheel: how far the wheel's centre plane, where the ground's push acts, stands from
 * the bearing's middle. Common practice, no source, and no check of strength.
 */

/** How far inboard of the hub face a bearing's middle is taken to lie where it was not measured, mm. Common practice, no source. */
export const USUAL_BEARING = 60;

/** Shorter levers than this, mm, give no meaningful percentage: the push acts all but through the bearing's middle. */
const SHORTEST_LEVER = 5;

export interface BearingChange {
  /** Lever from the bearing's middle to the wheel centre plane before and after, mm, positive outboard. */
  readonly before: number;
  readonly after: number;
  /** Change of the lever's size, mm and per cent; the percentage is null where the lever before is next to nothing. */
  readonly change: number;
  readonly percent: number | null;
}

/** @param present and `fitted`: wheel centre planes from the hub face, mm; @param bearing the middle's distance inboard of it. */
export function bearingChange(present: number, fitted: number, bearing: number): BearingChange {
  const before = present + bearing;
  const after = fitted + bearing;
  const change = Math.abs(after) - Math.abs(before);
  const percent = Math.abs(before) < SHORTEST_LEVER ? null : (100 * change) / Math.abs(before);
  return { before, after, change, percent };
}
