/** A surface that every pose rewrites: points and normals side by side in one buffer, handed over to the card in one piece. */
import {
  BufferAttribute,
  BufferGeometry,
  DynamicDrawUsage,
  InterleavedBuffer,
  InterleavedBufferAttribute,
} from 'three';
import type { MaterialName } from '../materialNames.ts';
import { dip } from '../paints.ts';

/** Places a vertex takes in the buffer: x, y, z of its point, then of its normal. */
export const STRIDE = 6;

export interface Rewritten {
  readonly geometry: BufferGeometry;
  readonly buffer: InterleavedBuffer;
  readonly values: Float32Array;
}

export function createRewritten(
  vertices: number,
  indices: readonly number[],
  paint: MaterialName,
): Rewritten {
  const values = new Float32Array(STRIDE * vertices);
  const buffer = new InterleavedBuffer(values, STRIDE).setUsage(DynamicDrawUsage);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new InterleavedBufferAttribute(buffer, 3, 0));
  geometry.setAttribute('normal', new InterleavedBufferAttribute(buffer, 3, 3));
  geometry.setIndex(new BufferAttribute(Uint16Array.from(indices), 1));
  dip(geometry, paint);
  return { geometry, buffer, values };
}
