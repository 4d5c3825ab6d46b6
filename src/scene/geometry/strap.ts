/** A limit strap: a ribbon between two points that bows when they are nearer than its length. Buffers are rewritten in place. */
import { BufferAttribute, BufferGeometry, type Vector3 } from 'three';
import { STRAP } from '../proportions.ts';

export interface Strap {
  readonly geometry: BufferGeometry;
  readonly length: number;
  /** Direction it bows in, not square to anything yet: away from what stands beside it. */
  readonly aside: Vector3;
}

export function createStrap(length: number, aside: Vector3): Strap {
  const geometry = new BufferGeometry();
  const count = STRAP.stations + 1;
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(6 * count), 3));
  geometry.setAttribute('normal', new BufferAttribute(new Float32Array(6 * count), 3));
  const indices: number[] = [];
  for (let i = 0; i < STRAP.stations; i += 1) {
    const a = 2 * i;
    indices.push(a, a + 1, a + 3, a, a + 3, a + 2);
  }
  geometry.setIndex(new BufferAttribute(Uint16Array.from(indices), 1));
  return { geometry, length, aside };
}

const SUM_STEPS = 32;

/** Length of the parabola of depth `sag` over a chord, mm: ∫√(1 + (4·sag·(1 − 2t)/chord)²)·chord dt, by Simpson's rule. */
export function bowedLength(sag: number, chord: number): number {
  let sum = 0;
  for (let i = 0; i <= SUM_STEPS; i += 1) {
    const slope = 4 * sag * (1 - (2 * i) / SUM_STEPS);
    const weight = i === 0 || i === SUM_STEPS ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * Math.sqrt(chord * chord + slope * slope);
  }
  return sum / (3 * SUM_STEPS);
}

const SAG_STEPS = 24;

/** Depth of the bow, mm, whose parabola over `chord` is as long as the strap; 0 when it is taut. */
export function strapSag(length: number, chord: number): number {
  if (!(chord < length)) return 0;
  let low = 0;
  let high = length;
  for (let i = 0; i < SAG_STEPS; i += 1) {
    const middle = (low + high) / 2;
    if (bowedLength(middle, chord) < length) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const _chord = new Float64Array(3);
const _bow = new Float64Array(3);
const _width = new Float64Array(3);

/** Unit chord, bow square to it, and the ribbon's width square to both. Returns the chord's length. */
function setAxes({ aside }: Strap, ends: Float64Array): number {
  let squared = 0;
  for (let k = 0; k < 3; k += 1) {
    _chord[k] = ends[3 + k]! - ends[k]!;
    squared += _chord[k]! * _chord[k]!;
  }
  const chord = Math.sqrt(squared) || 1;
  for (let k = 0; k < 3; k += 1) _chord[k] = _chord[k]! / chord;
  const along = aside.x * _chord[0]! + aside.y * _chord[1]! + aside.z * _chord[2]!;
  _bow[0] = aside.x - along * _chord[0]!;
  _bow[1] = aside.y - along * _chord[1]!;
  _bow[2] = aside.z - along * _chord[2]!;
  const size = Math.hypot(_bow[0], _bow[1], _bow[2]) || 1;
  for (let k = 0; k < 3; k += 1) _bow[k] = _bow[k]! / size;
  _width[0] = _chord[1]! * _bow[2]! - _chord[2]! * _bow[1]!;
  _width[1] = _chord[2]! * _bow[0]! - _chord[0]! * _bow[2]!;
  _width[2] = _chord[0]! * _bow[1]! - _chord[1]! * _bow[0]!;
  return chord;
}

/** Rewrites the ribbon between top and bottom: six numbers, vehicle axes. */
export function hangStrap(strap: Strap, ends: Float64Array): void {
  const position = strap.geometry.getAttribute('position') as BufferAttribute;
  const normal = strap.geometry.getAttribute('normal') as BufferAttribute;
  const points = position.array as Float32Array;
  const normals = normal.array as Float32Array;
  const chord = setAxes(strap, ends);
  const sag = strapSag(strap.length, chord);
  for (let i = 0, at = 0; i <= STRAP.stations; i += 1) {
    const t = i / STRAP.stations;
    const bow = 4 * sag * t * (1 - t);
    const slope = (4 * sag * (1 - 2 * t)) / chord;
    const size = Math.sqrt(1 + slope * slope);
    for (let edge = -1; edge <= 1; edge += 2) {
      for (let k = 0; k < 3; k += 1, at += 1) {
        const across = (edge * STRAP.width * _width[k]!) / 2;
        points[at] = ends[k]! + chord * t * _chord[k]! + bow * _bow[k]! + across;
        normals[at] = (_bow[k]! - slope * _chord[k]!) / size;
      }
    }
  }
  position.needsUpdate = true;
  normal.needsUpdate = true;
}

/** Which way a strap bows: level, away from the coilover beside it; rearwards where there is none. */
export function strapAside(strap: { readonly top: Vector3 }, coiloverTop: Vector3 | null): Vector3 {
  const aside = strap.top.clone().set(-1, 0, 0);
  if (coiloverTop === null) return aside;
  const away = strap.top.clone().sub(coiloverTop).setZ(0);
  return away.lengthSq() > 1 ? away.normalize() : aside;
}
