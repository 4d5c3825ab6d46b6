import fc from 'fast-check';
import numeric from 'numeric';
import { describe, expect, it } from 'vitest';
import { assemble, createPose, type Pose, poseReport, Slot, solve } from '../../solver/index.ts';
import { withoutSettings } from '../../src/state/posed.ts';
import { buildable, heading, inRange, place } from '../support/arbitraries.ts';
import { shipped } from '../support/models.ts';
import { nineEquations } from '../support/nineEquations.ts';

const ballJoints = (pose: Pose) =>
  [Slot.lower, Slot.upper, Slot.outer].flatMap((at) => [...pose.data.slice(at, at + 3)]);

describe('a pose out of reach', () => {
  it('says where the last reachable one is, to 0.01 mm: just short of it is reached, just beyond it is not', () => {
    const pose = createPose();
    let refused = 0;
    fc.assert(
      fc.property(buildable, heading, (model, [up, along]) => {
        const corner = assemble(model);
        const travel = up * 1000;
        const rack = along * 1000;
        const outcome = solve(corner, pose, travel, rack);
        if (outcome === 'reached') return;
        refused += 1;
        expect(['lowerArm', 'upperArm', 'tieRod']).toContain(outcome);
        const { lastTravel, lastRack } = pose;
        const span = Math.hypot(travel, rack);
        const q = Math.hypot(lastTravel, lastRack) / span;
        expect(q).toBeLessThan(1);
        expect(Math.abs(lastTravel - q * travel)).toBeLessThan(1e-9);
        expect(Math.abs(lastRack - q * rack)).toBeLessThan(1e-9);
        // The buffer keeps a finite pose, the last reachable one.
        expect(pose.data.slice(0, Slot.hubAxis).every(Number.isFinite)).toBe(true);
        expect(Math.abs(pose.data[Slot.travel]! - lastTravel)).toBeLessThan(1e-9);
        const before = Math.max(0, q - 0.005 / span);
        const beyond = q + 0.01 / span;
        expect(solve(corner, pose, before * travel, before * rack)).toBe('reached');
        expect(solve(corner, pose, beyond * travel, beyond * rack)).not.toBe('reached');
      }),
      { numRuns: 250, seed: 20261125 },
    );
    expect(refused).toBeGreaterThan(100);
  });

  it('is bounded by a singular pose of the plain nine equations: their determinant comes close to 0 there', () => {
    const pose = createPose();
    let refused = 0;
    fc.assert(
      fc.property(buildable, heading, (drawn, [up, along]) => {
        const model = withoutSettings(drawn);
        const corner = assemble(model);
        if (solve(corner, pose, up * 1000, along * 1000) === 'reached') return;
        refused += 1;
        const system = nineEquations(model);
        const determinant = (travel: number, rack: number) =>
          numeric.det(system.jacobian(ballJoints(pose), travel, rack));
        const { lastTravel, lastRack } = pose;
        const last = determinant(lastTravel, lastRack);
        const share = 1 - 1 / Math.hypot(lastTravel, lastRack);
        expect(solve(corner, pose, share * lastTravel, share * lastRack)).toBe('reached');
        const millimetreBefore = determinant(share * lastTravel, share * lastRack);
        // It goes to 0 like the square root of the way left, and less than 1e-3 mm is left.
        expect(last / millimetreBefore).toBeGreaterThan(-1e-6);
        expect(last / millimetreBefore).toBeLessThan(0.05);
      }),
      { numRuns: 250, seed: 20261126 },
    );
    expect(refused).toBeGreaterThan(100);
  });

  it('names the tie rod when the rack pulls it further than the steering arm lets it', () => {
    const report = poseReport(assemble(shipped('half-ton-factory')), 0, -400);
    expect(report).toMatchObject({ reached: false, fails: 'tieRod', lastTravel: 0 });
  });

  it('names the settings’ constraint and the design pose when a tie rod is turned out of reach', () => {
    const model = shipped('half-ton-factory');
    const turned = { ...model, tieRod: { ...model.tieRod, turns: 400 } };
    const report = poseReport(assemble(turned), 20, 5);
    expect(report).toEqual({ reached: false, fails: 'tieRod', lastTravel: 0, lastRack: 0 });
  });
});

describe('a reached pose', () => {
  it('is on the design pose’s branch: the determinant of the nine equations never changes sign on the way', () => {
    const pose = createPose();
    fc.assert(
      fc.property(buildable, place, (drawn, where) => {
        const model = withoutSettings(drawn);
        const corner = assemble(model);
        const [travel, rack] = inRange(model, where);
        const system = nineEquations(model);
        const home = numeric.det(system.jacobian(system.start, 0, 0));
        for (let step = 1; step <= 20; step += 1) {
          const t = (3 * travel * step) / 20;
          const r = (2 * rack * step) / 20;
          if (solve(corner, pose, t, r) !== 'reached') return;
          const now = numeric.det(system.jacobian(ballJoints(pose), t, r));
          expect(now / home).toBeGreaterThan(0);
        }
      }),
      { numRuns: 150, seed: 20261127 },
    );
  });
});
