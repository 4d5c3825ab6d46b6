/** Where the close-up is looked at from, as near the picture's own view as may be: a gap square to its way, a cam along its bolt. */
import { type Camera, type PerspectiveCamera, Vector3 } from 'three';
import { toThree } from '../axes.ts';

/** Height that the frame shows, mm: some room about the spot, more where the gap is wide. */
const LEAST_HEIGHT = 110;
const GAPS_HIGH = 2.6;
/** What stands nearer to the eye than this before the spot, as part of the height shown, is cut off. */
const IN_FRONT = 0.6;

const _a = new Vector3();
const _b = new Vector3();
const _spot = new Vector3();
const _along = new Vector3();
const _from = new Vector3();

/** Turns `camera` to the spot between two points, vehicle axes, mm; `eye` is the picture's own camera. Allocates nothing. */
export function aimAtSpot(
  camera: PerspectiveCamera,
  eye: Camera,
  pointA: ArrayLike<number>,
  pointB: ArrayLike<number>,
): void {
  toThree(pointA[0]!, pointA[1]!, pointA[2]!, _a);
  toThree(pointB[0]!, pointB[1]!, pointB[2]!, _b);
  _spot.addVectors(_a, _b).multiplyScalar(0.5);
  _along.subVectors(_b, _a);
  const apart = _along.length();
  _from.setFromMatrixColumn(eye.matrixWorld, 2);
  if (apart > 1e-6) {
    _along.divideScalar(apart);
    _from.addScaledVector(_along, -_from.dot(_along));
  }
  if (_from.lengthSq() < 0.05) _from.setFromMatrixColumn(eye.matrixWorld, 1);
  _from.normalize();
  const high = Math.max(LEAST_HEIGHT, GAPS_HIGH * apart);
  const distance = high / 2 / Math.tan((camera.fov * Math.PI) / 360);
  camera.near = distance - IN_FRONT * high;
  camera.far = distance + 12 * high;
  camera.position.copy(_spot).addScaledVector(_from, distance);
  camera.up.setFromMatrixColumn(eye.matrixWorld, 1);
  camera.lookAt(_spot);
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}

/** Height that the frame shows of a cam, mm; the way it is looked at from above, as part of the way along its bolt. */
const CAM_HIGH = 115;
const FROM_ABOVE = 0.22;

/** Turns `camera` to a cam on a pivot, vehicle axes, mm, along the axis of its bolt. Allocates nothing. */
export function aimAtCam(
  camera: PerspectiveCamera,
  eye: Camera,
  pivot: ArrayLike<number>,
  other: ArrayLike<number>,
): void {
  toThree(pivot[0]!, pivot[1]!, pivot[2]!, _spot);
  toThree(other[0]!, other[1]!, other[2]!, _b);
  _along.subVectors(_spot, _b).normalize();
  // Away from the arm's other pivot there is nothing before it.
  _from.copy(_along);
  _a.setFromMatrixColumn(eye.matrixWorld, 1);
  _from.addScaledVector(_a, FROM_ABOVE).normalize();
  const distance = CAM_HIGH / 2 / Math.tan((camera.fov * Math.PI) / 360);
  camera.near = distance - IN_FRONT * CAM_HIGH;
  camera.far = distance + 12 * CAM_HIGH;
  camera.position.copy(_spot).addScaledVector(_from, distance);
  camera.up.set(0, 1, 0);
  camera.lookAt(_spot);
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}
