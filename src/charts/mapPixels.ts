/** Paints a map's gaps into pixels: flat bands, hatched where parts touch, dotted below the wanted gap. */
import type { LockMap } from '../../solver/map.ts';
import { bandOf, type GapScale, type Rgb } from './gapColours.ts';

const LEVELS = 2048;

function packed([red, green, blue]: Rgb): number {
  return (255 << 24) | (blue << 16) | (green << 8) | red;
}

/** The pattern's colour on a ground: pale where parts touch, dark below the wanted gap. */
function patternInk([red, green, blue]: Rgb, isTouch: boolean): Rgb {
  const shade = (part: number): number => Math.round(isTouch ? part * 0.35 + 165 : part * 0.45);
  return [shade(red), shade(green), shade(blue)];
}

/** The two colours of every level of gap: ground and pattern. */
interface Palette {
  readonly low: number;
  readonly perLevel: number;
  readonly ground: Uint32Array;
  readonly mark: Uint32Array;
  /** Levels below are hatched, those from there to the second are dotted. */
  readonly touchLevel: number;
  readonly nearLevel: number;
}

function createPalette(scale: GapScale): Palette {
  const low = scale.edges[0]!;
  const high = scale.edges.at(-1)!;
  const perLevel = (high - low) / LEVELS;
  const ground = new Uint32Array(LEVELS);
  const mark = new Uint32Array(LEVELS);
  for (let i = 0; i < LEVELS; i += 1) {
    const gap = low + (i + 0.5) * perLevel;
    const colour = scale.colours[bandOf(scale, gap)]!;
    ground[i] = packed(colour);
    mark[i] = packed(patternInk(colour, gap < 0));
  }
  return {
    low,
    perLevel,
    ground,
    mark,
    touchLevel: -low / perLevel,
    nearLevel: (scale.wanted - low) / perLevel,
  };
}

/** For each pixel along an axis: the node below it and the share of the way to the next. */
function placesAlong(
  axis: Float64Array,
  pixels: number,
  isReversed: boolean,
): { cell: Int32Array; share: Float64Array } {
  const cell = new Int32Array(pixels);
  const share = new Float64Array(pixels);
  const least = axis[0]!;
  const most = axis.at(-1)!;
  const last = axis.length - 2;
  if (last < 0) return { cell, share };
  let at = 0;
  for (let i = 0; i < pixels; i += 1) {
    const value = least + ((i + 0.5) / pixels) * (most - least);
    while (at < last && value > axis[at + 1]!) at += 1;
    const to = isReversed ? pixels - 1 - i : i;
    cell[to] = at;
    share[to] = (value - axis[at]!) / (axis[at + 1]! - axis[at]!);
  }
  return { cell, share };
}

/** Sizes of the patterns, in the picture's pixels. */
interface Pattern {
  readonly hatch: number;
  readonly hatchWidth: number;
  readonly dots: number;
  readonly dotSize: number;
}

function patternOf(dot: number): Pattern {
  return {
    hatch: Math.round(6 * dot),
    hatchWidth: Math.max(1, Math.round(1.6 * dot)),
    dots: Math.round(7 * dot),
    dotSize: Math.max(1, Math.round(1.6 * dot)),
  };
}

/** Whether a pixel at this level of gap is part of its pattern. */
function isMarked(
  level: number,
  palette: Palette,
  pattern: Pattern,
  x: number,
  y: number,
): boolean {
  if (level <= palette.touchLevel) return (x + y) % pattern.hatch < pattern.hatchWidth;
  if (level >= palette.nearLevel) return false;
  const { dots, dotSize } = pattern;
  const shift = Math.floor(y / dots) % 2 === 0 ? 0 : dots >> 1;
  return y % dots < dotSize && (x + shift) % dots < dotSize;
}

/**
 * Fills an RGBA picture of the map, bump up.
 * @param sense −1 when rack grows to the left of the picture.
 * @param dot size of a CSS pixel in the picture's, so that patterns keep their size on fine screens.
 */
export function paintGaps(
  map: LockMap,
  scale: GapScale,
  sense: 1 | -1,
  picture: { readonly width: number; readonly height: number; readonly data: Uint8ClampedArray },
  dot: number,
): void {
  const { width, height } = picture;
  const pixels = new Uint32Array(picture.data.buffer);
  const palette = createPalette(scale);
  const pattern = patternOf(dot);
  const { gap } = map;
  const columns = map.racks.length;
  const across = placesAlong(map.racks, width, sense === -1);
  const up = placesAlong(map.travels, height, true);
  const nextColumn = columns > 1 ? 1 : 0;
  const nextRow = map.travels.length > 1 ? columns : 0;
  for (let y = 0; y < height; y += 1) {
    const row = up.cell[y]! * columns;
    const v = up.share[y]!;
    for (let x = 0; x < width; x += 1) {
      const node = row + across.cell[x]!;
      const u = across.share[x]!;
      const below = gap[node]! * (1 - u) + gap[node + nextColumn]! * u;
      const above = gap[node + nextRow]! * (1 - u) + gap[node + nextRow + nextColumn]! * u;
      const exact = (below * (1 - v) + above * v - palette.low) / palette.perLevel;
      const level = Math.max(0, Math.min(LEVELS - 1, exact | 0));
      const shades = isMarked(exact, palette, pattern, x, y) ? palette.mark : palette.ground;
      pixels[y * width + x] = shades[level]!;
    }
  }
}
