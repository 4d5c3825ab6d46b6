/**
 * Colours of the gap, in flat bands like depths on a sea chart: deep petrol where there is room, sand below the wanted
 * gap, vermilion where parts touch. Chosen to stay apart for colour-blind eyes; patterns say the same without colour.
 */
import type { LengthUnit, Theme } from '../state/view.ts';
import { fromShown, toShown } from '../words/format.ts';
import { roundStep } from './ticks.ts';

export type Rgb = readonly [number, number, number];

/** What a gap means. */
export type GapState = 'touch' | 'near' | 'clear';

interface Ramp {
  /** Deepest overlap shown, first touch; first touch from outside, just under the wanted gap; just over it, most room. */
  readonly touch: readonly [Rgb, Rgb];
  readonly near: readonly [Rgb, Rgb];
  readonly clear: readonly Rgb[];
}

const RAMPS: Readonly<Record<Theme, Ramp>> = {
  light: {
    touch: [
      [140, 32, 8],
      [214, 72, 38],
    ],
    near: [
      [240, 168, 58],
      [250, 226, 172],
    ],
    clear: [
      [206, 229, 233],
      [126, 182, 197],
      [46, 125, 151],
      [8, 76, 101],
    ],
  },
  dark: {
    touch: [
      [178, 52, 22],
      [255, 122, 85],
    ],
    near: [
      [246, 178, 66],
      [140, 102, 40],
    ],
    clear: [
      [84, 160, 182],
      [46, 115, 138],
      [24, 75, 95],
      [14, 47, 61],
    ],
  },
};

/** Bands between the edges; band i lies between edges i and i + 1. Gaps in mm. */
export interface GapScale {
  readonly wanted: number;
  readonly edges: readonly number[];
  readonly colours: readonly Rgb[];
  /** Edges over the wanted gap: the lines drawn thin on the map. */
  readonly lines: readonly number[];
}

/** Overlap at which the colour is deepest, mm. */
const DEEPEST = 16;
const MOST_CLEAR_BANDS = 6;
/** Least room over the wanted gap that the scale covers, mm: a flat map must not look dramatic. */
const LEAST_ROOM = 20;

function mix(from: Rgb, to: Rgb, share: number): Rgb {
  const part = (i: 0 | 1 | 2): number => Math.round(from[i] + (to[i] - from[i]) * share);
  return [part(0), part(1), part(2)];
}

function along(colours: readonly Rgb[], share: number): Rgb {
  const place = Math.min(1, Math.max(0, share)) * (colours.length - 1);
  const below = Math.min(colours.length - 2, Math.floor(place));
  return mix(colours[below]!, colours[below + 1]!, place - below);
}

export function gapState(gap: number, wanted: number): GapState {
  if (gap <= 0) return 'touch';
  return gap < wanted ? 'near' : 'clear';
}

/** Round edges over the wanted gap, in the unit shown; the scale's top follows the map in round steps. */
function clearEdges(wanted: number, most: number, unit: LengthUnit): number[] {
  const top = Math.max(most, wanted + LEAST_ROOM);
  const step = roundStep(toShown(top, unit) - toShown(wanted, unit), MOST_CLEAR_BANDS);
  const edges: number[] = [];
  const first = Math.floor(toShown(wanted, unit) / step + 0.25) + 1;
  for (let i = first; ; i += 1) {
    const edge = fromShown(i * step, unit);
    edges.push(edge);
    if (edge >= top) return edges;
  }
}

/** The scale for a wanted gap and the greatest gap on the map, mm. */
export function createGapScale(
  wanted: number,
  most: number,
  theme: Theme,
  unit: LengthUnit,
): GapScale {
  const ramp = RAMPS[theme];
  const clear = clearEdges(wanted, Number.isFinite(most) ? most : 0, unit);
  const touch = [-DEEPEST, -DEEPEST / 2];
  const near = wanted > 0 ? [0, wanted / 2] : [];
  const edges = [...touch, ...near, wanted, ...clear];
  const colours = edges.slice(0, -1).map((edge, i): Rgb => {
    const middle = (edge + edges[i + 1]!) / 2;
    if (middle < 0) return mix(ramp.touch[1], ramp.touch[0], -middle / DEEPEST);
    if (middle < wanted) return mix(ramp.near[0], ramp.near[1], middle / wanted);
    const count = clear.length;
    return along(ramp.clear, (i - touch.length - near.length) / Math.max(1, count - 1));
  });
  return { wanted, edges, colours, lines: clear.slice(0, -1) };
}

/** The band a gap falls in, the outermost ones open. */
export function bandOf({ edges }: GapScale, gap: number): number {
  let band = 0;
  while (band < edges.length - 2 && gap >= edges[band + 1]!) band += 1;
  return band;
}
