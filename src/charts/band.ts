/** The band about a curve that 95 of 100 true curves lie in, point by point: two standard uncertainties either way. */
import type { Band } from '../../solver/index.ts';

/** Standard uncertainties that the band reaches out to, and the share it covers where errors are normal (JCGM 100, G.1). */
export const BAND_REACH = 2;
export const BAND_WORDS = 'band: two standard uncertainties, 95 %';

/** The standard uncertainty at a place on the axis, straight between the known places; NaN beyond them. */
export function spreadAt({ axis }: Band, column: Float64Array, place: number): number {
  const last = axis.length - 1;
  const part = ((place - axis[0]!) / (axis[last]! - axis[0]!)) * last;
  if (!(part >= -1e-9 && part <= last + 1e-9)) return Number.NaN;
  const before = Math.max(0, Math.min(last - 1, Math.floor(part)));
  const share = part - before;
  return column[before]! * (1 - share) + column[before + 1]! * share;
}

/** Lower and upper edge of a band at each place of a curve; refilled, never made anew. */
export interface BandEdges {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export function createBandEdges(count: number): BandEdges {
  return { low: new Float64Array(count), high: new Float64Array(count) };
}

/** Fills the edges about a curve's values; NaN where none is known. */
export function bandEdgesInto(
  { low, high }: BandEdges,
  band: Band,
  column: Float64Array,
  axis: Float64Array,
  values: Float64Array,
): void {
  for (let i = 0; i < axis.length; i += 1) {
    const reach = BAND_REACH * spreadAt(band, column, axis[i]!);
    low[i] = values[i]! - reach;
    high[i] = values[i]! + reach;
  }
}
