/** Enclosures of the linkage's motion over cells of travel × rack hold what sampling finds in them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leverEndOver, NOWHERE } from '../../solver/certify/leverEnd.ts';
import { encloseMotion, type Motion } from '../../solver/certify/motion.ts';
import { rodAxesOver, seenCarried, seenMoving } from '../../solver/certify/seen.ts';
import { type TaylorVector, tripleAt } from '../../solver/certify/taylor.ts';
import {
  assemble,
  type Carrier,
  type Corner,
  createPose,
  type Pose,
  placeParts,
  poseRates,
  Slot,
  solve,
} from '../../solver/index.ts';
import { carrier } from '../../solver/model/defaults.ts';
import { buildable, inRange, place } from '../support/arbitraries.ts';

const half = fc.tuple(
  fc.double({ min: 0.05, max: 12, noNaN: true }),
  fc.double({ min: 0.05, max: 12, noNaN: true }),
);
/** Rounding and the solver's residuals, mm. */
const ROUNDING = 1e-8;
const corners = [-1, 1].flatMap((a) => [-1, 1].map((b) => [a, b] as const));
const inside = fc.array(
  fc.tuple(
    fc.double({ min: -1, max: 1, noNaN: true }),
    fc.double({ min: -1, max: 1, noNaN: true }),
  ),
  { minLength: 6, maxLength: 6 },
);

function placed(corner: Corner, pose: Pose, travel: number, rack: number): boolean {
  if (solve(corner, pose, travel, rack) !== 'reached') return false;
  placeParts(corner, pose.data);
  poseRates(corner.linkage.fixed, pose.data);
  return true;
}

/** How far the point is outside of its enclosure at (a, b), mm; negative inside. */
function outside(model: TaylorVector, [a, b]: readonly [number, number], point: number[]): number {
  const [x = 0, y = 0, z = 0] = point;
  return (
    Math.hypot(
      x - model.x - a * model.ax - b * model.bx,
      y - model.y - a * model.ay - b * model.by,
      z - model.z - a * model.az - b * model.bz,
    ) - model.rest
  );
}

/** A point of the pose seen from the frame of the knuckle there, in the axes of the centre's pose. */
function seenFromKnuckle(centre: Float64Array, pose: Float64Array, at: number): number[] {
  const parts = [0, 3, 6].map((axis) => {
    let sum = 0;
    for (let i = 0; i < 3; i += 1) {
      sum += pose[Slot.frame + axis + i]! * (pose[at + i]! - pose[Slot.lower + i]!);
    }
    return sum;
  });
  return [0, 1, 2].map((i) =>
    parts.reduce((sum, part, axis) => sum + part * centre[Slot.frame + 3 * axis + i]!, 0),
  );
}

function enclosed(corner: Corner, centre: Float64Array, motion: Motion, pose: Float64Array) {
  const cell = { motion, pose: centre };
  const ground = (at: number): number[] => [...pose.slice(at, at + 3)];
  const carried = (on: Carrier, at: number) =>
    seenCarried(cell, on, tripleAt(centre, at), 'ground');
  const damperOn = carrier(corner.model.coilover!);
  const found: [string, TaylorVector, number[]][] = [
    ['lower ball joint', motion.lowerArm.origin, ground(Slot.lower)],
    ['upper ball joint', motion.upperArm.origin, ground(Slot.upper)],
    ['tie rod outer', motion.outer, ground(Slot.outer)],
    ['tie rod inner', motion.inner, ground(Slot.inner)],
    ['wheel centre', carried('knuckle', Slot.centre), ground(Slot.centre)],
    ['damper bottom', carried(damperOn, Slot.damperBottom), ground(Slot.damperBottom)],
    [
      'tie rod inner from the knuckle',
      seenMoving(motion, motion.inner, 'knuckle'),
      seenFromKnuckle(centre, pose, Slot.inner),
    ],
    [
      'damper bottom from the knuckle',
      seenCarried(cell, damperOn, tripleAt(centre, Slot.damperBottom), 'knuckle'),
      seenFromKnuckle(centre, pose, Slot.damperBottom),
    ],
  ];
  const lever = leverEndOver(
    corner.lever!.circle,
    centre,
    { angle: Slot.leverCos, end: Slot.leverEnd, room: Slot.leverRoom },
    carried(carrier(corner.model.antiRollBar!), Slot.link),
  );
  if (lever !== null && lever !== NOWHERE) found.push(['lever end', lever, ground(Slot.leverEnd)]);
  const { stud } = corner.joints.rod;
  const studAt = { x: 0, y: 0, z: 0 };
  for (let axis = 0; axis < 3; axis += 1) {
    studAt.x += stud[axis]! * centre[Slot.frame + 3 * axis]!;
    studAt.y += stud[axis]! * centre[Slot.frame + 3 * axis + 1]!;
    studAt.z += stud[axis]! * centre[Slot.frame + 3 * axis + 2]!;
  }
  const axes = rodAxesOver(motion, studAt);
  axes?.forEach((axis, i) => {
    found.push([`rod axis ${i + 1}`, axis, ground(Slot.rodFrame + 3 * i)]);
  });
  return found;
}

describe('an enclosure of the motion over a cell', () => {
  it('holds every pose sampled in the cell, and all of them can be reached', () => {
    let proven = 0;
    const centre = createPose();
    const pose = createPose();
    fc.assert(
      fc.property(buildable, place, half, inside, (model, where, [up, across], samples) => {
        const corner = assemble(model);
        const [travel, rack] = inRange(model, where);
        if (!placed(corner, centre, travel, rack)) return;
        const motion = encloseMotion(corner.linkage, centre.data, { travel: up, rack: across });
        if (motion === null) return;
        proven += 1;
        for (const [a, b] of [...corners, ...samples]) {
          expect(placed(corner, pose, travel + a * up, rack + b * across)).toBe(true);
          for (const [name, enclosure, point] of enclosed(corner, centre.data, motion, pose.data)) {
            expect(outside(enclosure, [a, b], point), name).toBeLessThan(ROUNDING);
          }
        }
      }),
      { numRuns: 300, seed: 20261128 },
    );
    expect(proven).toBeGreaterThan(150);
  });

  it('is tight: what it leaves open shrinks with the square of the cell’s size', () => {
    const centre = createPose();
    fc.assert(
      fc.property(buildable, (model) => {
        const corner = assemble(model);
        if (!placed(corner, centre, 0, 0)) return;
        const restOf = (size: number) =>
          encloseMotion(corner.linkage, centre.data, { travel: size, rack: size })!.outer.rest;
        expect(restOf(0.1) / restOf(0.01)).toBeGreaterThan(80);
        expect(restOf(0.1) / restOf(0.01)).toBeLessThan(120);
        // Half the square over the shortest lever, some 100 mm, twice over for both inputs together.
        expect(restOf(0.1)).toBeLessThan(0.1 ** 2 * 0.05);
      }),
      { numRuns: 50, seed: 20261129 },
    );
  });

  it('is refused where a singular pose is in the cell', () => {
    const centre = createPose();
    let refused = 0;
    fc.assert(
      fc.property(buildable, fc.integer({ min: 0, max: 359 }), (model, degrees) => {
        const corner = assemble(model);
        const [up, along] = [Math.cos(degrees), Math.sin(degrees)];
        if (solve(corner, centre, 1000 * up, 1000 * along) === 'reached') return;
        const { lastTravel, lastRack } = centre;
        const back = 1 - 2 / Math.hypot(lastTravel, lastRack);
        if (back < 0 || !placed(corner, centre, back * lastTravel, back * lastRack)) return;
        refused += 1;
        const size = { travel: 3, rack: 3 };
        expect(encloseMotion(corner.linkage, centre.data, size)).toBeNull();
      }),
      { numRuns: 100, seed: 20261130 },
    );
    expect(refused).toBeGreaterThan(50);
  });
});
