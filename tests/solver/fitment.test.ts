/** A wheel and tyre beside another: what is fitted, and the figures they are compared by. Each outside value's source stands beside it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bearingChange } from '../../solver/fitment/bearing.ts';
import {
  backspacingOf,
  type Candidate,
  candidateOf,
  offsetOf,
} from '../../solver/fitment/candidate.ts';
import { fitmentFigures } from '../../solver/fitment/figures.ts';
import { fitCandidate } from '../../solver/fitment/fit.ts';
import { centrePlane, rimPlaces } from '../../solver/fitment/rimPlace.ts';
import {
  CIRCUMFERENCE_PER_DIAMETER,
  revolutionsPerKm,
  revolutionsPerMile,
  speedometerError,
} from '../../solver/fitment/rolling.ts';
import { sectionView } from '../../solver/fitment/sectionView.ts';
import { assemble, type Model, poseReport } from '../../solver/index.ts';
import { wheelDisc, wheelSection } from '../../solver/model/rim.ts';
import { shipped } from '../support/models.ts';

const FACTORY = shipped('half-ton-factory');
const PRESENT = candidateOf(FACTORY);
const MM_PER_INCH = 25.4;

function fitted(change: Partial<Candidate>, model: Model = FACTORY): Model {
  const result = fitCandidate(model, { ...candidateOf(model), ...change });
  if (!result.ok) throw new Error(`${result.field}: ${result.message}`);
  return result.model;
}

describe('a candidate', () => {
  test('that is the present wheel and tyre leaves the model as it is', () => {
    for (const name of ['half-ton-factory', 'half-ton-long-travel', 'rear-steer-saloon'] as const) {
      const model = shipped(name);
      const result = fitCandidate(model, candidateOf(model));
      expect(result).toEqual({ ok: true, model });
    }
  });

  test('changes wheel and tyre only, and keeps the squat of a stated loaded radius', () => {
    const model = fitted({
      tyre: { size: '35x12.50R17' },
      rimWidth: 8.5,
      mounting: { by: 'offset', value: -12 },
      spacer: 5,
      mass: 14,
    });
    expect(model.wheel).toEqual({ diameter: 17, width: 8.5, offset: -12, spacer: 5, mass: 14 });
    // 388 mm of half 802.8 mm, in proportion on half 889 mm, to 0.1 mm.
    expect(model.tyre).toEqual({ size: '35x12.50R17', loadedRadius: 429.7 });
    expect({ ...model, wheel: FACTORY.wheel, tyre: FACTORY.tyre }).toEqual(FACTORY);
  });

  test('leaves the brake at the hub, though its section counts from the wheel’s centre plane', () => {
    const brake = {
      section: [
        [-20, 60],
        [30, 170],
      ] as const,
    };
    const braked: Model = { ...FACTORY, brake };
    expect(fitted({ tyre: { size: '285/70R17' } }, braked).brake).toEqual(brake);
    const { brake: moved, wheel } = fitted({ mounting: { by: 'offset', value: 20 } }, braked);
    const fromFace = (section: Model['brake'], plane: number) =>
      section?.section.map(([s, radius]) => [s + plane, radius]);
    expect(fromFace(moved, centrePlane(wheel))).toEqual(
      fromFace(brake, centrePlane(FACTORY.wheel)),
    );
  });

  test('drops a disc drawn for another offset and keeps one that still fits', () => {
    const disc = [
      [45, 70],
      [60, 190],
    ] as const;
    const drawn: Model = { ...FACTORY, wheel: { ...FACTORY.wheel, disc } };
    expect(fitted({ spacer: 8 }, drawn).wheel.disc).toEqual(disc);
    expect(fitted({ mounting: { by: 'offset', value: 20 } }, drawn).wheel.disc).toBeUndefined();
    expect(fitted({ rimWidth: 9 }, drawn).wheel.disc).toBeUndefined();
  });

  test('keeps stick-on weights on the rim they are stuck to', () => {
    const weights = [
      [-60, 195],
      [-40, 195],
    ] as const;
    const weighted: Model = { ...FACTORY, wheel: { ...FACTORY.wheel, weights } };
    const other = { mounting: { by: 'offset', value: 20 } } as const;
    expect(fitted(other, weighted).wheel.weights).toEqual(weights);
    expect(fitted({ rimWidth: 9 }, weighted).wheel.weights).toBeUndefined();
  });

  test.each([
    [{ tyre: { size: '285/75R16' } }, 'tyre', /for a 16 in rim; the rim is 17 in/],
    [{ tyre: { size: 'nonsense' } }, 'tyre', /wanted a tyre size/],
    [{ rimDiameter: 170 }, 'rimDiameter', /from 8 to 30 in/],
    [{ rimWidth: 85 }, 'rimWidth', /from 3 to 20 in wide/],
    [{ rimWidth: Number.NaN }, 'rimWidth', /from 3 to 20 in wide/],
    [{ mounting: { by: 'offset', value: 450 } }, 'mounting', /more than 250 mm/],
    [{ mounting: { by: 'backspacing', value: 480 } }, 'mounting', /more than 250 mm/],
    [{ spacer: -3 }, 'spacer', /Found -3/],
    [{ mass: 0 }, 'mass', /Found 0/],
    [{ section: [[0, 200]] }, 'section', /wanted/],
  ] as const)('%j is refused at %s', (change, field, message) => {
    const result = fitCandidate(FACTORY, { ...PRESENT, ...change } as Candidate);
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.field).toBe(field);
    expect(result.message).toMatch(message);
  });
});

describe('backspacing', () => {
  // (rim width + 1 in)/2 + offset: own arithmetic; the 1 in is trade practice, from memory.
  test.each([
    [8.0, 10, 4.894],
    [7.5, 30, 5.431],
    [8.5, 0, 4.75],
    [9.0, -12, 4.528],
  ])('of %d in and offset %d mm is %d in, and back', (rimWidth, offset, inches) => {
    const byOffset: Candidate = { ...PRESENT, rimWidth, mounting: { by: 'offset', value: offset } };
    const backspacing = backspacingOf(byOffset);
    expect(Math.abs(backspacing / MM_PER_INCH - inches)).toBeLessThan(0.00051);
    const back: Candidate = {
      ...PRESENT,
      rimWidth,
      mounting: { by: 'backspacing', value: backspacing },
    };
    expect(offsetOf(back)).toBeCloseTo(offset, 10);
  });

  test('and offset round trip on any rim, drawn ones too', () => {
    const reach = fc.double({ min: -40, max: 40, noNaN: true });
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 14, noNaN: true }),
        fc.double({ min: -120, max: 120, noNaN: true }),
        fc.option(fc.tuple(reach, reach), { nil: undefined }),
        (rimWidth, offset, drawn) => {
          const section =
            drawn === undefined
              ? {}
              : {
                  section: [
                    [-110 + drawn[0], 230],
                    [105 + drawn[1], 232],
                  ] as const,
                };
          const one: Candidate = {
            ...PRESENT,
            ...section,
            rimWidth,
            mounting: { by: 'offset', value: offset },
          };
          const two: Candidate = {
            ...one,
            mounting: { by: 'backspacing', value: backspacingOf(one) },
          };
          expect(offsetOf(two)).toBeCloseTo(offset, 9);
          expect(backspacingOf(two)).toBe(backspacingOf(one));
        },
      ),
      { seed: 20261125 },
    );
  });

  test('stays when the rim gets wider, and so does the offset where that was stated', () => {
    const stated: Candidate = { ...PRESENT, mounting: { by: 'backspacing', value: 114 } };
    const wider = { ...stated, rimWidth: PRESENT.rimWidth + 1 };
    expect(backspacingOf(wider)).toBe(114);
    expect(offsetOf(wider)).toBeCloseTo(offsetOf(stated) - MM_PER_INCH / 2, 10);
    const other = { ...PRESENT, rimWidth: PRESENT.rimWidth + 1 };
    expect(offsetOf(other)).toBe(45);
    expect(backspacingOf(other)).toBeCloseTo(backspacingOf(PRESENT) + MM_PER_INCH / 2, 10);
  });

  test('is where the inner lip stands inboard of the mounting face', () => {
    const model = fitted({ spacer: 7 });
    const { innerLip } = rimPlaces(model);
    expect(innerLip.fromFace).toBeCloseTo(7 - backspacingOf(PRESENT), 10);
  });
});

describe('lips and sides', () => {
  test('are those of the section in force, half its metal beyond its ends', () => {
    const places = rimPlaces(FACTORY);
    // Offset 45 inboard of the hub face, half of 8 in and half an inch of flange: own arithmetic on the contract's default section.
    expect(places.innerLip.fromFace).toBeCloseTo(-45 - 101.6 - 12.7, 10);
    expect(places.outerLip.fromFace).toBeCloseTo(-45 + 101.6 + 12.7, 10);
    // J on 17: 471.2 mm over the lips, own arithmetic on rim tables from memory.
    expect(2 * places.innerLip.radius).toBeCloseTo(471.2, 10);
    // The tyre is wider than the lips: own arithmetic by UN Regulation 30, 6.1.1.1.
    const side = (265 + 0.4 * (203.2 - 0.7 * 265)) / 2;
    expect(places.outermost).toBeCloseTo(-45 + side, 10);
    expect(places.innermost).toBeCloseTo(-45 - side, 10);
    const drawn: Model = {
      ...FACTORY,
      wheel: {
        ...FACTORY.wheel,
        section: [
          [-150, 240],
          [0, 200],
          [140, 236],
        ],
        thickness: 8,
      },
    };
    const other = rimPlaces(drawn);
    expect(other.innerLip).toEqual({ fromFace: -45 - 154, radius: 244 });
    expect(other.outerLip).toEqual({ fromFace: -45 + 144, radius: 240 });
    expect(other.outermost).toBe(99);
  });

  test('a spacer moves everything out mm for mm, and the scrub radius almost so', () => {
    const before = fitmentFigures(FACTORY);
    const after = fitmentFigures(fitted({ spacer: 20 }));
    expect(after.places.outermost - before.places.outermost).toBeCloseTo(20, 10);
    expect(after.places.innermost - before.places.innermost).toBeCloseTo(20, 10);
    expect(after.centrePlane - before.centrePlane).toBe(20);
    expect(after.scrubRadius! - before.scrubRadius!).toBeCloseTo(20, 1);
    expect(after.track! - before.track!).toBeCloseTo(40, 1);
    expect(centrePlane(FACTORY.wheel)).toBe(-45);
  });
});

describe('rolling', () => {
  // ETRTO, radial tyres, from memory: circumference 3.05 × overall diameter. Makers print 655 to 660 turns a mile for 265/70R17, from memory.
  test('265/70R17 turns 657 times a mile', () => {
    expect(CIRCUMFERENCE_PER_DIAMETER).toBe(3.05);
    expect(revolutionsPerMile(802.8)).toBeCloseTo(657.3, 1);
    expect(revolutionsPerKm(802.8)).toBeCloseTo(408.4, 1);
    expect(revolutionsPerMile(802.8) / revolutionsPerKm(802.8)).toBeCloseTo(1.609344, 12);
  });

  // 245/35R17: 1854 mm by a straight line through two tyre makers' tables, seen in the source (diracdelta.co.uk, tyre rolling circumference).
  test('245/35R17 rolls within 1 % of a line through makers’ tables', () => {
    const overall = 17 * MM_PER_INCH + 2 * 245 * 0.35;
    expect(Math.abs((CIRCUMFERENCE_PER_DIAMETER * overall) / 1854 - 1)).toBeLessThan(0.01);
  });

  test('a taller tyre makes the speedometer read too little', () => {
    expect(speedometerError(802.8, 889)).toBeCloseTo(-9.696, 3);
    expect(speedometerError(802.8, 802.8)).toBe(0);
    // True speed at an indicated 100: the same ratio, the other way.
    expect(100 / (1 + speedometerError(800, 840) / 100)).toBeCloseTo(105, 10);
  });
});

describe('figures', () => {
  test('are the solver’s own at the set pose', () => {
    const model = fitted({ mounting: { by: 'offset', value: 0 }, tyre: { size: '285/70R17' } });
    const figures = fitmentFigures(model);
    const report = poseReport(assemble(model), 0, 0);
    if (report.reached === false) throw new Error('The set pose is out of reach.');
    expect(figures.track).toBe(2 * Number(report['halfTrack']));
    expect(figures.scrubRadius).toBe(report['scrubRadius']);
    expect(figures.casterTrail).toBe(report['casterTrail']);
    // 830.8 mm and 11.48 in on 8.5 in: one maker's published table, seen in the source; here 0.5 in of rim less, 5.08 mm.
    expect(figures.overallDiameter).toBeCloseTo(830.8, 10);
    expect(figures.sectionWidth / MM_PER_INCH).toBeCloseTo(11.48 - 0.2, 2);
    expect(figures.mass).toBe(11.5);
  });

  test('of the set pose are left out where it is out of reach', () => {
    const model: Model = { ...FACTORY, travel: { bump: 105, droop: 105, ride: 900 } };
    const { track, scrubRadius, casterTrail } = fitmentFigures(model);
    expect([track, scrubRadius, casterTrail]).toEqual([null, null, null]);
  });
});

describe('rims under tyres', () => {
  // One maker's published table, seen in the source: size, narrowest and widest rim in inches.
  test.each([
    ['LT275/65R18', 7.5, 9.0],
    ['LT275/70R18', 7.0, 8.5],
    ['LT285/65R18', 8.0, 10.0],
    ['LT285/70R17', 7.5, 9.0],
    ['LT295/70R17', 7.5, 10.0],
    ['275/55R20', 7.5, 9.5],
    ['LT265/60R20', 7.5, 9.5],
    ['LT285/55R20', 8.0, 10.0],
    ['LT295/55R20', 8.0, 10.0],
    ['285/45R22', 9.0, 10.5],
    ['35x12.50R17LT', 8.5, 11.0],
    ['37x13.50R18LT', 8.5, 11.0],
  ])('%s from %d to %d in is within the table', (size, narrowest, widest) => {
    const code = Number(size.match(/R(\d+)/)?.[1]);
    const verdict = (rimWidth: number) =>
      fitmentFigures(fitted({ tyre: { size }, rimDiameter: code, rimWidth })).rim.verdict;
    expect([verdict(narrowest), verdict(widest)]).toEqual(['within', 'within']);
    expect([verdict(5.5), verdict(12.5)]).toEqual(['narrow', 'wide']);
  });

  test('of a measured tyre are not judged', () => {
    const model = fitted({ tyre: { diameter: 800, width: 260 } });
    expect(fitmentFigures(model).rim).toEqual({ part: 203.2 / 260, verdict: null });
  });
});

describe('the bearing’s side', () => {
  test('is a change of lever in mm and per cent', () => {
    expect(bearingChange(-45, -45, 60)).toEqual({ before: 15, after: 15, change: 0, percent: 0 });
    expect(bearingChange(-45, 0, 60)).toEqual({ before: 15, after: 60, change: 45, percent: 300 });
    // A wheel that moves in past the bearing: the lever's size counts.
    expect(bearingChange(-45, -85, 60)).toEqual({
      before: 15,
      after: -25,
      change: 10,
      percent: (100 * 10) / 15,
    });
  });

  test('has no percentage of next to nothing', () => {
    expect(bearingChange(-58, 0, 60).percent).toBeNull();
  });
});

describe('the section view', () => {
  const corner = assemble(FACTORY);

  /** Distance of a point from a polyline. */
  function fromLine(
    [x, r]: readonly [number, number],
    line: readonly (readonly number[])[],
  ): number {
    let least = Number.POSITIVE_INFINITY;
    for (let i = 1; i < line.length; i += 1) {
      const [[x0, r0], [x1, r1]] = [line[i - 1] as [number, number], line[i] as [number, number]];
      const squared = (x1 - x0) ** 2 + (r1 - r0) ** 2;
      const t = Math.min(1, Math.max(0, ((x - x0) * (x1 - x0) + (r - r0) * (r1 - r0)) / squared));
      least = Math.min(least, Math.hypot(x - x0 - t * (x1 - x0), r - r0 - t * (r1 - r0)));
    }
    return least;
  }

  test('measures as the solver does: drawn rod to drawn metal is the gap', () => {
    for (const [travel, rack] of [
      [0, 0],
      [-90, 60],
      [80, -72],
    ] as const) {
      const view = sectionView(corner, travel, rack)!;
      expect([view.travel, view.rack]).toEqual([travel, rack]);
      const plane = centrePlane(FACTORY.wheel);
      const metal = [wheelSection(FACTORY.wheel), wheelDisc(FACTORY.wheel)].map((line) =>
        line.map(([s, radius]) => [s + plane, radius] as const),
      );
      const drawn = view.rod.flatMap(({ line, diameter }) =>
        line.flatMap((point) => metal.map((one) => fromLine(point, one) - diameter / 2 - 3)),
      );
      // The drawn rod's corners are samples of it: never nearer than the gap, and near it.
      expect(Math.min(...drawn)).toBeGreaterThanOrEqual(view.wheelGap.gap - 1e-9);
      expect(Math.min(...drawn)).toBeLessThan(view.wheelGap.gap + 3);
      const { from, to, gap } = view.wheelGap;
      expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeCloseTo(Math.abs(gap), 9);
    }
  });

  test('keeps the joints’ places: the outer joint never moves in it', () => {
    const [one, two] = [sectionView(corner, 60, 30)!, sectionView(corner, -60, -30)!];
    for (const name of ['lowerBallJoint', 'upperBallJoint', 'tieRodOuter'] as const) {
      expect(one.joints[name][0]).toBeCloseTo(two.joints[name][0], 9);
      expect(one.joints[name][1]).toBeCloseTo(two.joints[name][1], 9);
    }
  });
});
