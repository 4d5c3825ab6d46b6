/** A limit strap: a ribbon between two points that sags when they are nearer than its length. Buffers are rewritten in place. */
import { BufferAttribute, BufferGeometry } from 'three';
import { STRAP } from '../proportions.ts';

export interface Strap {
  readonly geometry: BufferGeometry;
  readonly length: number;
}

export function createStrap(length: number): Strap {
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
  return { geometry, length };
}

/**
 * Depth of the bow, mm, that makes a parabola over `chord` as long as the strap: length ≈ chord + 8·depth²/(3·chord)
 * while it is shallow; never deeper than the strap folded in two allows.
 */
export function strapSag(length: number, chord: number): number {
  if (!(chord < length)) return 0;
  const shallow = Math.sqrt((3 * Math.max(chord, 1) * (length - chord)) / 8);
  return Math.min(shallow, Math.sqrt(length * length - chord * chord) / 2);
}

/** Rewrites the ribbon between top and bottom (six numbers, vehicle axes); it is as wide as a strap along x and bows outboard. */
export function hangStrap(strap: Strap, ends: Float64Array): void {
  const position = strap.geometry.getAttribute('position') as BufferAttribute;
  const normal = strap.geometry.getAttribute('normal') as BufferAttribute;
  const points = position.array as Float32Array;
  const normals = normal.array as Float32Array;
  const dx = ends[3]! - ends[0]!;
  const dy = ends[4]! - ends[1]!;
  const dz = ends[5]! - ends[2]!;
  const chord = Math.sqrt(dx * dx + dy * dy + dz * dz) || 1;
  const sag = strapSag(strap.length, chord);
  // Bow in the plane of y and z, square to the chord, towards the wheel.
  const flat = Math.sqrt(dy * dy + dz * dz) || 1;
  const by = Math.abs(dz) / flat;
  const bz = (dz > 0 ? -dy : dy) / flat;
  for (let i = 0, at = 0; i <= STRAP.stations; i += 1) {
    const t = i / STRAP.stations;
    const bow = 4 * sag * t * (1 - t);
    const slope = (4 * sag * (1 - 2 * t)) / chord;
    const size = Math.sqrt(1 + slope * slope);
    for (let edge = -1; edge <= 1; edge += 2, at += 3) {
      points[at] = ends[0]! + dx * t + (edge * STRAP.width) / 2;
      points[at + 1] = ends[1]! + dy * t + bow * by;
      points[at + 2] = ends[2]! + dz * t + bow * bz;
      normals[at] = 0;
      normals[at + 1] = (by - (slope * dy) / chord) / size;
      normals[at + 2] = (bz - (slope * dz) / chord) / size;
    }
  }
  position.needsUpdate = true;
  normal.needsUpdate = true;
}
