/**
 * A section of revolution made ready for questions in its (s, ρ) plane, and its distance from a point. Distances of a
 * solid section are signed, negative inside.
 */
import { placesOf } from '../../solver/clearance/deepest.ts';
import { isConvex } from '../../solver/clearance/depth.ts';
import type { Section } from '../../solver/index.ts';

export interface Outline {
  /** [s, ρ, s, ρ, …]; closed where the section is solid. */
  readonly line: Float64Array;
  readonly half: number;
  readonly solid: boolean;
  /**
   * Half-planes [ns, nρ, c] that together hold the section's convex hull: ns·s + nρ·ρ − c, the greatest of all, is a
   * lower bound of the signed distance to the hull, and so to the section. None for a thin section.
   */
  readonly hull: Float64Array;
  /** Least and greatest s, least and greatest ρ. */
  readonly frame: readonly [number, number, number, number];
  /** No point has a smaller signed distance. */
  readonly floor: number;
}

/** Twice the area of the triangle o, a, b: positive where it turns left. */
function turnOf(o: readonly number[], a: readonly number[], b: readonly number[]): number {
  return (a[0]! - o[0]!) * (b[1]! - o[1]!) - (a[1]! - o[1]!) * (b[0]! - o[0]!);
}

/** Corners of the convex hull, turning left. */
function hullOf(line: Float64Array): readonly (readonly number[])[] {
  const points = Array.from({ length: line.length / 2 }, (_, i) => [
    line[2 * i]!,
    line[2 * i + 1]!,
  ]).sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]!);
  const side = (sorted: readonly number[][]): number[][] => {
    const kept: number[][] = [];
    for (const point of sorted) {
      while (kept.length > 1 && turnOf(kept.at(-2)!, kept.at(-1)!, point) <= 0) kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...side(points), ...side(points.slice().reverse())];
}

/** How far below the deepest place of a convex solid nothing can be, mm: that place is found to a ten thousandth. */
const DEEPEST_ROUNDING = 2e-4;

function floorOf(section: Section): number {
  const { line, half, solid } = section;
  if (!solid) return -half;
  const depth = isConvex(line) ? placesOf(section)[0]?.depth : undefined;
  return depth === undefined ? Number.NEGATIVE_INFINITY : -depth - DEEPEST_ROUNDING - half;
}

export function outlineOf(section: Section): Outline {
  const { line, half, solid } = section;
  const corners = solid ? hullOf(line) : [];
  const hull = corners.flatMap((corner, i) => {
    const next = corners[(i + 1) % corners.length]!;
    const [es, er] = [next[0]! - corner[0]!, next[1]! - corner[1]!];
    const size = Math.hypot(es, er);
    const [ns, nr] = [er / size, -es / size];
    return size > 0 ? [ns, nr, ns * corner[0]! + nr * corner[1]!] : [];
  });
  const [along, radii] = [0, 1].map((from) => line.filter((_, i) => i % 2 === from));
  const frame = [
    Math.min(...along!),
    Math.max(...along!),
    Math.min(...radii!),
    Math.max(...radii!),
  ] as const;
  return { line, half, solid, hull: Float64Array.from(hull), frame, floor: floorOf(section) };
}

/** The section's point last found nearest by `apartFrom`. */
export const foot = { s: 0.5, radius: 0.5 };

/** Distance of (s, ρ) to the section's line, never negative; its nearest point is left in `foot`. */
export function apartFrom({ line }: Outline, s: number, radius: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const s0 = line[at]!;
    const r0 = line[at + 1]!;
    const es = line[at + 2]! - s0;
    const er = line[at + 3]! - r0;
    const along = ((s - s0) * es + (radius - r0) * er) / (es * es + er * er || 1);
    const t = Math.min(1, Math.max(0, along));
    const ds = s - s0 - t * es;
    const dr = radius - r0 - t * er;
    const squared = ds * ds + dr * dr;
    if (squared < least) {
      least = squared;
      foot.s = s0 + t * es;
      foot.radius = r0 + t * er;
    }
  }
  return Math.sqrt(least);
}

/** Whether (s, ρ) lies inside a solid section: even-odd rule. */
export function isWithin({ line, solid }: Outline, s: number, radius: number): boolean {
  if (!solid) return false;
  let inside = false;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const r0 = line[at + 1]!;
    const r1 = line[at + 3]!;
    if (r0 > radius === r1 > radius) continue;
    const cross = line[at]! + ((radius - r0) / (r1 - r0)) * (line[at + 2]! - line[at]!);
    if (s < cross) inside = !inside;
  }
  return inside;
}

/** Signed distance of (s, ρ) to the section's surface: less its half thickness, negative inside a solid. */
export function signedApart(outline: Outline, s: number, radius: number): number {
  const apart = apartFrom(outline, s, radius);
  return (isWithin(outline, s, radius) ? -apart : apart) - outline.half;
}

const _outlines = new WeakMap<Section, Outline>();

/** The outline of a section, made once. */
export function outlineFor(section: Section): Outline {
  const known = _outlines.get(section);
  if (known !== undefined) return known;
  const made = outlineOf(section);
  _outlines.set(section, made);
  return made;
}
