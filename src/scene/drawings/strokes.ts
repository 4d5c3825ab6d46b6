/** The strokes of all drawings as one object of wide lines with room for a fixed number, rewritten in place each frame. */
import { Color, InstancedInterleavedBuffer, InterleavedBufferAttribute } from 'three';
import { LineMaterial } from 'three/addons/lines/LineMaterial.js';
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js';
import type { Palette, Tone } from '../palette.ts';

const MOST = 4000;

export interface Strokes {
  readonly object: LineSegments2;
  /** `more` are tones that not every picture has. */
  paint(palette: Palette, more?: Readonly<Partial<Record<Tone, string>>>): void;
  begin(): void;
  line(ax: number, ay: number, az: number, bx: number, by: number, bz: number, tone: Tone): void;
  end(): void;
  dispose(): void;
}

/**
 * Strokes `width` CSS pixels wide. They are drawn over the bodies, since what they explain is often inside them, unless
 * `isHidden`: then bodies before them hide them.
 */
export function createStrokes(width: number, isHidden = false): Strokes {
  const places = new InstancedInterleavedBuffer(new Float32Array(6 * MOST), 6, 1);
  const colours = new InstancedInterleavedBuffer(new Float32Array(6 * MOST), 6, 1);
  const geometry = new LineSegmentsGeometry();
  geometry.setAttribute('instanceStart', new InterleavedBufferAttribute(places, 3, 0));
  geometry.setAttribute('instanceEnd', new InterleavedBufferAttribute(places, 3, 3));
  geometry.setAttribute('instanceColorStart', new InterleavedBufferAttribute(colours, 3, 0));
  geometry.setAttribute('instanceColorEnd', new InterleavedBufferAttribute(colours, 3, 3));
  const material = new LineMaterial({
    linewidth: width,
    vertexColors: true,
    depthTest: isHidden,
    depthWrite: false,
    transparent: true,
    toneMapped: false,
  });
  const object = new LineSegments2(geometry, material);
  object.frustumCulled = false;
  object.renderOrder = 50;
  object.visible = false;
  object.raycast = () => undefined;
  const tones: Partial<Record<Tone, Color>> = {};
  /** The colour each stroke was last drawn in: colours seldom change, and are not handed over again. */
  const drawn: (Color | undefined)[] = new Array<Color | undefined>(MOST).fill(undefined);
  let isRecoloured = false;
  let count = 0;

  return {
    object,
    paint(palette, more = {}) {
      for (const [tone, colour] of Object.entries({ ...palette.tones, ...more })) {
        tones[tone as Tone] = new Color(colour);
      }
    },
    begin() {
      count = 0;
    },
    line(ax, ay, az, bx, by, bz, tone) {
      const colour = tones[tone];
      if (count >= MOST || colour === undefined) return;
      const at = 6 * count;
      const place = places.array;
      place[at] = ax;
      place[at + 1] = ay;
      place[at + 2] = az;
      place[at + 3] = bx;
      place[at + 4] = by;
      place[at + 5] = bz;
      if (drawn[count] !== colour) {
        drawn[count] = colour;
        isRecoloured = true;
        const shade = colours.array;
        for (let i = 0; i < 6; i += 3) {
          shade[at + i] = colour.r;
          shade[at + i + 1] = colour.g;
          shade[at + i + 2] = colour.b;
        }
      }
      count += 1;
    },
    end() {
      object.visible = count > 0;
      geometry.instanceCount = count;
      if (count === 0) return;
      places.clearUpdateRanges();
      places.addUpdateRange(0, 6 * count);
      places.needsUpdate = true;
      if (!isRecoloured) return;
      isRecoloured = false;
      colours.clearUpdateRanges();
      colours.addUpdateRange(0, 6 * count);
      colours.needsUpdate = true;
    },
    dispose() {
      geometry.dispose();
      material.dispose();
    },
  };
}
