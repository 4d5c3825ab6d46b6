/** The pointer over the picture: its place, its ray, and the screen's axes, all in vehicle axes. Refilled, never made anew. */
import { type PerspectiveCamera, Raycaster, Vector2, Vector3 } from 'three';
import { flatToThree, rayToFlat, threeToFlat } from '../axes.ts';
import type { FlatRay, Triple } from './rays.ts';

export interface Pointer {
  /** Px from the canvas's top left corner. */
  x: number;
  y: number;
  readonly ray: FlatRay;
  /** Unit directions of the screen: right, up, and away from the person. */
  readonly right: Float64Array;
  readonly up: Float64Array;
  readonly away: Float64Array;
  /** Part of a fine drag, free drag: the keys held. */
  isFine: boolean;
  isFree: boolean;
  /** A finger needs more room than a mouse, px. */
  reach: number;
  /** Reads an event against the camera as it was last drawn. */
  read(event: PointerEvent, canvas: HTMLCanvasElement, camera: PerspectiveCamera): void;
  /** Writes where a point lies on the canvas, px, into `screen`; false behind the camera. */
  project(point: Triple, at: number): boolean;
  readonly screen: { x: number; y: number };
  /** Length at a point that one px shows, mm. */
  lengthPerPixel(point: Triple, at: number): number;
}

const _raycaster = new Raycaster();
const _spot = new Vector2();
const _point = new Vector3();

/** mm that one px shows at a point's depth: 2·depth·tan(fov/2) over the picture's height. */
function lengthOfPixel(
  camera: PerspectiveCamera,
  height: number,
  point: Triple,
  at: number,
): number {
  flatToThree(point, at, _point).applyMatrix4(camera.matrixWorldInverse);
  return (-_point.z * 2 * Math.tan((camera.fov * Math.PI) / 360)) / height;
}

/** A function that gives the mm one px shows at a point. */
export function createRuler(
  camera: () => PerspectiveCamera,
  canvas: HTMLCanvasElement,
): (point: Triple) => number {
  return (point) => lengthOfPixel(camera(), canvas.clientHeight, point, 0);
}

export function createPointer(): Pointer {
  let width = 1;
  let height = 1;
  let camera: PerspectiveCamera | null = null;
  const pointer: Pointer = {
    x: 0,
    y: 0,
    ray: new Float64Array(6),
    right: new Float64Array(3),
    up: new Float64Array(3),
    away: new Float64Array(3),
    isFine: false,
    isFree: false,
    reach: 12,
    screen: { x: 0, y: 0 },
    read(event, canvas, seenBy) {
      camera = seenBy;
      const { left, top, width: w, height: h } = canvas.getBoundingClientRect();
      width = w;
      height = h;
      pointer.x = event.clientX - left;
      pointer.y = event.clientY - top;
      pointer.isFine = event.shiftKey;
      pointer.isFree = event.altKey;
      pointer.reach = event.pointerType === 'touch' ? 24 : 12;
      _spot.set((pointer.x / w) * 2 - 1, 1 - (pointer.y / h) * 2);
      _raycaster.setFromCamera(_spot, seenBy);
      rayToFlat(_raycaster.ray, pointer.ray);
      threeToFlat(_point.setFromMatrixColumn(seenBy.matrixWorld, 0), pointer.right, 0);
      threeToFlat(_point.setFromMatrixColumn(seenBy.matrixWorld, 1), pointer.up, 0);
      threeToFlat(_point.setFromMatrixColumn(seenBy.matrixWorld, 2).negate(), pointer.away, 0);
    },
    project(point, at) {
      if (camera === null) return false;
      flatToThree(point, at, _point).project(camera);
      if (_point.z > 1 || _point.z < -1) return false;
      pointer.screen.x = ((_point.x + 1) / 2) * width;
      pointer.screen.y = ((1 - _point.y) / 2) * height;
      return true;
    },
    lengthPerPixel(point, at) {
      return camera === null ? 1 : lengthOfPixel(camera, height, point, at);
    },
  };
  return pointer;
}
