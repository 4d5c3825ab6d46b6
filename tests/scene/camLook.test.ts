/** The near look at a cam: from outside its arm, along its bolt, the pivot in the middle of the frame. */
import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { assemble } from '../../solver/index.ts';
import { toThree } from '../../src/scene/axes.ts';
import { aimAtCam } from '../../src/scene/closeUp/aim.ts';
import { shipped } from '../support/models.ts';

const PAIRS = [
  ['lowerFront', 'lowerRear'],
  ['lowerRear', 'lowerFront'],
  ['upperFront', 'upperRear'],
  ['upperRear', 'upperFront'],
] as const;

describe.each(['half-ton-long-travel', 'rear-steer-saloon'] as const)('a cam of %s', (name) => {
  const { pivots } = assemble(shipped(name)).linkage;

  it.each(PAIRS)('at %s is looked at from outside, in the middle of the frame', (at, other) => {
    const eye = new PerspectiveCamera();
    eye.position.set(2000, 900, 1500);
    eye.lookAt(0, 0, 0);
    eye.updateMatrixWorld();
    const camera = new PerspectiveCamera(24, 1.26, 1, 10_000);
    aimAtCam(camera, eye, pivots[at], pivots[other]);
    const place = (point: readonly [number, number, number]) => toThree(...point, new Vector3());
    const [pivot, far] = [place(pivots[at]), place(pivots[other])];
    const seen = pivot.clone().project(camera);
    expect(Math.hypot(seen.x, seen.y)).toBeLessThan(1e-6);
    expect(Math.abs(seen.z)).toBeLessThan(1);
    const along = pivot.clone().sub(far).normalize();
    const from = camera.position.clone().sub(pivot).normalize();
    expect(along.dot(from)).toBeGreaterThan(0.9);
    // The arm's other pivot is behind the cam, never before it.
    expect(camera.position.distanceTo(far)).toBeGreaterThan(camera.position.distanceTo(pivot));
  });
});
