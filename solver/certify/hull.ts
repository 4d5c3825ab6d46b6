/**
 * Sections of revolution about the hub axis against a box fixed to the body, seen from the ground. For any direction n
 * the two are apart by at least n·W + min over the section's vertices of (s·c − ρ√(1 − c²)) less the box's farthest
 * corner along n, with c = n·a. The bracket is convex in c, so its tangent bounds it from below over a whole cell.
 */
import type { Section } from '../clearance/section.ts';
import { Slot } from '../linkage/slots.ts';
import type { Vector3 } from '../math/vec3.ts';
import type { Cell } from './cells.ts';
import { carriedPoint, carriedVector, type Motion } from './motion.ts';
import { dot, still, swing, type Taylor, type Triple, tripleAt } from './taylor.ts';

/** c² nearer to 1 than this leaves the tangent too steep to help. */
const STEEP = 1e-3;

/** The box's farthest corner along n. */
function farthest(min: Vector3, max: Vector3, n: Triple): number {
  return (
    Math.max(n.x * min[0], n.x * max[0]) +
    Math.max(n.y * min[1], n.y * max[1]) +
    Math.max(n.z * min[2], n.z * max[2])
  );
}

/** Bounds n·W + s·c − ρ√(1 − c²) for one vertex. */
function vertexBound(
  height: Taylor,
  lean: Taylor,
  axisSwing: number,
  s: number,
  radius: number,
): number {
  const sine = Math.sqrt(Math.max(0, 1 - lean.mid * lean.mid));
  const base = height.mid + s * lean.mid - radius * sine - height.rest;
  const plain =
    base -
    Math.abs(height.a + s * lean.a) -
    Math.abs(height.b + s * lean.b) -
    Math.abs(s) * lean.rest -
    radius * axisSwing;
  if (sine * sine < STEEP) return plain;
  const slope = s + (radius * lean.mid) / sine;
  const tangent =
    base -
    Math.abs(height.a + slope * lean.a) -
    Math.abs(height.b + slope * lean.b) -
    Math.abs(slope) * lean.rest;
  return Math.max(plain, tangent);
}

/** Bounds over the cell how far the sections' convex hull, thickened, stays above the ground along the unit direction n, mm. */
export function reachBound(
  cell: Cell & { readonly motion: Motion },
  sections: readonly Section[],
  n: Triple,
): number {
  const { knuckle } = cell.motion;
  const direction = still(n);
  const axis = carriedVector(knuckle, tripleAt(cell.pose, Slot.hubAxis));
  const height = dot(direction, carriedPoint(knuckle, tripleAt(cell.pose, Slot.centre)));
  const lean = dot(direction, axis);
  const axisSwing = swing(axis);
  let least = Number.POSITIVE_INFINITY;
  for (const { line, half } of sections) {
    for (let at = 0; at < line.length; at += 2) {
      const vertex = vertexBound(height, lean, axisSwing, line[at]!, line[at + 1]!);
      least = Math.min(least, vertex - half);
    }
  }
  return least;
}

/**
 * Bounds over the cell the gap between the sections' convex hull and a box along the unit direction n from the box
 * towards the sections, mm; it may be negative, which says nothing.
 */
export function hullBound(
  cell: Cell & { readonly motion: Motion },
  sections: readonly Section[],
  min: Vector3,
  max: Vector3,
  n: Triple,
): number {
  return reachBound(cell, sections, n) - farthest(min, max, n);
}
