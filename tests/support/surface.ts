/** What tests ask of a drawn surface: is it closed, which way does it face, how large is it. */
import type { Solid } from '../../src/scene/geometry/solid.ts';

/** Positions nearer than this, mm, are one point. */
const SAME = 1e-4;

function pointKey({ positions }: Solid, index: number): string {
  return [0, 1, 2].map((k) => Math.round(positions[3 * index + k]! / SAME)).join(',');
}

/** Edges that are not run through equally often both ways, triangles without area left out: none on a closed surface. */
export function openEdges(...solids: readonly Solid[]): number {
  const balance = new Map<string, number>();
  for (const solid of solids) {
    for (let i = 0; i < solid.indices.length; i += 3) {
      const corners = [0, 1, 2].map((k) => pointKey(solid, solid.indices[i + k]!));
      if (new Set(corners).size < 3) continue;
      corners.forEach((from, k) => {
        const to = corners[(k + 1) % 3]!;
        const [key, way] = from < to ? [`${from} ${to}`, 1] : [`${to} ${from}`, -1];
        balance.set(key, (balance.get(key) ?? 0) + way);
      });
    }
  }
  return [...balance.values()].filter((count) => count !== 0).length;
}

/** Volume inside closed surfaces, mm³; negative when they face inwards. Sum of a·(b × c)/6 over all triangles. */
export function volume(...solids: readonly Solid[]): number {
  let sum = 0;
  for (const { positions, indices } of solids) {
    for (let i = 0; i < indices.length; i += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => 3 * indices[i + k]!) as [number, number, number];
      const p = (at: number, k: number): number => positions[at + k]!;
      sum +=
        p(a, 0) * (p(b, 1) * p(c, 2) - p(b, 2) * p(c, 1)) +
        p(a, 1) * (p(b, 2) * p(c, 0) - p(b, 0) * p(c, 2)) +
        p(a, 2) * (p(b, 0) * p(c, 1) - p(b, 1) * p(c, 0));
    }
  }
  return sum / 6;
}

/** Least distance from (s, ρ) to a polyline [s, ρ, s, ρ, …]. */
export function distanceToLine(s: number, radius: number, line: ArrayLike<number>): number {
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const ds = line[at + 2]! - line[at]!;
    const dr = line[at + 3]! - line[at + 1]!;
    const foot = ((s - line[at]!) * ds + (radius - line[at + 1]!) * dr) / (ds * ds + dr * dr || 1);
    const t = Math.min(1, Math.max(0, foot));
    least = Math.min(least, Math.hypot(s - line[at]! - t * ds, radius - line[at + 1]! - t * dr));
  }
  return least;
}
