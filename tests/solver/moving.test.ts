/** One thing moved: the design that comes of it, and what it moves, against poses solved by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  assemble,
  createMeasures,
  createPose,
  effectsOf,
  MEASURE_KEYS,
  type Model,
  measureInto,
  movablePoints,
  moved,
  type Pair,
  readModel,
  solve,
} from '../../solver/index.ts';
import { distance } from '../../solver/math/vec3.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('half-ton-factory');

function measures(model: Model, travel: number, rack: number): Float64Array {
  const [pose, out] = [createPose(), createMeasures()];
  const corner = assemble(model);
  expect(solve(corner, pose, travel, rack)).toBe('reached');
  measureInto(corner, pose, out);
  return out;
}

/** A centre of a view is told as it is, or as far away where either of its coordinates is. */
function expectCentre(told: Pair | undefined, was: number, now: number): void {
  // Nothing of it changes, or it is far away before and after.
  if (told === undefined) return;
  for (const [said, value] of [
    [told.before, was],
    [told.after, now],
  ] as const) {
    if (said === Number.POSITIVE_INFINITY) continue;
    expect(said).toBe(value);
    expect(Math.abs(value) > 20_000).toBe(false);
  }
}

describe('moved', () => {
  test('moves one coordinate and nothing else, and back again', () => {
    for (const path of movablePoints(MODEL)) {
      const there = moved(MODEL, { kind: 'point', path, axis: 2 }, 10);
      expect(there, path).not.toEqual(MODEL);
      const back = moved(there, { kind: 'point', path, axis: 2 }, -10);
      expect(JSON.stringify(back)).toBe(JSON.stringify(MODEL));
    }
    expect(moved(MODEL, { kind: 'point', path: 'strap.top', axis: 0 }, 10)).toBe(MODEL);
  });

  test('makes a measured length more: a spacer moves the contact outboard mm for mm', () => {
    const next = moved(MODEL, { kind: 'length', path: 'wheel.spacer' }, 12);
    const { effects } = effectsOf(MODEL, next);
    // Fitment's rule of thumb, exact at camber 0: scrub radius grows mm for mm (common practice, no source).
    const { before, after } = effects.find(({ key }) => key === 'scrubRadius')!.at.set!;
    expect(after - before).toBeCloseTo(12, 1);
  });

  test('makes an arm longer by what is asked, measured from its pivots’ line', () => {
    const { upperArm } = moved(MODEL, { kind: 'arm', arm: 'upperArm' }, 10);
    const was = MODEL.upperArm;
    expect(distance(upperArm.ballJoint, was.ballJoint)).toBeCloseTo(10, 9);
    // Away from the line at a right angle: squared distances to both pivots grow alike (Pythagoras).
    const grown = (pivot: 'frontPivot' | 'rearPivot'): number =>
      distance(upperArm.ballJoint, was[pivot]) ** 2 - distance(was.ballJoint, was[pivot]) ** 2;
    expect(grown('frontPivot')).toBeCloseTo(grown('rearPivot'), 6);
    expect(grown('frontPivot')).toBeGreaterThan(0);
  });
});

describe('effectsOf', () => {
  test('tells before and after as both designs are solved, wherever a point goes', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...movablePoints(MODEL)),
        fc.constantFrom(0 as const, 1 as const, 2 as const),
        fc.double({ min: -10, max: 10, noNaN: true }),
        (path, axis, by) => {
          const next = moved(MODEL, { kind: 'point', path, axis }, by);
          fc.pre(readModel(next, 'x.json').ok);
          const { effects, lost } = effectsOf(MODEL, next);
          fc.pre(lost.length === 0);
          const places = { set: 0, bump: MODEL.travel.bump, droop: -MODEL.travel.droop };
          for (const [place, travel] of Object.entries(places)) {
            const [was, now] = [measures(MODEL, travel, 0), measures(next, travel, 0)];
            MEASURE_KEYS.forEach((key, i) => {
              const change = now[i]! - was[i]!;
              const told = effects.find((one) => one.key === key)?.at[place as 'set'];
              if (/View/.test(key)) expectCentre(told, was[i]!, now[i]!);
              else if (told === undefined) expect(Math.abs(change) > 1e-3).toBe(false);
              else expect(told).toEqual({ before: was[i], after: now[i] });
            });
          }
          const weights = effects.map(({ weight }) => weight);
          expect(weights).toEqual([...weights].sort((one, other) => other - one));
        },
      ),
      { seed: 20261, numRuns: 25 },
    );
  });

  test('puts toe and bump steer first where a tie rod end goes up', () => {
    const next = moved(MODEL, { kind: 'point', path: 'tieRod.inner', axis: 2 }, 10);
    const keys = effectsOf(MODEL, next).effects.map(({ key }) => key);
    expect(keys.slice(0, 4)).toEqual(expect.arrayContaining(['toe', 'toeChange', 'bumpSteer']));
    // Camber is the knuckle's affair: a tie rod end turns it a little at the ends of travel, and no more.
    expect(keys.indexOf('camber')).toBeGreaterThan(4);
  });

  test('says that a view’s centre is far away, not how far, and puts it after what is felt', () => {
    const next = moved(MODEL, { kind: 'point', path: 'tieRod.inner', axis: 2 }, 10);
    const { effects } = effectsOf(MODEL, next);
    const place = MEASURE_KEYS.indexOf('frontViewCentreY');
    const droop = -MODEL.travel.droop;
    // The arms are all but parallel at full droop: the centre runs off to the right by tens of metres.
    expect(Math.abs(measures(next, droop, 0)[place]!)).toBeGreaterThan(20_000);
    const centre = effects.find(({ key }) => key === 'frontViewCentreY')!;
    // Far before and after: nothing to tell there.
    expect(centre.at.droop).toBeUndefined();
    expect(centre.at.set?.after).toBe(measures(next, 0, 0)[place]);
    expect(centre.weight).toBeLessThanOrEqual(1);
    // A longer upper arm brings it back to some metres: that is told.
    const nearer = effectsOf(next, moved(next, { kind: 'arm', arm: 'upperArm' }, 10));
    const height = nearer.effects.find(({ key }) => key === 'frontViewCentreZ')!;
    expect(height.at.droop?.before).toBe(Number.POSITIVE_INFINITY);
    expect(Number.isFinite(height.at.droop?.after)).toBe(true);
    expect(height.weight).toBe(1);
  });

  test('ranks a centre that comes to be where there was none among the others', () => {
    const parallel = shipped('planar-equal-arms');
    const next = moved(parallel, { kind: 'point', path: 'upperArm.ballJoint', axis: 2 }, 10);
    const { effects } = effectsOf(parallel, next);
    expect(effects[0]!.key).not.toMatch(/View/);
    expect(effects.find(({ key }) => key === 'frontViewCentreY')!.weight).toBe(1);
  });

  test('is empty where nothing changes, and names what gets out of reach', () => {
    expect(effectsOf(MODEL, MODEL)).toEqual({ effects: [], lost: [] });
    const short = moved(MODEL, { kind: 'arm', arm: 'upperArm' }, -120);
    expect(effectsOf(MODEL, short).lost).toContain('droop');
  });
});
