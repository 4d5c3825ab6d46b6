/**
 * What bare metal mirrors: a workshop with a soft ceiling panel and two upright light strips, computed, not downloaded.
 * Equirectangular, three's axes, so small that turning it into mip levels costs next to nothing; being plain data it
 * also survives a lost graphics context.
 */
import {
  DataTexture,
  DataUtils,
  EquirectangularReflectionMapping,
  HalfFloatType,
  LinearFilter,
  LinearSRGBColorSpace,
  RGBAFormat,
} from 'three';

const WIDTH = 128;
const HEIGHT = 64;

/** Smooth 0 to 1 as x goes from a to b. */
function smooth(a: number, b: number, x: number): number {
  const t = Math.min(1, Math.max(0, (x - a) / (b - a)));
  return t * t * (3 - 2 * t);
}

/** 1 inside a panel about the unit direction p, 0 well outside: `reach` is the cosine at its rim. */
function panel(
  x: number,
  y: number,
  z: number,
  p: readonly [number, number, number],
  reach: number,
): number {
  return smooth(reach - 0.06, reach + 0.06, x * p[0] + y * p[1] + z * p[2]);
}

/** Brightness seen in a unit direction: floor, walls and ceiling, then the lamps. */
export function brightness(x: number, y: number, z: number): number {
  const room = 0.16 + 0.3 * smooth(-0.5, 0.1, y) + 0.45 * smooth(0, 0.9, y);
  const ceiling = 5 * panel(x, y, z, [0.2, 0.97, -0.1], 0.9);
  const front = 3 * panel(x, y, z, [0.86, 0.35, -0.36], 0.93);
  const back = 2.2 * panel(x, y, z, [-0.6, 0.3, 0.74], 0.94);
  return room + ceiling + front + back;
}

/** Makes the surroundings' texture; the renderer turns it into what rough metal needs. */
export function createSurroundings(): DataTexture {
  const data = new Uint16Array(WIDTH * HEIGHT * 4);
  const one = DataUtils.toHalfFloat(1);
  for (let row = 0; row < HEIGHT; row += 1) {
    // Row 0 is the bottom of the picture: straight down.
    const up = ((row + 0.5) / HEIGHT - 0.5) * Math.PI;
    for (let column = 0; column < WIDTH; column += 1) {
      const round = ((column + 0.5) / WIDTH - 0.5) * 2 * Math.PI;
      const value = brightness(
        Math.cos(up) * Math.cos(round),
        Math.sin(up),
        Math.cos(up) * Math.sin(round),
      );
      const at = 4 * (row * WIDTH + column);
      data[at] = DataUtils.toHalfFloat(value);
      data[at + 1] = DataUtils.toHalfFloat(value * 1.005);
      data[at + 2] = DataUtils.toHalfFloat(value * 1.02);
      data[at + 3] = one;
    }
  }
  const texture = new DataTexture(data, WIDTH, HEIGHT, RGBAFormat, HalfFloatType);
  texture.mapping = EquirectangularReflectionMapping;
  texture.colorSpace = LinearSRGBColorSpace;
  texture.magFilter = LinearFilter;
  texture.minFilter = LinearFilter;
  texture.needsUpdate = true;
  return texture;
}
