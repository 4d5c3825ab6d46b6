import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellAt, createCellTree, WHOLE } from '../../solver/certify/cells.ts';
import {
  assemble,
  type Corner,
  createMargins,
  createMeasures,
  createPairGap,
  createPose,
  extremesOf,
  firstStops,
  type Limit,
  limitedValue,
  limitsOf,
  type Model,
  measureInto,
  pairGapInto,
  type Ray,
  solve,
  usableRegion,
  watchedPairs,
} from '../../solver/index.ts';
import { quantityOver } from '../../solver/stops/enclosed.ts';
import { quantitiesOf } from '../../solver/stops/extremes.ts';
import { measureQuantities, quantityOf } from '../../solver/stops/quantity.ts';
import { buildable, inRange, place } from '../support/arbitraries.ts';

const angle = fc.double({ min: 4, max: 30, noNaN: true });
const length = fc.double({ min: 1, max: 60, noNaN: true });

/** A random corner with a strap, and limits that are met early or late or never. */
const limitedModel: fc.Arbitrary<Model> = fc
  .record({
    model: buildable,
    angles: fc.tuple(angle, angle, angle, angle, angle, angle),
    lengths: fc.tuple(length, length, length, length, length),
  })
  .map(({ model, angles, lengths }) => {
    const { coilover, halfShaft, lowerArm, upperArm, tieRod } = model;
    const across = coilover!.top.map((each, i) => (each - coilover!.bottom[i]!) ** 2);
    const design = Math.sqrt(across[0]! + across[1]! + across[2]!);
    return {
      ...model,
      lowerArm: { ...lowerArm, ballJointLimit: angles[0] },
      upperArm: { ...upperArm, ballJointLimit: angles[1] },
      tieRod: { ...tieRod, endLimit: angles[2], innerLimit: angles[3] },
      coilover: {
        ...coilover!,
        minLength: design - lengths[0],
        maxLength: design + lengths[1],
      },
      halfShaft: {
        ...halfShaft!,
        outerLimit: angles[4],
        innerLimit: angles[5],
        plungeIn: lengths[2] / 5,
        plungeOut: lengths[3] / 5,
      },
      strap: {
        top: coilover!.top,
        bottom: lowerArm.ballJoint,
        length:
          Math.hypot(...coilover!.top.map((each, i) => each - lowerArm.ballJoint[i]!)) + lengths[4],
      },
    };
  });

const ray: fc.Arbitrary<readonly ['bump' | 'droop' | 'left' | 'right', number]> = fc.tuple(
  fc.constantFrom('bump', 'droop', 'left', 'right'),
  fc.double({ min: -0.8, max: 0.8, noNaN: true }),
);

function rayOf(model: Model, [way, share]: readonly [Ray['way'], number]): Ray {
  const isTravel = way === 'bump' || way === 'droop';
  const [travel, rack] = inRange(model, [share, share]);
  return { way, held: isTravel ? rack : travel };
}

/** What is left to each side of a limit that has a value. */
function sidesOf({ least, most, name }: Limit, value: number): [string, number][] {
  const isRack = name === 'steering.limit';
  return [
    ...(least === undefined ? [] : [[isRack ? 'steering.least' : name, value - least] as const]),
    ...(most === undefined ? [] : [[isRack ? 'steering.most' : name, most - value] as const]),
  ].map(([key, left]) => [key, left]);
}

/** Every margin by the measures that readings show, in mm or degrees, by its key. */
function directly(corner: Corner, withPairs: boolean) {
  const pose = createPose();
  const measures = createMeasures();
  const limits = limitsOf(corner.model);
  const pairs = withPairs ? watchedPairs(corner).map(createPairGap) : [];
  return (travel: number, rack: number): ReadonlyMap<string, number> | null => {
    if (solve(corner, pose, travel, rack) !== 'reached') return null;
    measureInto(corner, pose, measures);
    const values = new Map(
      limits.flatMap((limit) => sidesOf(limit, limitedValue(limit, pose, measures))),
    );
    for (const gap of pairs) {
      pairGapInto(gap, pose);
      values.set(gap.pair.names.join('/'), gap.gap);
    }
    return values;
  };
}

function agreesWithSamples(model: Model, chosen: Ray, withPairs: boolean, step: number): void {
  const corner = assemble(model);
  const { stops, start, lookedTo } = firstStops(createMargins(corner, { withPairs }), chosen);
  const isTravel = chosen.way === 'bump' || chosen.way === 'droop';
  const margin = directly(corner, withPairs);
  const at = (along: number) =>
    isTravel ? margin(along, chosen.held) : margin(chosen.held, along);
  const told = new Map(stops.map((stop) => [stop.margin.key, stop]));
  for (const [key, stop] of told) {
    if (key === 'linkage' || key === 'antiRollBar.link') continue;
    const value = at(stop.at)?.get(key);
    if (stop.isOutsideAtStart) expect(value, key).toBeLessThan(0);
    else expect(Math.abs(value ?? Number.NaN), key).toBeLessThan(2e-6);
  }
  const sign = Math.sign(lookedTo - start);
  for (let along = start; sign * (lookedTo - along) > 0.01; along += sign * step) {
    const values = at(along);
    expect(values, `reached at ${along}`).not.toBeNull();
    for (const [key, value] of values!) {
      if (value > -1e-4) continue;
      const stop = told.get(key);
      expect(stop, `${key} at ${along} is ${value}`).toBeDefined();
      expect(sign * (along - stop!.at), key).toBeGreaterThanOrEqual(-1e-6);
    }
  }
}

describe('first stops of random corners', () => {
  it('come before anything that sampling finds, and are on the limits', () => {
    fc.assert(
      fc.property(limitedModel, ray, (model, chosen) => {
        agreesWithSamples(model, rayOf(model, chosen), false, 0.5);
      }),
      { numRuns: 10, seed: 4101 },
    );
  });

  it('do so with every watched pair', () => {
    fc.assert(
      fc.property(limitedModel, ray, (model, chosen) => {
        agreesWithSamples(model, rayOf(model, chosen), true, 4);
      }),
      { numRuns: 4, seed: 4102 },
    );
  });
});

describe('enclosures of quantities', () => {
  it('hold them everywhere in a cell', () => {
    let enclosed = 0;
    fc.assert(
      fc.property(limitedModel, place, place, (model, centre, inside) => {
        const corner = assemble(model);
        const [travel, rack] = inRange(model, centre);
        const tree = createCellTree(corner, {
          travel: [travel - 3, travel + 3],
          rack: [rack - 2, rack + 2],
        });
        const cell = cellAt(tree, WHOLE);
        const { motion } = cell;
        if (motion === null) return;
        enclosed += 1;
        const pose = createPose();
        const measures = createMeasures();
        expect(solve(corner, pose, travel + 3 * inside[0], rack + 2 * inside[1])).toBe('reached');
        measureInto(corner, pose, measures);
        measureQuantities(corner, pose.data, measures);
        for (const key of quantitiesOf(corner)) {
          const over = quantityOver(corner, key, { ...cell, motion });
          if (over === null) continue;
          const value = quantityOf(corner, key, pose.data, measures);
          expect(value, key).toBeGreaterThanOrEqual(over.low - 1e-7);
          expect(value, key).toBeLessThanOrEqual(over.high + 1e-7);
          if (key === 'damperLength') expect(over.high - over.low).toBeLessThan(25);
        }
      }),
      { numRuns: 150, seed: 4103 },
    );
    expect(enclosed).toBeGreaterThan(100);
  });
});

describe('worst places of random corners', () => {
  it('are not passed by any pose', () => {
    fc.assert(
      fc.property(
        limitedModel,
        fc.array(place, { minLength: 60, maxLength: 60 }),
        (model, places) => {
          const corner = assemble(model);
          const extremes = extremesOf(corner, undefined, [
            'outerAngle',
            'plunge',
            'upperBallJoint',
          ]);
          const pose = createPose();
          const measures = createMeasures();
          for (const chosen of places) {
            if (solve(corner, pose, ...inRange(model, chosen)) !== 'reached') continue;
            measureInto(corner, pose, measures);
            for (const { key, least, greatest } of extremes) {
              const value = quantityOf(corner, key, pose.data, measures);
              expect(value, key).toBeGreaterThanOrEqual(least.bound - 1e-9);
              expect(value, key).toBeLessThanOrEqual(greatest.bound + 1e-9);
            }
          }
        },
      ),
      { numRuns: 3, seed: 4104 },
    );
  });
});

describe('the usable region of random corners', () => {
  it('holds no pose that is outside of a limit the set pose keeps', () => {
    fc.assert(
      fc.property(limitedModel, (model) => {
        const corner = assemble(model);
        const region = usableRegion(createMargins(corner, { withPairs: false }), {
          rows: 15,
          columns: 11,
        });
        const margin = directly(corner, false);
        const leftOut = region.outsideAtSet.map(({ key }) => key);
        region.usable.forEach((usable, node) => {
          const travel = region.travels[Math.floor(node / region.racks.length)]!;
          const values = margin(travel, region.racks[node % region.racks.length]!);
          const broken = [...(values ?? [])].filter(
            ([key, value]) => value < -1e-6 && !leftOut.includes(key),
          );
          if (usable === 1) expect([values === null, broken]).toEqual([false, []]);
          else if (values !== null && broken.length > 0) expect(region.least[node]).toBeLessThan(0);
        });
      }),
      { numRuns: 8, seed: 4105 },
    );
  });
});
