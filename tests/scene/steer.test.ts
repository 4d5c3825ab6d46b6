import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assemble, createPose, placeParts, Slot, solve } from '../../solver/index.ts';
import { createSteerGrip, gripWheel, steerTo } from '../../src/scene/handles/steer.ts';
import { shipped } from '../support/models.ts';

const corner = assemble(shipped('half-ton-factory'));
const RADIUS = 400;

/** Seen from straight ahead: the ray runs backwards, the screen's right is the vehicle's left. */
const BACKWARDS = [-1, 0, 0];
const RIGHT = [0, 1, 0];

/** The place of a knuckle-fixed point in a pose, from its place in another. */
function carried(point: readonly number[], from: Float64Array, to: Float64Array): number[] {
  const seat = [0, 3, 6].map((k) =>
    [0, 1, 2].reduce(
      (sum, i) => sum + (point[i]! - from[Slot.lower + i]!) * from[Slot.frame + k + i]!,
      0,
    ),
  );
  return [0, 1, 2].map(
    (i) =>
      to[Slot.lower + i]! +
      seat[0]! * to[Slot.frame + i]! +
      seat[1]! * to[Slot.frame + 3 + i]! +
      seat[2]! * to[Slot.frame + 6 + i]!,
  );
}

function posedAt(travel: number, rack: number) {
  const pose = createPose();
  expect(solve(corner, pose, travel, rack)).toBe('reached');
  placeParts(corner, pose.data);
  return pose;
}

describe('steerTo', () => {
  it('finds the rack whose wheel shows the grabbed point under the pointer', () => {
    const rack = fc.double({ min: -60, max: 60, noNaN: true });
    const travel = fc.double({ min: -90, max: 90, noNaN: true });
    fc.assert(
      fc.property(travel, rack, rack, (t, from, to) => {
        const start = posedAt(t, from);
        // The middle of the tread's front.
        const front = [
          start.data[Slot.centre]! + RADIUS * start.data[Slot.hubAxis + 1]!,
          start.data[Slot.centre + 1]! - RADIUS * start.data[Slot.hubAxis]!,
          start.data[Slot.centre + 2]!,
        ];
        const grip = createSteerGrip();
        const ray = Float64Array.from([3000, front[1]!, front[2]!, ...BACKWARDS]);
        gripWheel(grip, corner, start, front, ray, RIGHT, RADIUS);
        expect(grip.follows).toBe(true);
        const there = carried(front, start.data, posedAt(t, to).data);
        // The hand moves sideways only: along the screen direction in which it was gripped.
        const shift = [0, 1, 2].reduce(
          (sum, i) => sum + (there[i]! - front[i]!) * grip.aside[i]!,
          0,
        );
        const hand = [1, 2].map((i) => front[i]! + shift * grip.aside[i]!);
        const moved = Float64Array.from([3000, hand[0]!, hand[1]!, ...BACKWARDS]);
        expect(steerTo(grip, corner, t, moved, shift, -72, 72)).toBeCloseTo(to, 3);
      }),
      { numRuns: 60 },
    );
  });

  it('stays at the end of the rack however far the hand goes', () => {
    const start = posedAt(0, 0);
    const front = [start.data[Slot.centre]! + RADIUS, start.data[Slot.centre + 1]!, 0];
    const grip = createSteerGrip();
    const ray = Float64Array.from([3000, front[1]!, 0, ...BACKWARDS]);
    gripWheel(grip, corner, start, front, ray, RIGHT, RADIUS);
    const far = Float64Array.from([3000, front[1]! + 300, 0, ...BACKWARDS]);
    expect(Math.abs(steerTo(grip, corner, 0, far, 300, -72, 72))).toBe(72);
  });

  it('gears the rack to the hand where the view shows none of the point’s way', () => {
    const start = posedAt(0, 0);
    // From the side the front of the tread moves into the picture: nothing to follow.
    const front = [start.data[Slot.centre]! + RADIUS, start.data[Slot.centre + 1]!, 0];
    const grip = createSteerGrip();
    const ray = Float64Array.from([front[0]!, 4000, 0, 0, -1, 0]);
    gripWheel(grip, corner, start, front, ray, [-1, 0, 0], RADIUS);
    expect(grip.follows).toBe(false);
    const one = steerTo(grip, corner, 0, ray, 10, -72, 72);
    expect(one).not.toBe(0);
    expect(steerTo(grip, corner, 0, ray, 20, -72, 72)).toBeCloseTo(2 * one, 9);
    expect(steerTo(grip, corner, 0, ray, -10, -72, 72)).toBeCloseTo(-one, 9);
  });
});
