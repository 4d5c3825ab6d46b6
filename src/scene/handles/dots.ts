/** The handles of the hard points as round dots of one size on the screen, rewritten in place each frame. */
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DataTexture,
  Group,
  LinearFilter,
  Points,
  PointsMaterial,
  RGBAFormat,
} from 'three';
import type { Palette } from '../palette.ts';

const MOST = 128;
/** Diameter, px. */
const SIZE = 13;
/** Pale edge around it, px. */
const HALO = 5;
const PICTURE = 32;

/** A white disc with a darker rim, soft at the edge. */
function discPicture(): DataTexture {
  const data = new Uint8Array(PICTURE * PICTURE * 4);
  for (let i = 0; i < PICTURE * PICTURE; i += 1) {
    const x = (((i % PICTURE) + 0.5) / PICTURE) * 2 - 1;
    const y = ((Math.floor(i / PICTURE) + 0.5) / PICTURE) * 2 - 1;
    const r = Math.hypot(x, y);
    const shade = r > 0.6 ? 255 : 150;
    data.fill(shade, 4 * i, 4 * i + 3);
    data[4 * i + 3] = Math.round(255 * Math.min(1, Math.max(0, (0.98 - r) * 12)));
  }
  const texture = new DataTexture(data, PICTURE, PICTURE, RGBAFormat);
  texture.magFilter = LinearFilter;
  texture.minFilter = LinearFilter;
  texture.needsUpdate = true;
  return texture;
}

export interface Dots {
  readonly object: Group;
  paint(palette: Palette): void;
  begin(): void;
  put(place: Float64Array, isLit: boolean): void;
  end(): void;
  dispose(): void;
}

export function createDots(): Dots {
  const geometry = new BufferGeometry();
  const places = new BufferAttribute(new Float32Array(3 * MOST), 3);
  const colours = new BufferAttribute(new Float32Array(3 * MOST), 3);
  geometry.setAttribute('position', places);
  geometry.setAttribute('color', colours);
  const map = discPicture();
  const material = new PointsMaterial({
    map,
    size: SIZE,
    sizeAttenuation: false,
    vertexColors: true,
    transparent: true,
    depthTest: false,
    depthWrite: false,
    toneMapped: false,
  });
  const halo = new PointsMaterial({
    map,
    size: SIZE + HALO,
    sizeAttenuation: false,
    transparent: true,
    depthTest: false,
    depthWrite: false,
    toneMapped: false,
  });
  const object = new Group();
  // A pale edge, so that a dot shows on a dark tyre as well as on the ground.
  for (const [under, order] of [
    [halo, 59],
    [material, 60],
  ] as const) {
    const points = new Points(geometry, under);
    points.frustumCulled = false;
    points.renderOrder = order;
    object.add(points);
  }
  const plain = new Color();
  const lit = new Color();
  let count = 0;

  return {
    object,
    paint(palette) {
      plain.set(palette.tones.accent);
      lit.set(palette.tones.near);
    },
    begin() {
      count = 0;
    },
    put(place, isLit) {
      if (count >= MOST) return;
      const colour = isLit ? lit : plain;
      places.setXYZ(count, place[0]!, place[1]!, place[2]!);
      colours.setXYZ(count, colour.r, colour.g, colour.b);
      count += 1;
    },
    end() {
      object.visible = count > 0;
      if (count === 0) return;
      geometry.setDrawRange(0, count);

      places.needsUpdate = true;
      colours.needsUpdate = true;
    },
    dispose() {
      geometry.dispose();
      material.dispose();
      halo.dispose();
      map.dispose();
    },
  };
}
