/** A posed tyre seen from a point: how far it is, which way, and how near it can come within a cell of poses. */
import { Cell } from './cell.ts';
import type { PoseTree } from './poses.ts';
import { createNearest, type NearestOnProfile, type Profile, profileDistance } from './profile.ts';

/** A tyre and its poses. */
export interface Sweep {
  readonly profile: Profile;
  readonly poses: PoseTree;
}

/** Where `look` looks from, mm. */
export const point = { x: 0.5, y: 0.5, z: 0.5 };

/** What `look` saw of the section: signed distance, and its gradient there. */
export const near: NearestOnProfile = createNearest();

/** What else `look` saw. */
export const seen = {
  /** Gradient of the distance in vehicle axes. */
  x: 0.5,
  y: 0.5,
  z: 0.5,
  /** Distance of the point from the hub axis, and from the wheel centre. */
  radius: 0.5,
  apart: 0.5,
  /** How much the distance changes per half-size of the cell along travel and rack, and how far the tyre moves there. */
  changeA: 0.5,
  changeB: 0.5,
  moveA: 0.5,
  moveB: 0.5,
};

/** The point from the wheel centre, its part along the hub axis, and the axis: scratch of a look. */
const _from = { x: 0.5, y: 0.5, z: 0.5, s: 0.5, ax: 0.5, ay: 0.5, az: 0.5 };
const _along = { change: 0.5, move: 0.5 };

/** Writes where the point stands from the tyre at the place (a, b) of a cell. */
function stand(cells: Float64Array, at: number, a: number, b: number): void {
  const axis = at + Cell.axis;
  const ax = cells[axis]! + a * cells[axis + 3]! + b * cells[axis + 6]!;
  const ay = cells[axis + 1]! + a * cells[axis + 4]! + b * cells[axis + 7]!;
  const az = cells[axis + 2]! + a * cells[axis + 5]! + b * cells[axis + 8]!;
  const size = 1 / Math.sqrt(ax * ax + ay * ay + az * az);
  _from.ax = ax * size;
  _from.ay = ay * size;
  _from.az = az * size;
  _from.x = point.x - cells[at]! - a * cells[at + 3]! - b * cells[at + 6]!;
  _from.y = point.y - cells[at + 1]! - a * cells[at + 4]! - b * cells[at + 7]!;
  _from.z = point.z - cells[at + 2]! - a * cells[at + 5]! - b * cells[at + 8]!;
  _from.s = _from.x * _from.ax + _from.y * _from.ay + _from.z * _from.az;
}

/**
 * How the tyre moves at the point along one slope of the cell: where its centre moves by v and its axis turns by m, that
 * is v + (p·a)·m − (p·m)·a.
 */
function moveAlong(cells: Float64Array, centre: number, axis: number): void {
  const mx = cells[axis]!;
  const my = cells[axis + 1]!;
  const mz = cells[axis + 2]!;
  const { s } = _from;
  const m = _from.x * mx + _from.y * my + _from.z * mz;
  const ux = cells[centre]! + s * mx - m * _from.ax;
  const uy = cells[centre + 1]! + s * my - m * _from.ay;
  const uz = cells[centre + 2]! + s * mz - m * _from.az;
  _along.change = Math.abs(seen.x * ux + seen.y * uy + seen.z * uz);
  _along.move = Math.sqrt(ux * ux + uy * uy + uz * uz);
}

/** Looks at the tyre at the place (a, b) of a cell, both −1 to 1. Writes `near` and `seen`. */
export function look({ profile, poses }: Sweep, cell: number, a: number, b: number): void {
  const { cells } = poses;
  const at = cell * Cell.size;
  stand(cells, at, a, b);
  const { s } = _from;
  const rx = _from.x - s * _from.ax;
  const ry = _from.y - s * _from.ay;
  const rz = _from.z - s * _from.az;
  const radius = Math.sqrt(rx * rx + ry * ry + rz * rz);
  profileDistance(profile, s, radius, near);
  const turn = radius > 0 ? near.outward / radius : 0;
  seen.x = near.alongAxis * _from.ax + turn * rx;
  seen.y = near.alongAxis * _from.ay + turn * ry;
  seen.z = near.alongAxis * _from.az + turn * rz;
  seen.radius = radius;
  seen.apart = Math.sqrt(s * s + radius * radius);
  moveAlong(cells, at + Cell.centreA, at + Cell.axisA);
  seen.changeA = _along.change;
  seen.moveA = _along.move;
  moveAlong(cells, at + Cell.centreB, at + Cell.axisB);
  seen.changeB = _along.change;
  seen.moveB = _along.move;
}

/** Least distance possible over the part of the cell that was looked at from its middle; halves as parts of the cell's. */
export function lowerBound(
  { profile, poses }: Sweep,
  cell: number,
  halfA: number,
  halfB: number,
): number {
  const { cells } = poses;
  const at = cell * Cell.size;
  const stray = halfA === 1 && halfB === 1 ? cells[at + Cell.stray]! : 0;
  const moved = seen.moveA * halfA + seen.moveB * halfB;
  const turned = cells[at + Cell.turnA]! * halfA + cells[at + Cell.turnB]! * halfB;
  const shifted = cells[at + Cell.speedA]! * halfA + cells[at + Cell.speedB]! * halfB;
  const second = turned * (shifted + 0.5 * turned * seen.apart) + stray;
  const lipschitz = near.distance - moved - second;
  const room = seen.radius - moved - second;
  if (!profile.isConvex || room <= 0) return lipschitz;
  const hollow = Math.max(0, -near.outward);
  const change = seen.changeA * halfA + seen.changeB * halfB;
  const tangent = near.distance - change - (hollow * moved * moved) / (2 * room) - second;
  return Math.max(lipschitz, tangent);
}
