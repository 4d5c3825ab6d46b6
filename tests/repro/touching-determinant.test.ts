import { describe, expect, it } from 'vitest';
import { assemble, createPose, type Model, solve } from '../../solver/index.ts';
import { shipped, sound } from '../support/models.ts';

/** Equal parallel arms that lean: at the change point arms, rod and kingpin line up, and the determinant touches 0 without changing sign. */
function leaning(): Model {
  const model = shipped('planar-equal-arms');
  const out = (point: readonly [number, number, number], by: number) => [
    point[0],
    point[1] + by,
    point[2],
  ];
  const { upperArm, tieRod } = model;
  return sound({
    ...model,
    upperArm: {
      ...upperArm,
      frontPivot: out(upperArm.frontPivot, 60),
      rearPivot: out(upperArm.rearPivot, 60),
      ballJoint: out(upperArm.ballJoint, 60),
    },
    tieRod: { ...tieRod, inner: out(tieRod.inner, 20), outer: out(tieRod.outer, 20) },
  });
}

describe('a singular pose whose determinant does not change sign', () => {
  it('ends the path all the same, wherever beyond it one asks', () => {
    const corner = assemble(leaning());
    const pose = createPose();
    expect(solve(corner, pose, 343, 0)).toBe('reached');
    for (let travel = 343.3; travel < 356; travel += 0.13) {
      expect(solve(corner, pose, travel, 0), String(travel)).not.toBe('reached');
      expect(Math.abs(pose.lastTravel - 343.2032)).toBeLessThan(0.01);
    }
  });

  it('is itself no reachable pose: equal arms straight down or up', () => {
    const corner = assemble(shipped('planar-equal-arms'));
    const pose = createPose();
    for (const travel of [-350, 350, -350.0000001]) {
      expect(solve(corner, pose, travel, 0), String(travel)).not.toBe('reached');
      expect(Math.abs(Math.abs(pose.lastTravel) - 350)).toBeLessThan(0.01);
    }
  });
});
