/** The places inside a closed outline that are farthest from it. */
import { isConvex } from './depth.ts';
import type { Section } from './section.ts';

export interface Deepest {
  readonly s: number;
  readonly radius: number;
  readonly depth: number;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Where a search ends, mm. */
const CLOSE = 1e-4;
/** Windows each way that an outline which is not convex is looked through by. */
const WINDOWS = 10;

/** Depth of (s, ρ) inside the outline; negative outside. */
function depthOf(line: Float64Array, s: number, radius: number): number {
  let squared = Number.POSITIVE_INFINITY;
  let inside = false;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const s0 = line[at]!;
    const r0 = line[at + 1]!;
    const es = line[at + 2]! - s0;
    const er = line[at + 3]! - r0;
    const foot = ((s - s0) * es + (radius - r0) * er) / (es * es + er * er || 1);
    const t = Math.min(1, Math.max(0, foot));
    squared = Math.min(squared, (s - s0 - t * es) ** 2 + (radius - r0 - t * er) ** 2);
    if (r0 > radius !== r0 + er > radius && s < s0 + ((radius - r0) / er) * es) inside = !inside;
  }
  return inside ? Math.sqrt(squared) : -Math.sqrt(squared);
}

/** Where a function that rises to one height between two ends is highest. */
function highest(from: number, to: number, of: (x: number) => number): number {
  let low = from;
  let high = to;
  while (high - low > CLOSE) {
    const a = high - GOLDEN * (high - low);
    const b = low + GOLDEN * (high - low);
    if (of(a) >= of(b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

function deepestWithin(
  line: Float64Array,
  [s0, s1]: readonly [number, number],
  [r0, r1]: readonly [number, number],
): Deepest {
  const radiusAt = (s: number): number => highest(r0, r1, (radius) => depthOf(line, s, radius));
  const s = highest(s0, s1, (at) => depthOf(line, at, radiusAt(at)));
  const radius = radiusAt(s);
  return { s, radius, depth: depthOf(line, s, radius) };
}

function deepestPlaces(line: Float64Array): Deepest[] {
  const along = line.filter((_, i) => i % 2 === 0);
  const radii = line.filter((_, i) => i % 2 === 1);
  const count = isConvex(line) ? 1 : WINDOWS;
  const windows = (values: Float64Array): readonly (readonly [number, number])[] => {
    const low = Math.min(...values);
    const step = (Math.max(...values) - low) / count;
    return Array.from({ length: count }, (_, i) => [low + i * step, low + (i + 1) * step] as const);
  };
  return windows(along)
    .flatMap((s) => windows(radii).map((radius) => deepestWithin(line, s, radius)))
    .filter(({ depth }) => depth > 0)
    .sort((a, b) => b.depth - a.depth);
}

const _known = new WeakMap<Section, readonly Deepest[]>();

/**
 * The deepest places of a solid section, deepest first, worked out once. A convex one has a single depth, exact to
 * 1e-4 mm; of others the deepest place of every window is given, since each hollow may have its own. Of a thin section,
 * which has no depth, its first point.
 */
export function placesOf(section: Section): readonly Deepest[] {
  const known = _known.get(section);
  if (known !== undefined) return known;
  const { line, solid } = section;
  const places = solid ? deepestPlaces(line) : [{ s: line[0]!, radius: line[1]!, depth: 0 }];
  _known.set(section, places);
  return places;
}
