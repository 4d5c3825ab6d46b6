/** Where the camera stands just now, as a shot, and how far one shot is from another. */
import { type PerspectiveCamera, Vector3 } from 'three';
import { threeToFlat } from '../axes.ts';
import type { Shot } from './framing.ts';

/** Of the controls: what the camera looks at, and how near and far the hand may take it. */
export interface Controls {
  readonly target: Vector3;
  minDistance: number;
  maxDistance: number;
}

const _direction = new Vector3();

/** Where the camera stands, as a shot. */
export function readShot(camera: PerspectiveCamera, { target }: Controls, shot: Shot): void {
  _direction.copy(camera.position).sub(target);
  shot.distance = _direction.length();
  _direction.divideScalar(shot.distance);
  threeToFlat(target, shot.target, 0);
  threeToFlat(_direction, shot.direction, 0);
  shot.fov = camera.fov;
}

/** How far apart two shots are, as a part of what is seen in the second. */
export function differenceOf(one: Shot, other: Shot): number {
  let aside = 0;
  for (let i = 0; i < 3; i += 1) aside += (other.target[i]! - one.target[i]!) ** 2;
  const seen = other.distance * Math.tan((other.fov * Math.PI) / 360);
  return Math.abs(one.distance / other.distance - 1) + Math.sqrt(aside) / seen;
}
