/** The place inside a closed outline that is farthest from it. */
import { isConvex } from './depth.ts';

export interface Deepest {
  readonly s: number;
  readonly radius: number;
  readonly depth: number;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Where a search ends, mm. */
const CLOSE = 1e-4;
/** Windows each way that an outline which is not convex is looked through by. */
const WINDOWS = 6;

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

const _known = new WeakMap<Float64Array, Deepest>();

/**
 * The deepest place of a closed outline [s, ρ, …], worked out once: exact to 1e-4 mm of a convex one, in which depth has
 * one height; of others the deepest that is found window by window.
 */
export function deepestPoint(line: Float64Array): Deepest {
  const known = _known.get(line);
  if (known !== undefined) return known;
  const along = line.filter((_, i) => i % 2 === 0);
  const radii = line.filter((_, i) => i % 2 === 1);
  const count = isConvex(line) ? 1 : WINDOWS;
  const windows = (values: Float64Array): readonly (readonly [number, number])[] => {
    const low = Math.min(...values);
    const step = (Math.max(...values) - low) / count;
    return Array.from({ length: count }, (_, i) => [low + i * step, low + (i + 1) * step] as const);
  };
  const deepest = windows(along)
    .flatMap((s) => windows(radii).map((radius) => deepestWithin(line, s, radius)))
    .reduce((best, found) => (found.depth > best.depth ? found : best));
  _known.set(line, deepest);
  return deepest;
}
