/**
 * A coil spring along local z from 0 to its length: constant wire, closed flat ends, pitch that follows the length.
 * z of the wire's centre = rest_i + stretch_i·length, both fixed by the coil, so a pose rewrites the buffers in place.
 */
import { createRewritten, type Rewritten, STRIDE } from './rewritten.ts';

export interface Spring extends Rewritten {
  readonly wire: number;
  readonly meanRadius: number;
  /** Shortest length at which the coils do not pass through each other, mm. */
  readonly solidLength: number;
  /** Per station: cosine and sine of its angle, closed-end height, share of the free height, and the share's slope per rad. */
  readonly stations: Float64Array;
  readonly sides: Float64Array;
  length: number;
}

const PER_COIL = 20;
const SIDES = 8;
const FIELDS = 6;
/** Coils that lie flat at each end. */
const CLOSED = 1;

/** Height over closed-end height and free share at `turn` of `coils`: slopes blend over half a coil. */
function riseAt(turn: number, coils: number): { flat: number; share: number } {
  const active = coils - 2 * CLOSED;
  const place = Math.min(active, Math.max(0, turn - CLOSED));
  const flatBefore = Math.min(turn, CLOSED);
  const flatAfter = Math.max(0, turn - CLOSED - active);
  // Ease in and out of the active coils, so that the wire leaves the flat ends without a kink.
  const ease = 0.5;
  const total = active - ease;
  const eased =
    place < ease
      ? (place * place) / (2 * ease)
      : place > active - ease
        ? total - ((active - place) * (active - place)) / (2 * ease)
        : place - ease / 2;
  return { flat: flatBefore + flatAfter, share: eased / total };
}

export function createSpring(meanRadius: number, wire: number, coils: number): Spring {
  const count = Math.round(coils * PER_COIL) + 1;
  const stations = new Float64Array(FIELDS * count);
  for (let i = 0; i < count; i += 1) {
    const turn = (i / (count - 1)) * coils;
    const { flat, share } = riseAt(turn, coils);
    const step = 1e-3;
    const ahead = riseAt(Math.min(coils, turn + step), coils);
    const behind = riseAt(Math.max(0, turn - step), coils);
    const width = Math.min(coils, turn + step) - Math.max(0, turn - step);
    const at = FIELDS * i;
    stations[at] = Math.cos(2 * Math.PI * turn);
    stations[at + 1] = Math.sin(2 * Math.PI * turn);
    stations[at + 2] = flat;
    stations[at + 3] = share;
    stations[at + 4] = (ahead.flat - behind.flat) / width / (2 * Math.PI);
    stations[at + 5] = (ahead.share - behind.share) / width / (2 * Math.PI);
  }
  const sides = Float64Array.from({ length: 2 * (SIDES + 1) }, (_, k) => {
    const angle = (2 * Math.PI * (k >> 1)) / SIDES;
    return k % 2 === 0 ? Math.cos(angle) : Math.sin(angle);
  });
  const solidLength = wire * (coils + 1);
  return {
    ...createRewritten(count * (SIDES + 1), tubeIndices(count), 'spring'),
    wire,
    meanRadius,
    solidLength,
    stations,
    sides,
    length: Number.NaN,
  };
}

/** The rings run against the wire's own sense, so the triangles are turned round. */
function tubeIndices(count: number): number[] {
  const indices: number[] = [];
  const row = SIDES + 1;
  for (let i = 0; i + 1 < count; i += 1) {
    for (let j = 0; j < SIDES; j += 1) {
      const a = i * row + j;
      indices.push(a, a + row + 1, a + 1, a, a + row, a + row + 1);
    }
  }
  return indices;
}

/** Rewrites the wire for a spring length, mm: its ends touch z = 0 and z = length. */
export function stretchSpring(spring: Spring, length: number): void {
  spring.length = length;
  const { stations, sides, meanRadius, wire, values, buffer } = spring;
  // The closed coils take one wire a turn; what is left between the wire's first and last centre is the active rise.
  const rise = length - wire - 2 * CLOSED * wire;
  let to = 0;
  for (let at = 0; at < stations.length; at += FIELDS) {
    const cos = stations[at]!;
    const sin = stations[at + 1]!;
    const z = wire / 2 + wire * stations[at + 2]! + rise * stations[at + 3]!;
    const climb = (wire * stations[at + 4]! + rise * stations[at + 5]!) / meanRadius;
    const size = Math.sqrt(1 + climb * climb);
    const flat = climb / size;
    const up = 1 / size;
    for (let j = 0; j <= SIDES; j += 1) {
      const a = sides[2 * j]!;
      const b = sides[2 * j + 1]!;
      // Radial, and the binormal (normal to wire and radial): (flat·sin, −flat·cos, up).
      const nx = a * cos + b * flat * sin;
      const ny = a * sin - b * flat * cos;
      const nz = b * up;
      values[to] = meanRadius * cos + (wire / 2) * nx;
      values[to + 1] = meanRadius * sin + (wire / 2) * ny;
      values[to + 2] = z + (wire / 2) * nz;
      values[to + 3] = nx;
      values[to + 4] = ny;
      values[to + 5] = nz;
      to += STRIDE;
    }
  }
  buffer.needsUpdate = true;
}
