/** A pen that notes where on the screen it draws, beside drawing. */
import { type Camera, Vector3 } from 'three';
import type { Box } from '../../state/litBox.ts';
import { toThree } from '../axes.ts';
import type { Pen } from './pen.ts';

export interface Probe {
  readonly pen: Pen;
  /** Forgets what was drawn; the picture is seen by `camera` in a canvas of this size, px. */
  begin(camera: Camera, width: number, height: number): void;
  /** Edges of what was drawn since, px from the canvas's top left corner; null where nothing was. */
  box(): Box | null;
}

/** Room a label takes beside its point, px. */
const LABEL = 40;
const _place = new Vector3();

export function createProbe(pen: Pen): Probe {
  const edges = { left: 0, top: 0, right: 0, bottom: 0 };
  let camera: Camera | null = null;
  let width = 1;
  let height = 1;

  function note(x: number, y: number, z: number, room: number): void {
    if (camera === null) return;
    toThree(x, y, z, _place).project(camera);
    if (!(_place.z <= 1 && _place.z >= -1)) return;
    const px = ((_place.x + 1) / 2) * width;
    const py = ((1 - _place.y) / 2) * height;
    edges.left = Math.min(edges.left, px - room);
    edges.right = Math.max(edges.right, px + room);
    edges.top = Math.min(edges.top, py - room);
    edges.bottom = Math.max(edges.bottom, py + room);
  }

  return {
    pen: {
      line(ax, ay, az, bx, by, bz, tone) {
        note(ax, ay, az, 0);
        note(bx, by, bz, 0);
        pen.line(ax, ay, az, bx, by, bz, tone);
      },
      label(x, y, z, tone, words, value) {
        note(x, y, z, LABEL);
        pen.label(x, y, z, tone, words, value);
      },
      sees: (x, y, z) => pen.sees(x, y, z),
      // Its rim is drawn in lines too, which are noted.
      cone(x, y, z, ux, uy, uz, reach, half, tone) {
        pen.cone?.(x, y, z, ux, uy, uz, reach, half, tone);
      },
    },
    begin(nextCamera, nextWidth, nextHeight) {
      camera = nextCamera;
      width = nextWidth;
      height = nextHeight;
      edges.left = Number.POSITIVE_INFINITY;
      edges.top = Number.POSITIVE_INFINITY;
      edges.right = Number.NEGATIVE_INFINITY;
      edges.bottom = Number.NEGATIVE_INFINITY;
    },
    box: () => (edges.right > edges.left ? { ...edges } : null),
  };
}
