/**
 * Numbers and vectors over a cell as first-order Taylor models: value = mid + a·α + b·β ± rest, where α and β run from
 * −1 to 1 over the cell's travel and rack. The rest bounds all that is not linear, so that it shrinks with the square of
 * the cell's size. Rounding is not followed here: whoever draws a conclusion leaves a margin for it.
 */

/** A number over the cell. */
export interface Taylor {
  readonly mid: number;
  readonly a: number;
  readonly b: number;
  readonly rest: number;
}

/** A vector over the cell; the rest bounds a length. */
export interface TaylorVector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly ax: number;
  readonly ay: number;
  readonly az: number;
  readonly bx: number;
  readonly by: number;
  readonly bz: number;
  readonly rest: number;
}

/** Three numbers at a place of a buffer. */
export interface Triple {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export function triple(x: number, y: number, z: number): Triple {
  return { x, y, z };
}

export function scaledTriple(factor: number, { x, y, z }: Triple): Triple {
  return triple(factor * x, factor * y, factor * z);
}

export function crossed(v: Triple, w: Triple): Triple {
  return triple(v.y * w.z - v.z * w.y, v.z * w.x - v.x * w.z, v.x * w.y - v.y * w.x);
}

export function tripleAt(buffer: Float64Array, at: number): Triple {
  return { x: buffer[at]!, y: buffer[at + 1]!, z: buffer[at + 2]! };
}

function size(x: number, y: number, z: number): number {
  return Math.sqrt(x * x + y * y + z * z);
}

/** A vector that stands still. */
export function still({ x, y, z }: Triple): TaylorVector {
  return { x, y, z, ax: 0, ay: 0, az: 0, bx: 0, by: 0, bz: 0, rest: 0 };
}

/** A vector with its middle and both slopes. */
export function sloping(mid: Triple, a: Triple, b: Triple, rest: number): TaylorVector {
  return {
    x: mid.x,
    y: mid.y,
    z: mid.z,
    ax: a.x,
    ay: a.y,
    az: a.z,
    bx: b.x,
    by: b.y,
    bz: b.z,
    rest,
  };
}

export function slopeA({ ax, ay, az }: TaylorVector): Triple {
  return { x: ax, y: ay, z: az };
}

export function slopeB({ bx, by, bz }: TaylorVector): Triple {
  return { x: bx, y: by, z: bz };
}

/** Length of the middle. */
export function midLength({ x, y, z }: Triple): number {
  return size(x, y, z);
}

/** How far a vector can be from its middle. */
export function swing(v: TaylorVector): number {
  return size(v.ax, v.ay, v.az) + size(v.bx, v.by, v.bz) + v.rest;
}

/** The greatest length of a vector over the cell. */
export function mostLength(v: TaylorVector): number {
  return midLength(v) + swing(v);
}

/** How far a number can be from its middle. */
export function swingOf({ a, b, rest }: Taylor): number {
  return Math.abs(a) + Math.abs(b) + rest;
}

/** The greatest size of a number over the cell. */
export function most(v: Taylor): number {
  return Math.abs(v.mid) + swingOf(v);
}

export function sum(v: TaylorVector, w: TaylorVector): TaylorVector {
  return {
    x: v.x + w.x,
    y: v.y + w.y,
    z: v.z + w.z,
    ax: v.ax + w.ax,
    ay: v.ay + w.ay,
    az: v.az + w.az,
    bx: v.bx + w.bx,
    by: v.by + w.by,
    bz: v.bz + w.bz,
    rest: v.rest + w.rest,
  };
}

export function scaled(factor: number, v: TaylorVector): TaylorVector {
  return {
    x: factor * v.x,
    y: factor * v.y,
    z: factor * v.z,
    ax: factor * v.ax,
    ay: factor * v.ay,
    az: factor * v.az,
    bx: factor * v.bx,
    by: factor * v.by,
    bz: factor * v.bz,
    rest: Math.abs(factor) * v.rest,
  };
}

export function difference(v: TaylorVector, w: TaylorVector): TaylorVector {
  return sum(v, scaled(-1, w));
}

/** What of a product is not linear, for factors of these middle sizes, linear swings and rests. */
function restOf(
  mid1: number,
  linear1: number,
  rest1: number,
  mid2: number,
  linear2: number,
  rest2: number,
): number {
  return linear1 * linear2 + rest1 * (mid2 + linear2 + rest2) + rest2 * (mid1 + linear1);
}

function linearOf(v: TaylorVector): number {
  return size(v.ax, v.ay, v.az) + size(v.bx, v.by, v.bz);
}

export function dot(v: TaylorVector, w: TaylorVector): Taylor {
  const bent =
    Math.abs(v.ax * w.ax + v.ay * w.ay + v.az * w.az) +
    Math.abs(v.ax * w.bx + v.ay * w.by + v.az * w.bz + v.bx * w.ax + v.by * w.ay + v.bz * w.az) +
    Math.abs(v.bx * w.bx + v.by * w.by + v.bz * w.bz);
  return {
    mid: v.x * w.x + v.y * w.y + v.z * w.z,
    a: v.ax * w.x + v.ay * w.y + v.az * w.z + v.x * w.ax + v.y * w.ay + v.z * w.az,
    b: v.bx * w.x + v.by * w.y + v.bz * w.z + v.x * w.bx + v.y * w.by + v.z * w.bz,
    rest: bent + v.rest * mostLength(w) + w.rest * (midLength(v) + linearOf(v)),
  };
}

export function cross(v: TaylorVector, w: TaylorVector): TaylorVector {
  return {
    x: v.y * w.z - v.z * w.y,
    y: v.z * w.x - v.x * w.z,
    z: v.x * w.y - v.y * w.x,
    ax: v.ay * w.z - v.az * w.y + v.y * w.az - v.z * w.ay,
    ay: v.az * w.x - v.ax * w.z + v.z * w.ax - v.x * w.az,
    az: v.ax * w.y - v.ay * w.x + v.x * w.ay - v.y * w.ax,
    bx: v.by * w.z - v.bz * w.y + v.y * w.bz - v.z * w.by,
    by: v.bz * w.x - v.bx * w.z + v.z * w.bx - v.x * w.bz,
    bz: v.bx * w.y - v.by * w.x + v.x * w.by - v.y * w.bx,
    rest: restOf(midLength(v), linearOf(v), v.rest, midLength(w), linearOf(w), w.rest),
  };
}

export function product(v: Taylor, w: Taylor): Taylor {
  const bent = Math.abs(v.a * w.a) + Math.abs(v.a * w.b + v.b * w.a) + Math.abs(v.b * w.b);
  return {
    mid: v.mid * w.mid,
    a: v.mid * w.a + v.a * w.mid,
    b: v.mid * w.b + v.b * w.mid,
    rest: bent + v.rest * most(w) + w.rest * (Math.abs(v.mid) + Math.abs(v.a) + Math.abs(v.b)),
  };
}

export function times(f: Taylor, v: TaylorVector): TaylorVector {
  return {
    x: f.mid * v.x,
    y: f.mid * v.y,
    z: f.mid * v.z,
    ax: f.mid * v.ax + f.a * v.x,
    ay: f.mid * v.ay + f.a * v.y,
    az: f.mid * v.az + f.a * v.z,
    bx: f.mid * v.bx + f.b * v.x,
    by: f.mid * v.by + f.b * v.y,
    bz: f.mid * v.bz + f.b * v.z,
    rest: restOf(
      Math.abs(f.mid),
      Math.abs(f.a) + Math.abs(f.b),
      f.rest,
      midLength(v),
      linearOf(v),
      v.rest,
    ),
  };
}

export function plus(v: Taylor, w: Taylor): Taylor {
  return { mid: v.mid + w.mid, a: v.a + w.a, b: v.b + w.b, rest: v.rest + w.rest };
}

export function multiple(factor: number, v: Taylor): Taylor {
  return {
    mid: factor * v.mid,
    a: factor * v.a,
    b: factor * v.b,
    rest: Math.abs(factor) * v.rest,
  };
}

export function minus(v: Taylor, w: Taylor): Taylor {
  return plus(v, multiple(-1, w));
}

/** A number that stays the same. */
export function constant(mid: number): Taylor {
  return { mid, a: 0, b: 0, rest: 0 };
}

/** 1/v; null where v may be 0. With e = v/mid − 1: 1/(1 + e) = 1 − e + e²/(1 + e). */
export function inverse(v: Taylor): Taylor | null {
  const part = swingOf(v) / Math.abs(v.mid);
  if (!(part < 1)) return null;
  const mid = 1 / v.mid;
  const slope = -mid * mid;
  return {
    mid,
    a: slope * v.a,
    b: slope * v.b,
    rest: Math.abs(mid) * ((part * part) / (1 - part)) + mid * mid * v.rest,
  };
}

/** √v; null where v may be 0 or less. With e = v/mid − 1: |√(1 + e) − 1 − e/2| ≤ e²/(8(1 − |e|)^(3/2)). */
export function root(v: Taylor): Taylor | null {
  const part = swingOf(v) / v.mid;
  if (!(v.mid > 0 && part < 1)) return null;
  const mid = Math.sqrt(v.mid);
  const slope = 0.5 / mid;
  return {
    mid,
    a: slope * v.a,
    b: slope * v.b,
    rest: (mid * part * part) / (8 * (1 - part) ** 1.5) + slope * v.rest,
  };
}

/** The third component. */
export function vertical(v: TaylorVector): Taylor {
  return { mid: v.z, a: v.az, b: v.bz, rest: v.rest };
}
