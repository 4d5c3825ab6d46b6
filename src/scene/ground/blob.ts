/** The soft dark patch under the tyre: a baked picture. */
import { DataTexture, LinearFilter, RGBAFormat, UnsignedByteType } from 'three';

const SIZE = 64;

/** Opacity at a distance from the middle, 0 at the middle and 1 at the rim. */
export function blobOpacity(distance: number): number {
  const left = Math.max(0, 1 - distance);
  return left * left * (3 - 2 * left);
}

export function createBlob(): DataTexture {
  const data = new Uint8Array(SIZE * SIZE * 4);
  for (let row = 0; row < SIZE; row += 1) {
    for (let column = 0; column < SIZE; column += 1) {
      const x = ((column + 0.5) / SIZE) * 2 - 1;
      const y = ((row + 0.5) / SIZE) * 2 - 1;
      data[4 * (row * SIZE + column) + 3] = Math.round(255 * blobOpacity(Math.hypot(x, y)));
    }
  }
  const texture = new DataTexture(data, SIZE, SIZE, RGBAFormat, UnsignedByteType);
  texture.magFilter = LinearFilter;
  texture.minFilter = LinearFilter;
  texture.needsUpdate = true;
  return texture;
}
