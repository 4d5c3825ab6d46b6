// Where a point may go: known constructions, the solver itself at every place, and best places that none beats.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  AIMS,
  type Aim,
  allSteps,
  assemble,
  bestsInSteps,
  createMeasures,
  createPose,
  idealOf,
  knownOf,
  Measure,
  type Model,
  measureInto,
  type Picture,
  PLANE_AXES,
  PLANES,
  type Plane,
  pictureInSteps,
  placeOf,
  placeTold,
  presentTold,
  type Question,
  SUBJECTS,
  type Subject,
  solve,
  usualStretch,
  type Vector3,
  withPlace,
} from '../../solver/index.ts';
import { expectClose } from '../support/close.ts';
import { type SHIPPED, shipped, sound } from '../support/models.ts';

const SEED = 20261125;
const TEN = { minus: 10, plus: 10 };

function ask(model: Model, subject: Subject, more: Partial<Question> = {}): Question {
  return {
    subject,
    plane: 'front',
    aim: 'overTravel',
    half: 20,
    stretch: usualStretch(model),
    wanted: 0,
    reach: { first: TEN, second: TEN },
    ...more,
  };
}

/** The model with the subject at two coordinates of a plane, made without the solver's own way of doing it. */
function moved(model: Model, subject: Subject, plane: Plane, at: readonly [number, number]): Model {
  const place = [...placeOf(model, subject)] as [number, number, number];
  PLANE_AXES[plane].forEach((axis, n) => {
    place[axis] = at[n]!;
  });
  return withPlace(model, subject, place);
}

const key = (subject: Subject) => (subject.startsWith('rod') ? 'toe' : 'camber');

/** Angle and rate of an assembled corner at a travel, by the solver's own table of measures; null out of reach. */
function angles(model: Model, subject: Subject): (travel: number) => [number, number] | null {
  const corner = assemble(model);
  const [pose, measures] = [createPose(), createMeasures()];
  return (travel) => {
    if (solve(corner, pose, travel, 0) !== 'reached') return null;
    measureInto(corner, pose, measures);
    const rate = key(subject) === 'toe' ? Measure.bumpSteer : Measure.bumpCamber;
    return [measures[Measure[key(subject)]]!, measures[rate]!];
  };
}

/** What a model is judged by, from poses half a millimetre apart. */
function judged(model: Model, { subject, aim, stretch, wanted }: Question): number {
  const at = angles(model, subject);
  const ride = model.travel.ride ?? 0;
  const start = at(ride);
  if (start === null) return Number.NaN;
  if (aim === 'atRide') return Math.abs(100 * (start[1] - wanted));
  let greatest = 0;
  const count = Math.ceil(2 * (stretch[1] - stretch[0]));
  for (let i = 0; i <= count; i += 1) {
    const travel = stretch[0] + ((stretch[1] - stretch[0]) * i) / count;
    const here = at(travel);
    if (here === null) return Number.NaN;
    greatest = Math.max(greatest, Math.abs(here[0] - start[0] - wanted * (travel - ride)));
  }
  return greatest;
}

/** A corner whose axes all run along the vehicle: seen from the front it is a four-bar linkage. */
function planar(outer: [number, number]): Model {
  const at = (x: number, y: number, z: number): Vector3 => [x, y, z];
  return sound({
    format: 'armscribe/1',
    name: 'Planar',
    lowerArm: {
      frontPivot: at(150, 400, -90),
      rearPivot: at(-150, 400, -90),
      ballJoint: at(0, 740, -120),
    },
    upperArm: {
      frontPivot: at(150, 450, 170),
      rearPivot: at(-150, 450, 170),
      ballJoint: at(0, 700, 210),
    },
    tieRod: { inner: at(120, 420, -30), outer: at(120, ...outer) },
    hub: { face: at(0, 850, 40) },
    wheel: { diameter: 17, width: 7, offset: 0 },
    tyre: { diameter: 690, width: 220 },
    travel: { bump: 60, droop: 60 },
  });
}

type Point = readonly [number, number];

/** Where the line a–b meets the line c–d. */
function meet(a: Point, b: Point, c: Point, d: Point): Point {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const s = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / (ux * vy - uy * vx);
  return [a[0] + s * ux, a[1] + s * uy];
}

describe('the ideal line and point', () => {
  const [lower, lowerPivot]: [Point, Point] = [
    [740, -120],
    [400, -90],
  ];
  const [upper, upperPivot]: [Point, Point] = [
    [700, 210],
    [450, 170],
  ];
  const centre = meet(lower, lowerPivot, upper, upperPivot);
  const outer: [number, number] = [755, -30];
  const model = planar(outer);

  it('of a planar corner runs from the other end through the instant centre (textbook construction)', () => {
    for (const subject of ['rodInner', 'rodOuter'] as const) {
      const { line } = idealOf(model, ask(model, subject))!;
      const other: Point = subject === 'rodInner' ? outer : [420, -30];
      for (const [y, z] of [centre, other]) {
        expectClose(line!.a * y + line!.b * z - line!.c, 0, 1e-9, 'mm', `${subject} off the line`);
      }
    }
  });

  it('of a planar corner is the centre of curvature by Euler and Savary (textbook of planar kinematics)', () => {
    // On a ray through the instant centre P, 1/PA − 1/PA₀ = 1/(e·m) with e along the ray and one m for all rays.
    const ray = (to: Point): [Point, number] => {
      const [y, z] = [to[0] - centre[0], to[1] - centre[1]];
      const size = Math.hypot(y, z);
      return [[y / size, z / size], size];
    };
    const conjugate = (ball: Point, pivot: Point): [Point, number] => {
      const [e, size] = ray(ball);
      const reach = e[0] * (pivot[0] - centre[0]) + e[1] * (pivot[1] - centre[1]);
      return [e, 1 / (1 / size - 1 / reach)];
    };
    const [[e, p], [f, q]] = [conjugate(lower, lowerPivot), conjugate(upper, upperPivot)];
    const det = e[0] * f[1] - e[1] * f[0];
    const m: Point = [(p * f[1] - q * e[1]) / det, (q * e[0] - p * f[0]) / det];
    const [g, size] = ray(outer);
    const reach = 1 / (1 / size - 1 / (g[0] * m[0] + g[1] * m[1]));
    const { point } = idealOf(model, ask(model, 'rodInner'))!;
    expectClose(point![0], centre[0] + reach * g[0], 1e-6, 'mm', 'y');
    expectClose(point![1], centre[1] + reach * g[1], 1e-6, 'mm', 'z');
  });

  it('of any corner holds the wanted rate exactly, for every point in every plane', () => {
    const wanted = fc.double({ min: -0.004, max: 0.004, noNaN: true });
    const way = fc.double({ min: -15, max: 15, noNaN: true });
    const name = fc.constantFrom('half-ton-factory' as const, 'half-ton-long-travel' as const);
    const asked = [fc.constantFrom(...SUBJECTS), fc.constantFrom(...PLANES)] as const;
    let looked = 0;
    fc.assert(
      fc.property(name, ...asked, wanted, way, (file, subject, plane, rate, along) => {
        const now = shipped(file);
        const question = ask(now, subject, { plane, wanted: rate });
        const { line } = idealOf(now, question)!;
        const place = placeOf(now, subject);
        const [i, j] = PLANE_AXES[plane];
        const { a, b, c } = line!;
        const off = a * place[i]! + b * place[j]! - c;
        const at = [place[i]! - a * off - b * along, place[j]! - b * off + a * along] as const;
        const found = angles(moved(now, subject, plane, at), subject)(0);
        // A line far away may ask for a linkage that cannot be.
        if (found === null) return;
        looked += 1;
        expectClose(found[1], rate, 1e-10, 'deg/mm', `${subject} in ${plane}`);
      }),
      { seed: SEED, numRuns: 120 },
    );
    expect(looked).toBeGreaterThan(100);
  });

  it('at the ideal point does not begin to change either', () => {
    for (const file of ['half-ton-factory', 'half-ton-long-travel'] as const) {
      for (const subject of SUBJECTS) {
        const plain = shipped(file);
        // Much camber and toe, so that no term of the wheel's turning is too small to be seen.
        const now = { ...plain, hub: { ...plain.hub, camber: -4, toe: 3 } };
        const wanted = key(subject) === 'toe' ? 0.01 : -0.03;
        const { point } = idealOf(now, ask(now, subject, { wanted }))!;
        const at = angles(moved(now, subject, 'front', point!), subject);
        const [step, here] = [0.05, at(0)!];
        expectClose(here[1], wanted, 1e-9, 'deg/mm', `rate of ${file} ${subject}`);
        const bend = (at(step)![1] - at(-step)![1]) / (2 * step);
        const asIs = angles(now, subject);
        const bendNow = (asIs(step)![1] - asIs(-step)![1]) / (2 * step);
        expect(Math.abs(bend)).toBeLessThan(1e-5 * Math.abs(bendNow));
      }
    }
  });

  it('is left to the picture where ride is not the design pose, or something is set', () => {
    const high = { ...model, travel: { ...model.travel, ride: 5 } };
    expect(idealOf(high, ask(high, 'rodInner'))).toBeNull();
    const turned = { ...model, tieRod: { ...model.tieRod, pitch: 2, turns: 1 } };
    expect(idealOf(turned, ask(turned, 'rodInner'))).toBeNull();
  });
});

/** A picture for each kind of question: model, point, plane, aim and wanted rate. */
const CASES: readonly (readonly [(typeof SHIPPED)[number], Subject, Plane, Aim, number])[] = [
  ['half-ton-factory', 'rodInner', 'front', 'overTravel', 0],
  ['half-ton-long-travel', 'rodOuter', 'side', 'overTravel', 0],
  ['rear-steer-saloon', 'rodOuter', 'above', 'overTravel', 0.001],
  ['tall-knuckle-crossover', 'rodInner', 'front', 'atRide', 0],
  ['tall-knuckle-crossover', 'upperFront', 'side', 'overTravel', -0.02],
  ['rear-steer-saloon', 'upperBoth', 'front', 'atRide', -0.01],
];
const pictures = new Map<string, Picture>();

function pictureOf(model: Model, question: Question): Picture {
  const name = JSON.stringify([model.name, question]);
  const known = pictures.get(name) ?? allSteps(pictureInSteps(model, question));
  pictures.set(name, known);
  return known;
}

describe.each(CASES)('%s, %s seen from the %s, %s', (file, subject, plane, aim, wanted) => {
  const model = shipped(file);
  const question = ask(model, subject, { plane, aim, wanted });

  it('holds at every node what the solver says of the design with the point there', () => {
    const { xs, ys, values } = pictureOf(model, question);
    const node = fc.integer({ min: 0, max: values.length - 1 });
    fc.assert(
      fc.property(node, (n) => {
        const at = [xs[n % xs.length]!, ys[Math.floor(n / xs.length)]!] as const;
        const exact = judged(moved(model, subject, plane, at), question);
        expect(Number.isNaN(values[n])).toBe(Number.isNaN(exact));
        if (!Number.isNaN(exact)) expectClose(values[n]!, exact, 2e-5, 'deg', `at ${at.join()}`);
      }),
      { seed: SEED, numRuns: 15 },
    );
  });

  it('has best places that no node beats, no place near by, and none outside their rooms', () => {
    const picture = pictureOf(model, question);
    const bests = allSteps(bestsInSteps(model, question, picture));
    const [i, j] = PLANE_AXES[plane];
    const home = placeOf(model, subject);
    const now = presentTold(model, question).value!;
    const [whole, within, first, second] = bests;
    for (const value of picture.values) expect(value).not.toBeLessThan(whole!.value! - 1e-5);
    for (const { at, value, room } of bests) {
      expect(value!).toBeLessThanOrEqual(now + 1e-6);
      // Here the greatest departures lie inside the travel and not only at its ends.
      const exact = judged(moved(model, subject, plane, at), question);
      expectClose(value!, exact, 2e-5, 'deg', room);
      const [x, y] = [Math.abs(at[0] - home[i]!), Math.abs(at[1] - home[j]!)];
      const size = room === 'picture' ? 20 : 10;
      expect(x).toBeLessThanOrEqual((room === 'second' ? 0 : size) + 1e-4);
      expect(y).toBeLessThanOrEqual((room === 'first' ? 0 : size) + 1e-4);
    }
    expect(within!.value!).toBeLessThanOrEqual(Math.min(first!.value!, second!.value!) + 1e-5);
    const near = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(near, near, fc.constantFrom(20, 1, 0.05), (u, v, reach) => {
        const clamp = (value: number, middle: number) =>
          Math.min(middle + 20, Math.max(middle - 20, value));
        const at = [
          clamp(whole!.at[0] + u * reach, home[i]!),
          clamp(whole!.at[1] + v * reach, home[j]!),
        ] as const;
        const { value } = placeTold(model, question, at);
        if (value !== null) expect(value).toBeGreaterThan(whole!.value! - 1e-5);
      }),
      { seed: SEED, numRuns: 40 },
    );
  });
});

describe('what is told of a place', () => {
  it('is what the table of measures says of that design, and lengths from joint to joint', () => {
    const model = shipped('half-ton-long-travel');
    const turned = { ...model, tieRod: { ...model.tieRod, pitch: 1.5, turns: 2 } };
    const question = ask(turned, 'rodInner');
    const at = [383, -20] as const;
    const there = placeTold(turned, question, at);
    const fact = (name: string) => there.facts.find(({ key: one }) => one === name)!.value!;
    const { inner, outer } = moved(turned, 'rodInner', 'front', at).tieRod;
    const length = Math.hypot(outer[0] - inner[0], outer[1] - inner[1], outer[2] - inner[2]);
    expectClose(fact('rodLength'), length + 3, 1e-9, 'mm', 'tie rod');
    const [, rate] = angles(moved(turned, 'rodInner', 'front', at), 'rodInner')(0)!;
    expectClose(fact('bumpSteer'), rate, 1e-12, 'deg/mm', 'bump steer');
  });

  it('says that a rod too short for the travel cannot follow it', () => {
    const model = shipped('half-ton-long-travel');
    const { outer } = model.tieRod;
    const question = ask(model, 'rodInner', { half: 400 });
    const near = placeTold(model, question, [outer[1] - 30, outer[2] + 10]);
    expect(near.value).toBeNull();
    expect(near.facts).toEqual([]);
  });
});

describe('how well the present place is known', () => {
  const model = shipped('half-ton-long-travel');

  it('is one standard uncertainty as the file states it, and what two of them are worth', () => {
    const question = ask(model, 'rodInner');
    const known = knownOf(model, question)!;
    expect(known.sigma).toBe(2);
    const now = judged(model, question);
    expect(known.within[0]).toBeLessThan(now);
    expect(known.within[1]).toBeGreaterThan(now);
    const home = placeOf(model, 'rodInner');
    // 2σ down, one of the places looked at.
    const low = judged(moved(model, 'rodInner', 'front', [home[1], home[2] - 4]), question);
    expect(known.within[1]).toBeGreaterThan(low - 2e-5);
    expect(knownOf(model, ask(model, 'rodOuter'))!.sigma).toBe(0.5);
    // The middle of two places each known to 2 mm.
    expectClose(knownOf(model, ask(model, 'upperBoth'))!.sigma, Math.SQRT2, 1e-12, 'mm');
  });

  it('is nothing where the file states none', () => {
    const { tolerance, ...bare } = model;
    expect(tolerance).toBeDefined();
    expect(knownOf(bare, ask(bare, 'rodInner'))).toBeNull();
    const { default: _, ...single } = tolerance!;
    const part = { ...model, tolerance: single };
    expect(knownOf(part, ask(part, 'rodInner'))).toBeNull();
    expect(knownOf(part, ask(part, 'rodOuter'))!.sigma).toBe(0.5);
  });
});

describe('equal and parallel arms', () => {
  it('want the tie rod where it is, equal and parallel to them (textbook): nothing is better', () => {
    const model = shipped('planar-equal-arms');
    for (const aim of AIMS) {
      const question = ask(model, 'rodInner', { aim });
      const [whole] = allSteps(bestsInSteps(model, question, null));
      expectClose(whole!.value!, 0, 1e-9, 'deg', 'toe');
      expect(whole!.at).toEqual([400, 0]);
    }
    expect(idealOf(model, ask(model, 'rodInner'))!.point![1]).toBeCloseTo(0, 9);
  });
});
