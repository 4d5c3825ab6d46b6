/** The reachable region of camber and caster: held to settings drawn at random, and to `align` just within and just without. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type AnglePoint,
  align,
  type Model,
  type ReachableRegion,
  reachableRegion,
  type Settings,
  withSettings,
} from '../../solver/index.ts';
import { shipped } from '../support/models.ts';
import { standing } from '../support/standing.ts';

const FACTORY = shipped('half-ton-factory');
const SALOON = shipped('rear-steer-saloon');
const FOUR: Model = {
  ...FACTORY,
  lowerArm: { ...FACTORY.lowerArm, frontCam: { throw: 7 }, rearCam: { throw: 6 } },
  upperArm: {
    ...FACTORY.upperArm,
    frontCam: { throw: 4, slot: [0, 1, 0.1] },
    rearCam: { throw: 5 },
  },
};

function turning(
  [a, b]: readonly [AnglePoint, AnglePoint],
  { camber, caster }: AnglePoint,
): number {
  const cross =
    (a.camber - camber) * (b.caster - caster) - (a.caster - caster) * (b.camber - camber);
  const dot = (a.camber - camber) * (b.camber - camber) + (a.caster - caster) * (b.caster - caster);
  return Math.atan2(cross, dot);
}

/** Whether the outline goes round a point. */
function isInside({ outline }: ReachableRegion, point: AnglePoint): boolean {
  const turned = outline.reduce(
    (sum, from, i) => sum + turning([from, outline[(i + 1) % outline.length]!], point),
    0,
  );
  return Math.abs(turned) > Math.PI;
}

/** A point moved towards the region's middle, or away from it, by degrees. */
function inwards(
  { outline }: ReachableRegion,
  { camber, caster }: AnglePoint,
  by: number,
): AnglePoint {
  const middle = (key: keyof AnglePoint) =>
    (Math.min(...outline.map((p) => p[key])) + Math.max(...outline.map((p) => p[key]))) / 2;
  const [dx, dy] = [middle('camber') - camber, middle('caster') - caster];
  const size = Math.hypot(dx, dy);
  return { camber: camber + (by * dx) / size, caster: caster + (by * dy) / size };
}

/** The model with settings and the toe held by turns that Newton finds. */
function withToe(model: Model, settings: Partial<Settings>, toe: number): AnglePoint {
  let turns = 0;
  const at = (tieRodTurns: number) => standing(withSettings(model, { ...settings, tieRodTurns }))!;
  for (let step = 0; step < 8; step += 1) {
    const slope = (at(turns + 0.01).toe - at(turns).toe) / 0.01;
    turns += (toe - at(turns).toe) / slope;
  }
  expect(at(turns).toe).toBeCloseTo(toe, 9);
  return at(turns);
}

const angle = fc.oneof(fc.double({ min: -90, max: 90, noNaN: true }), fc.constantFrom(-90, 90));

describe.each([
  ['two cams', FACTORY],
  ['two cams on two arms, a narrow region', SALOON],
  ['four cams', FOUR],
])('%s', (_title, model) => {
  const region = reachableRegion(model)!;

  test('whatever is set lies inside', () => {
    fc.assert(
      fc.property(fc.tuple(angle, angle, angle, angle), (angles) => {
        const settings = Object.fromEntries(region.paths.map(({ name }, i) => [name, angles[i]]));
        const point = withToe(model, settings, region.toe!);
        // The outline's chords lie within a ten-thousandth of a degree.
        expect(isInside(region, inwards(region, point, 3e-4))).toBe(true);
      }),
      { seed: 43, numRuns: 40 },
    );
  });

  test('just within it is reached, just without it is not', () => {
    const { outline } = region;
    for (let i = 0; i < outline.length; i += Math.ceil(outline.length / 7)) {
      const point = outline[i]!;
      expect(align(model, inwards(region, point, 2e-3)).reached).toBe(true);
      expect(align(model, inwards(region, point, -2e-3)).reached).toBe(false);
    }
  });

  test('each path goes through what its ends reach, and stays inside', () => {
    for (const { points } of region.paths) {
      expect(points.length).toBe(37);
      for (const point of points) expect(isInside(region, inwards(region, point, 3e-4))).toBe(true);
    }
  });
});

describe('what is no area', () => {
  const { frontCam: _f, ...one } = FACTORY.lowerArm;
  const { rearCam: _r, ...none } = one;

  test('one cam reaches a line, none a point', () => {
    const line = reachableRegion({ ...FACTORY, lowerArm: one })!;
    expect(line.isArea).toBe(false);
    expect(line.outline).toEqual(line.paths[0]!.points);
    const point = reachableRegion({ ...FACTORY, lowerArm: none })!;
    expect([point.isArea, point.outline.length, point.paths]).toEqual([false, 1, []]);
  });

  test('a corner that cannot stand at ride has none', () => {
    expect(reachableRegion({ ...FACTORY, travel: { ...FACTORY.travel, ride: 900 } })).toBeNull();
  });
});
