/**
 * What drawings are made with: straight strokes and labels, in vehicle axes, mm. Drawings are plain functions of a pen
 * and a solved pose, so that a test can look at every stroke without a picture. Nothing here allocates.
 */

import type { Words } from '../labels/labels.ts';
import type { Tone } from '../palette.ts';

export interface Pen {
  line(ax: number, ay: number, az: number, bx: number, by: number, bz: number, tone: Tone): void;
  label(x: number, y: number, z: number, tone: Tone, words: Words, value: number): void;
  /** True where the picture shows the point, free of panels. */
  sees(x: number, y: number, z: number): boolean;
  /**
   * Fills a cone from its tip along a unit direction with glass: length of its side, mm, and half-angle, degrees. A pen
   * without glass leaves it to the lines.
   */
  cone?(
    x: number,
    y: number,
    z: number,
    ux: number,
    uy: number,
    uz: number,
    reach: number,
    half: number,
    tone: Tone,
  ): void;
}

type Flat = ArrayLike<number>;

/** A stroke between two points of buffers. */
export function stroke(pen: Pen, a: Flat, ai: number, b: Flat, bi: number, tone: Tone): void {
  pen.line(a[ai]!, a[ai + 1]!, a[ai + 2]!, b[bi]!, b[bi + 1]!, b[bi + 2]!, tone);
}

/** A stroke from a point along a unit direction, from `from` to `to` mm. */
export function ray(
  pen: Pen,
  at: Flat,
  ai: number,
  along: Flat,
  di: number,
  from: number,
  to: number,
  tone: Tone,
): void {
  const x = along[di]!;
  const y = along[di + 1]!;
  const z = along[di + 2]!;
  pen.line(
    at[ai]! + from * x,
    at[ai + 1]! + from * y,
    at[ai + 2]! + from * z,
    at[ai]! + to * x,
    at[ai + 1]! + to * y,
    at[ai + 2]! + to * z,
    tone,
  );
}

/** A small cross of three strokes that marks a point from every side. */
export function mark(pen: Pen, x: number, y: number, z: number, size: number, tone: Tone): void {
  pen.line(x - size, y, z, x + size, y, z, tone);
  pen.line(x, y - size, z, x, y + size, z, tone);
  pen.line(x, y, z - size, x, y, z + size, tone);
}

const DASH = 14;
const DASH_GAP = 10;
const MOST_DASHES = 60;

/** A dashed stroke, of dashes and gaps so long, mm; they lengthen where the way is long, so that their number stays small. */
export function dashes(
  pen: Pen,
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
  tone: Tone,
  dash = DASH,
  gap = DASH_GAP,
): void {
  const length = Math.hypot(bx - ax, by - ay, bz - az);
  const count = Math.max(1, Math.min(MOST_DASHES, Math.round(length / (dash + gap))));
  const share = dash / (dash + gap);
  for (let i = 0; i < count; i += 1) {
    const s = i / count;
    const e = (i + share) / count;
    pen.line(
      ax + s * (bx - ax),
      ay + s * (by - ay),
      az + s * (bz - az),
      ax + e * (bx - ax),
      ay + e * (by - ay),
      az + e * (bz - az),
      tone,
    );
  }
}

/** An arrow from a point along a unit direction. */
export function arrow(
  pen: Pen,
  x: number,
  y: number,
  z: number,
  dx: number,
  dy: number,
  dz: number,
  length: number,
  tone: Tone,
): void {
  const tx = x + length * dx;
  const ty = y + length * dy;
  const tz = z + length * dz;
  pen.line(x, y, z, tx, ty, tz, tone);
  // Four barbs about the shaft, so that the head shows from every side: two directions normal to it.
  const flat = Math.abs(dz) < 0.9;
  let px = flat ? -dy : 0;
  let py = flat ? dx : -dz;
  let pz = flat ? 0 : dy;
  const size = Math.hypot(px, py, pz);
  px /= size;
  py /= size;
  pz /= size;
  const qx = dy * pz - dz * py;
  const qy = dz * px - dx * pz;
  const qz = dx * py - dy * px;
  const head = Math.sign(length) * Math.min(18, Math.abs(length) * 0.4);
  const half = head * 0.45;
  for (let i = 0; i < 4; i += 1) {
    const a = i === 0 ? half : i === 1 ? -half : 0;
    const b = i === 2 ? half : i === 3 ? -half : 0;
    pen.line(
      tx,
      ty,
      tz,
      tx - head * dx + a * px + b * qx,
      ty - head * dy + a * py + b * qy,
      tz - head * dz + a * pz + b * qz,
      tone,
    );
  }
}

const ARC_STEP = 0.06;

/**
 * An arc about a centre from the unit direction u towards the unit direction w, which need not be normal to it: points
 * at `radius`, along the great circle through both. Returns the angle, rad; 0 draws nothing.
 */
export function arcBetween(
  pen: Pen,
  at: Flat,
  ai: number,
  u: Flat,
  ui: number,
  w: Flat,
  wi: number,
  radius: number,
  tone: Tone,
): number {
  const cos = u[ui]! * w[wi]! + u[ui + 1]! * w[wi + 1]! + u[ui + 2]! * w[wi + 2]!;
  let vx = w[wi]! - cos * u[ui]!;
  let vy = w[wi + 1]! - cos * u[ui + 1]!;
  let vz = w[wi + 2]! - cos * u[ui + 2]!;
  const sin = Math.hypot(vx, vy, vz);
  if (sin === 0) return 0;
  vx /= sin;
  vy /= sin;
  vz /= sin;
  const angle = Math.atan2(sin, cos);
  const count = Math.max(1, Math.ceil(angle / ARC_STEP));
  let px = at[ai]! + radius * u[ui]!;
  let py = at[ai + 1]! + radius * u[ui + 1]!;
  let pz = at[ai + 2]! + radius * u[ui + 2]!;
  for (let i = 1; i <= count; i += 1) {
    const c = radius * Math.cos((angle * i) / count);
    const s = radius * Math.sin((angle * i) / count);
    const x = at[ai]! + c * u[ui]! + s * vx;
    const y = at[ai + 1]! + c * u[ui + 1]! + s * vy;
    const z = at[ai + 2]! + c * u[ui + 2]! + s * vz;
    pen.line(px, py, pz, x, y, z, tone);
    px = x;
    py = y;
    pz = z;
  }
  return angle;
}
