/** What the swept tyre cuts: how near every fixed solid comes to it, where, and in which pose. */
import type { Corner } from '../corner.ts';
import type { Vector3 } from '../model/model.ts';
import { type SweptField, sweptDistance } from './field.ts';
import { type FixedSolid, fixedSolids } from './solids.ts';

export interface SweptGap {
  /** An obstacle's name, or a mount's in words. */
  readonly name: string;
  /** Least gap between solid and tyre over the sweep, mm; negative: how deep the solid lies in a posed tyre. */
  readonly gap: number;
  /** The least gap wanted there, mm. */
  readonly required: number;
  /** True where the gap is no deeper only because the solid reaches the middle of the tyre's section. */
  readonly isThrough: boolean;
  /** The solid's point that comes nearest or lies deepest, mm in vehicle axes. */
  readonly at: Vector3;
  /** The pose in which it does, mm. */
  readonly travel: number;
  readonly rack: number;
}

/** Accuracy of a gap, mm. */
const TOLERANCE = 0.1;
/** Spacing of the places on a line from which its least distance is sought, mm. */
const SPACING = 12;
/** Places along each edge of a box that are started from. */
const STARTS = 4;
const MOST_STEPS = 60;
const SMALLEST_STEP = 0.05;

type Keep = (place: Vector3) => Vector3;

function startsOnLine(points: readonly Vector3[]): { start: Vector3; keep: Keep }[] {
  const [first] = points;
  if (first === undefined) return [];
  if (points.length === 1) return [{ start: first, keep: () => first }];
  return points.slice(1).flatMap((b, i) => {
    const a = points[i]!;
    const d = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
    const squared = d[0] ** 2 + d[1] ** 2 + d[2] ** 2;
    const along = (t: number): Vector3 => [a[0] + t * d[0], a[1] + t * d[1], a[2] + t * d[2]];
    const keep: Keep = (p) => {
      const foot = (p[0] - a[0]) * d[0] + (p[1] - a[1]) * d[1] + (p[2] - a[2]) * d[2];
      return along(Math.max(0, Math.min(1, foot / (squared || 1))));
    };
    const count = Math.max(1, Math.ceil(Math.sqrt(squared) / SPACING));
    return Array.from({ length: count + 1 }, (_, k) => ({ start: along(k / count), keep }));
  });
}

function startsInBox(min: Vector3, max: Vector3): { start: Vector3; keep: Keep }[] {
  const keep: Keep = (p) => [
    Math.max(min[0], Math.min(max[0], p[0])),
    Math.max(min[1], Math.min(max[1], p[1])),
    Math.max(min[2], Math.min(max[2], p[2])),
  ];
  const last = STARTS - 1;
  const place = (i: number, k: number): number => min[i]! + ((max[i]! - min[i]!) * k) / last;
  return Array.from({ length: STARTS ** 3 }, (_, k) => ({
    start: [
      place(0, k % STARTS),
      place(1, Math.floor(k / STARTS) % STARTS),
      place(2, Math.floor(k / STARTS ** 2)),
    ] as const,
    keep,
  }));
}

interface Found {
  distance: number;
  at: Vector3;
  travel: number;
  rack: number;
}

function look(field: SweptField, at: Vector3): Found {
  sweptDistance(field, at[0], at[1], at[2], TOLERANCE);
  const { distance, travel, rack } = field.found;
  return { distance, at, travel, rack };
}

/** Follows the distance downhill within the solid from one place: ever smaller steps along the gradient. */
function descend(field: SweptField, from: Found, keep: Keep): Found {
  let best = from;
  let step = Math.max(8, Math.abs(from.distance) / 2);
  for (let count = 0; count < MOST_STEPS && step > SMALLEST_STEP; count += 1) {
    look(field, best.at);
    const { x, y, z } = field.found;
    const [px, py, pz] = best.at;
    const next = look(field, keep([px - step * x, py - step * y, pz - step * z]));
    if (next.distance < best.distance - 1e-6) best = next;
    else step /= 2;
  }
  return best;
}

/** How many of the best starts are followed downhill. */
const FOLLOWED = 4;

function gapOf(field: SweptField, solid: FixedSolid): SweptGap | null {
  const starts =
    solid.shape === 'line' ? startsOnLine(solid.points) : startsInBox(solid.min, solid.max);
  const radius = solid.shape === 'line' ? solid.radius : 0;
  const seen = starts
    .map(({ start, keep }) => ({ found: look(field, start), keep }))
    .sort((a, b) => a.found.distance - b.found.distance)
    .slice(0, FOLLOWED);
  const [best] = seen
    .map(({ found, keep }) => descend(field, found, keep))
    .sort((a, b) => a.distance - b.distance);
  if (best === undefined) return null;
  const { distance, at, travel, rack } = best;
  const isThrough = distance <= 1 - field.profile.depth;
  const { name, required } = solid;
  return { name, gap: distance - radius, required, isThrough, at, travel, rack };
}

/** The gaps of all fixed solids, the least first. */
export function sweptGaps(corner: Corner, field: SweptField): SweptGap[] {
  return fixedSolids(corner)
    .map((solid) => gapOf(field, solid))
    .filter((gap) => gap !== null)
    .sort((a, b) => a.gap - b.gap);
}
