/** Whether a rim's width is one that makers allow under a tyre. */
import type { TyreDimensions } from '../model/tyre.ts';

/**
 * Narrowest and widest rim as parts of the nominal section width, over all sizes of one maker's published table (seen in the
 * source): metric from 7.5 in under 295 mm to 10.5 in under 285 mm, flotation from 8.5 in under 13.50 to 11 in under 12.50.
 * Each size has a narrower range of its own, which only its maker knows.
 */
export const RIM_PARTS = {
  metric: [0.645, 0.936],
  flotation: [0.629, 0.881],
} as const;

export interface RimFit {
  /** Rim width over nominal section width. */
  readonly part: number;
  /** Narrower or wider than any in the table; within it; null where the tyre's dimensions were measured, not nominal. */
  readonly verdict: 'narrow' | 'within' | 'wide' | null;
}

/** @param rimWidth and `nominalWidth` (the width in the size) in mm. */
export function rimFit(
  form: TyreDimensions['form'],
  rimWidth: number,
  nominalWidth: number,
): RimFit {
  const part = rimWidth / nominalWidth;
  if (form === 'stated') return { part, verdict: null };
  const [narrowest, widest] = RIM_PARTS[form];
  if (part < narrowest) return { part, verdict: 'narrow' };
  return { part, verdict: part > widest ? 'wide' : 'within' };
}
