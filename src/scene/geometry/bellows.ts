/**
 * A boot that bends and stretches: rings of fixed radii swept along the cubic between two mouths that move. Buffers are
 * made once; `bendBellows` rewrites them in place, so a pose costs no memory.
 */
import { createRewritten, type Rewritten, STRIDE } from './rewritten.ts';

export interface Bellows extends Rewritten {
  /** Radius of each ring from the first mouth to the second, mm. */
  readonly radii: Float64Array;
  readonly segments: number;
  /** First point and direction, second point and direction: what `bendBellows` reads. Vehicle axes, directions unit. */
  readonly mouths: Float64Array;
  /** 0 to 1: how far the centreline keeps to the mouths' own directions. */
  readonly fullness: number;
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

/** Radii of a boot from a wide mouth to a narrow one with round folds between; its last ring closes on `neck`. */
export function roundedFolds(
  wide: number,
  narrow: number,
  folds: number,
  depth: number,
  neck = narrow,
): Float64Array {
  const per = 5;
  const rings = folds * per + 3;
  return Float64Array.from({ length: rings }, (_, i) => {
    if (i === rings - 1) return neck;
    const taper = wide + ((narrow - wide) * i) / (rings - 1);
    return i === 0 ? taper : taper + (depth / 2) * Math.sin((2 * Math.PI * (i - 1)) / per);
  });
}

export function createBellows(radii: Float64Array, segments = 20, fullness = 0.4): Bellows {
  const rings = radii.length;
  const row = segments + 1;
  const indices: number[] = [];
  for (let i = 0; i + 1 < rings; i += 1) {
    for (let j = 0; j < segments; j += 1) {
      const a = i * row + j;
      indices.push(a, a + 1, a + row + 1, a, a + row + 1, a + row);
    }
  }
  const angles = Float64Array.from({ length: row }, (_, j) => (2 * Math.PI * j) / segments);
  return {
    ...createRewritten(rings * row, indices, 'boot'),
    radii,
    segments,
    mouths: new Float64Array(12),
    fullness,
    cos: angles.map(Math.cos),
    sin: angles.map(Math.sin),
  };
}

/** Centre and tangent of the present ring, the first ring's across direction carried along: x, y, z each. */
const _centre = new Float64Array(3);
const _tangent = new Float64Array(3);
const _across = new Float64Array(3);
const _over = new Float64Array(3);

/** Cubic through both mouths at the share t: centre and unit tangent. Returns the speed, mm per share. */
function placeRing(mouths: Float64Array, reach: number, t: number): number {
  const u = 1 - t;
  const b0 = u * u * (1 + 2 * t);
  const b1 = t * u * u;
  const b2 = t * t * (3 - 2 * t);
  const b3 = -t * t * u;
  const d = 6 * t * u;
  const d1 = u * (1 - 3 * t);
  const d3 = t * (3 * t - 2);
  let squared = 0;
  for (let k = 0; k < 3; k += 1) {
    const p0 = mouths[k]!;
    const m0 = mouths[3 + k]! * reach;
    const p1 = mouths[6 + k]!;
    const m1 = mouths[9 + k]! * reach;
    _centre[k] = b0 * p0 + b1 * m0 + b2 * p1 + b3 * m1;
    const speed = d * (p1 - p0) + d1 * m0 + d3 * m1;
    _tangent[k] = speed;
    squared += speed * speed;
  }
  const size = Math.sqrt(squared) || 1;
  for (let k = 0; k < 3; k += 1) _tangent[k] = _tangent[k]! / size;
  return size;
}

/** Makes `_across` normal to `_tangent` again and completes the frame. */
function carryFrame(): void {
  const along =
    _across[0]! * _tangent[0]! + _across[1]! * _tangent[1]! + _across[2]! * _tangent[2]!;
  let squared = 0;
  for (let k = 0; k < 3; k += 1) {
    _across[k] = _across[k]! - along * _tangent[k]!;
    squared += _across[k]! * _across[k]!;
  }
  const size = Math.sqrt(squared) || 1;
  for (let k = 0; k < 3; k += 1) _across[k] = _across[k]! / size;
  _over[0] = _tangent[1]! * _across[2]! - _tangent[2]! * _across[1]!;
  _over[1] = _tangent[2]! * _across[0]! - _tangent[0]! * _across[2]!;
  _over[2] = _tangent[0]! * _across[1]! - _tangent[1]! * _across[0]!;
}

/** Begins `_across` with the vehicle axis least along the first mouth. */
function startFrame(mouths: Float64Array): void {
  let least = 0;
  for (let k = 1; k < 3; k += 1)
    if (Math.abs(mouths[3 + k]!) < Math.abs(mouths[3 + least]!)) least = k;
  for (let k = 0; k < 3; k += 1) _across[k] = k === least ? 1 : 0;
}

/** Writes one ring about the present frame, in plain numbers: this is where a pose spends its time. Returns the next place. */
function writeRing(
  values: Float32Array,
  from: number,
  radius: number,
  slope: number,
  cos: Float64Array,
  sin: Float64Array,
): number {
  const cx = _centre[0]!;
  const cy = _centre[1]!;
  const cz = _centre[2]!;
  const ax = _across[0]!;
  const ay = _across[1]!;
  const az = _across[2]!;
  const ox = _over[0]!;
  const oy = _over[1]!;
  const oz = _over[2]!;
  const tx = slope * _tangent[0]!;
  const ty = slope * _tangent[1]!;
  const tz = slope * _tangent[2]!;
  let at = from;
  for (let j = 0; j < cos.length; j += 1) {
    const c = cos[j]!;
    const s = sin[j]!;
    const x = c * ax + s * ox;
    const y = c * ay + s * oy;
    const z = c * az + s * oz;
    values[at] = cx + radius * x;
    values[at + 1] = cy + radius * y;
    values[at + 2] = cz + radius * z;
    values[at + 3] = x - tx;
    values[at + 4] = y - ty;
    values[at + 5] = z - tz;
    at += STRIDE;
  }
  return at;
}

/** Rewrites the boot for the mouths as they stand. */
export function bendBellows(bellows: Bellows): void {
  const { mouths, radii, cos, sin, values, buffer } = bellows;
  const dx = mouths[6]! - mouths[0]!;
  const dy = mouths[7]! - mouths[1]!;
  const dz = mouths[8]! - mouths[2]!;
  const reach = Math.sqrt(dx * dx + dy * dy + dz * dz) * (bellows.fullness + 0.6);
  startFrame(mouths);
  const last = radii.length - 1;
  for (let i = 0, at = 0; i <= last; i += 1) {
    const speed = placeRing(mouths, reach, i / last);
    carryFrame();
    const before = Math.max(0, i - 1);
    const after = Math.min(last, i + 1);
    // Normal of a surface of changing radius: radial minus slope along the centreline.
    const slope = ((radii[after]! - radii[before]!) * last) / ((after - before) * speed);
    at = writeRing(values, at, radii[i]!, slope, cos, sin);
  }
  buffer.needsUpdate = true;
}
