/** How good a place is, in bands of the wanted limit: their edges, their words and their colours. */
import type { Theme } from '../../state/view.ts';

/** Upper edges of the bands, in limits; above the last it is worse still. */
export const EDGES: readonly number[] = [1, 2, 4, 8];

/**
 * Colours of the bands from the good one on. Blue against yellow, darker or paler step by step, so that no pair is told
 * apart by red and green; the good one is dotted besides.
 */
const COLOURS: Readonly<Record<Theme, readonly string[]>> = {
  light: ['#9fd0df', '#f1ead9', '#e2d4b4', '#cdb98c', '#b19b6b'],
  dark: ['#1d6579', '#39352a', '#4a432f', '#5e5335', '#76673d'],
};

export function bandColours(theme: Theme): readonly string[] {
  return COLOURS[theme];
}

/** Which band a value lies in. */
export function bandOf(value: number, limit: number): number {
  const ratio = value / limit;
  const band = EDGES.findIndex((edge) => ratio <= edge);
  return band < 0 ? EDGES.length : band;
}

/** Share of the picture's places that are within the limit, 0 to 1; null where there is none. */
export function shareWithin(values: Float64Array, limit: number): number | null {
  if (values.length === 0) return null;
  return values.reduce((count, value) => count + Number(value <= limit), 0) / values.length;
}
