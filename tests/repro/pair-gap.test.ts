import { expect, it } from 'vitest';
import {
  createPairGap,
  type PairGap,
  pairGapInto,
  type Shape,
  Slot,
  type Vector3,
} from '../../solver/index.ts';
import { createPose } from '../../solver/linkage/solve.ts';
import { pairOf } from '../support/shapes.ts';

function gapAbout(centre: Vector3, axis: Vector3, first: Shape, second: Shape): PairGap {
  const pose = createPose();
  pose.data.set(centre, Slot.centre);
  pose.data.set(axis, Slot.hubAxis);
  const out = createPairGap(pairOf(first, second));
  pairGapInto(out, pose);
  return out;
}

const EXTENT = { sLow: 0, sHigh: 0, radiusLow: 0, radiusHigh: 0 };

it('pair-gap 4: a tube along the axis crosses an upright disc’s plane beside the disc, not nowhere', () => {
  const tube = {
    kind: 'chain',
    name: 'tube',
    body: 'vehicle',
    strands: [{ points: Float64Array.of(0, 0, 0, 0, 60, 80), radii: Float64Array.of(4) }],
  } as const;
  const disc = {
    kind: 'revolved',
    name: 'wheel',
    body: 'knuckle',
    sections: [
      { name: 'disc', line: Float64Array.of(39, 46, 39, 210), half: 0, solid: false } as const,
    ],
    extent: EXTENT,
  } as const;
  expect(gapAbout([0, 0, 0], [0, 0.6, 0.8], tube, disc).gap).toBeCloseTo(42, 9);
  expect(gapAbout([0, 0, 0], [0, 0.8, 0.6], tube, disc).gap).toBeLessThan(30);
});

it('pair-gap 7785: a box’s face square to the axis is seen between its middle and its edges', () => {
  const box = {
    kind: 'box',
    name: 'box',
    body: 'vehicle',
    min: [-250, -250, -200],
    max: [250, 250, 0],
  } as const;
  const line = Float64Array.of(-50, 100, -50, 180, 50, 180, 50, 100, -50, 100);
  const tyre = {
    kind: 'revolved',
    name: 'tyre',
    body: 'knuckle',
    sections: [{ name: 'tyre', line, half: 0, solid: true } as const],
    extent: EXTENT,
  } as const;
  // The tyre, 80 mm high, stands 20 mm deep in the box: that far is the deepest point of the face from its side.
  expect(gapAbout([0, 0, 30], [0, 0, 1], tyre, box).gap).toBeCloseTo(-20, 2);
});
