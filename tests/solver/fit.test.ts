/** Points fitted to readings: invented truths, an independent optimum, an outlier, one reading, exact readings. */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, it } from 'vitest';
import { expectedInto, planReadings } from '../../solver/fit/expected.ts';
import {
  type Fit,
  fitInSteps,
  fitProblem,
  type NoFit,
  settledInSteps,
} from '../../solver/fit/fit.ts';
import { ASSUMED_ANGLE, fitInputs, OPEN_ANGLE } from '../../solver/fit/fitInputs.ts';
import { withHeights } from '../../solver/fit/heights.ts';
import { type FitProblem, type Fitted, startInSteps } from '../../solver/fit/mostProbable.ts';
import { plusMinusAfter, plusMinusBefore } from '../../solver/fit/posterior.ts';
import type { Reading } from '../../solver/fit/reading.ts';
import { modelAt, slopesInSteps, unknownsOf } from '../../solver/fit/unknowns.ts';
import { allSteps, assemble, knowledgeOf, type Model, poseReport } from '../../solver/index.ts';
import { chiSquareTail } from '../../solver/math/chiSquare.ts';
import { distance } from '../../solver/math/vec3.ts';
import { normal } from '../support/chance.ts';
import { expectClose } from '../support/close.ts';
import { shipped } from '../support/models.ts';

/** Invented; ±2 mm on every coordinate, nothing said of its camber's and toe's ±. */
const MODEL = shipped('half-ton-factory');

function reading(quantity: Reading['quantity'], travel: number, plusMinus: number): Reading {
  return { quantity, travel, rack: 0, value: 0, plusMinus };
}

/** A toe table, camber at two heights, caster, a damper's length and a rod's. */
const WANTED: readonly Reading[] = [
  ...[-60, -30, 0, 30, 60].map((travel) => reading('toe', travel, 0.03)),
  reading('camber', 0, 0.1),
  reading('camber', 50, 0.1),
  reading('caster', 0, 0.3),
  reading('damperLength', 0, 1),
  { ...reading('distance', 0, 0.5), between: ['tieRodInner', 'tieRodOuter'] },
];

function expectedOf(model: Model, readings: readonly Reading[]): Float64Array {
  const out = new Float64Array(readings.length);
  expect(expectedInto(planReadings(readings), model, out)).toBe(true);
  return out;
}

/** Parts that these readings depend on. */
const MOVED: readonly string[] = ['lowerArm', 'upperArm', 'tieRod', 'hub', 'coilover'];

/** The readings as they would be read off a model, each off by `off` times its ±. */
function readOff(
  model: Model,
  readings: readonly Reading[],
  off: (index: number) => number,
): readonly Reading[] {
  const values = expectedOf(model, readings);
  return readings.map((one, i) => ({ ...one, value: values[i]! + off(i) * one.plusMinus }));
}

function fitted(model: Model, readings: readonly Reading[]): Fit {
  const found: Fit | NoFit = allSteps(fitInSteps(model, readings));
  if (!found.ok) throw new Error(found.why);
  return found;
}

function settle(problem: FitProblem): Fitted {
  const start = allSteps(startInSteps(problem))!;
  return allSteps(settledInSteps(problem, start))!;
}

/** A corner as it might truly be when MODEL was measured off it: every input off by its own ±. */
function invented(draw: () => number): Model {
  const unknowns = unknownsOf(MODEL, fitInputs(MODEL));
  return modelAt(unknowns, Float64Array.from(unknowns.inputs, draw));
}

/** What is asked of invented truths, read or not. */
const ASKED: readonly Reading[] = [
  reading('toe', 45, 1),
  reading('toe', -90, 1),
  reading('camber', -80, 1),
  reading('caster', 30, 1),
  { ...reading('distance', 0, 1), between: ['lowerBallJoint', 'upperBallJoint'] },
];
const SEEDS = 100;

function lifted(readings: readonly Reading[], by: () => number): readonly Reading[] {
  return readings.map((one) => ({ ...one, travel: one.travel + by() }));
}

describe('the upper tail of chi-square', () => {
  it.each([
    [1, 0.05, 3.841],
    [1, 0.001, 10.828],
    [2, 0.01, 9.21],
    [5, 0.05, 11.07],
    [5, 0.001, 20.515],
    [10, 0.1, 15.987],
    [10, 0.01, 23.209],
    [30, 0.05, 43.773],
    [30, 0.001, 59.703],
  ])('of %d degrees is %d at %d', (degrees, probability, value) => {
    // Critical values: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4; from memory, to three decimals.
    expectClose(chiSquareTail(value, degrees) / probability, 1, 6e-4, '', 'share');
  });

  it('is the exponential for two degrees, near 0 and far out', () => {
    for (const x of [0, 1e-9, 0.3, 2, 3.9, 4.1, 30, 200]) {
      expectClose(chiSquareTail(x, 2) / Math.exp(-x / 2), 1, 1e-12, '', `at ${x}`);
    }
  });
});

describe('a fit', () => {
  it.each([
    [0, 1],
    [1.5, 101],
  ])(
    'covers invented truths at the stated rate, heights known to ±%d mm',
    (heights, first) => {
      const inputs = fitInputs(MODEL).filter(({ input: { group } }) => MOVED.includes(group));
      const plan = planReadings(ASKED);
      const reader = {
        size: ASKED.length,
        into: (model: Model, out: Float64Array) => expectedInto(plan, model, out),
      };
      const covered = ASKED.map(() => 0);
      let probability = 0;
      for (let seed = first; seed < first + SEEDS; seed += 1) {
        const draw = normal(seed);
        const truth = invented(draw);
        // Read at a height that is a little off the one written down.
        const read = readOff(
          truth,
          lifted(WANTED, () => heights * draw()),
          draw,
        );
        const written = read.map((one, i) => ({ ...one, travel: WANTED[i]!.travel }));
        const problem = fitProblem(MODEL, inputs, withHeights(MODEL, written, heights));
        const settled = settle(problem);
        const least = settled.readingsPart + settled.pointsPart;
        probability += chiSquareTail(least, WANTED.length) / SEEDS;
        const slopes = new Float64Array(ASKED.length * inputs.length);
        allSteps(slopesInSteps(problem.unknowns, settled.x, reader, slopes));
        const true_ = expectedOf(truth, ASKED);
        const found = expectedOf(modelAt(problem.unknowns, settled.x), ASKED);
        ASKED.forEach((_, i) => {
          const row = slopes.subarray(i * inputs.length, (i + 1) * inputs.length);
          const plusMinus = plusMinusAfter(settled.posterior, row);
          if (Math.abs(found[i]! - true_[i]!) <= 1.96 * plusMinus) covered[i]! += 1;
          expect(plusMinus).toBeLessThanOrEqual(plusMinusBefore(row));
        });
      }
      // 95 % of 100 by the binomial distribution: 95 ± 2.2; four of these downwards, and never all of all.
      for (const count of covered) expect(count).toBeGreaterThanOrEqual(86);
      expect(Math.min(...covered)).toBeLessThan(SEEDS);
      // Probabilities of true readings are uniform: their mean is 0.5 ± 0.289/√100; four of these.
      expectClose(probability, 0.5, 0.116, '', 'mean probability');
    },
    240_000,
  );

  it('is the optimum that a general-purpose least squares finds', () => {
    const draw = normal(7);
    const readings = readOff(invented(draw), WANTED, draw);
    const inputs = fitInputs(MODEL);
    const problem = fitProblem(MODEL, inputs, readings);
    const settled = settle(problem);
    const count = readings.length + inputs.length;
    const residuals = (x: readonly number[] | Float64Array): Float64Array => {
      const values = expectedOf(modelAt(problem.unknowns, Float64Array.from(x)), readings);
      const off = readings.map((one, i) => (values[i]! - one.value) / one.plusMinus);
      return Float64Array.from([...off, ...x]);
    };
    const library = levenbergMarquardt(
      { x: Float64Array.from({ length: count }, (_, i) => i), y: new Float64Array(count) },
      (x: number[]) => {
        const at = residuals(x);
        return (i: number) => at[i]!;
      },
      {
        initialValues: inputs.map(() => 0),
        damping: 1e-6,
        gradientDifference: 1e-4,
        centralDifference: true,
        maxIterations: 20,
        errorTolerance: 1e-24,
        improvementThreshold: 1e-12,
      },
    );
    library.parameterValues.forEach((value, i) => {
      expectClose(settled.x[i]!, value, 2e-4, '±', `input ${i}`);
    });
    const least = residuals(settled.x).reduce((sum, off) => sum + off * off, 0);
    expectClose(settled.readingsPart + settled.pointsPart, least, 1e-9, '', 'chi-square');
  });

  it.each([0, 4, 7, 9])('names reading %d when it alone is off, and no other', (wrong) => {
    const readings = readOff(MODEL, WANTED, (i) => (i === wrong ? 0 : 0.5 * (-1) ** i));
    const { plusMinus } = fitted(MODEL, readings).alone[wrong]!;
    const off = readings.map((one, i) =>
      i === wrong ? { ...one, value: one.value + 8 * plusMinus } : one,
    );
    const found = fitted(MODEL, off);
    expect(found.verdict).toBe('disagree');
    expect(found.suspects).toEqual([wrong]);
    const alone = found.alone[wrong]!;
    // Without it the fit is the fit of the others.
    const rest = fitted(
      MODEL,
      off.filter((_, i) => i !== wrong),
    );
    expectClose(alone.drop, found.chiSquare - rest.chiSquare, 1e-3, '', 'drop');
    expectClose(alone.probabilityWithout, rest.probability, 1e-3, '', 'probability');
    expectClose(alone.distance, 8, 0.8, '±', 'distance');
    // In the linear case the drop is the square of the distance.
    expectClose(alone.drop / alone.distance ** 2, 1, 0.05, '', 'share');
  });

  it('cannot say which of two that gainsay each other is wrong', () => {
    const [toe] = readOff(MODEL, [reading('toe', 0, 0.03)], () => 0);
    const found = fitted(MODEL, [toe!, { ...toe!, value: toe!.value + 0.3 }]);
    expect(found.verdict).toBe('disagree');
    expect(found.suspects).toEqual([0, 1]);
  });

  it('of one reading weighs it against the points as two numbers are weighed', () => {
    const [toe] = readOff(MODEL, [reading('toe', 60, 0.03)], () => 2);
    const found = fitted(MODEL, [toe!]);
    const { before, after } = found.readings[0]!;
    // Toe there is known to ±u from the points: the mean weighed by 1/u² and 1/±² (linear in so small a change).
    const known = Math.hypot(found.alone[0]!.plusMinus, 0) ** 2 - toe!.plusMinus ** 2;
    const share = known / (known + toe!.plusMinus ** 2);
    expectClose((after - before) / (toe!.value - before), share, 2e-3, '', 'share');
    expect(found.verdict).toBe('agree');
    expect(found.suspects).toEqual([]);
    expect(found.degrees).toBe(1);
    expect(found.isSettled).toBe(true);
  });

  it('meets exact readings exactly, within the points’ ±', () => {
    const draw = normal(11);
    const exact = WANTED.slice(0, 8).map((one) => ({ ...one, plusMinus: 1e-6 }));
    const found = fitted(
      MODEL,
      readOff(invented(draw), exact, () => 0),
    );
    expect(found.isSettled).toBe(true);
    for (const { reading: one, after } of found.readings) {
      expectClose(after, one.value, 1e-6, '°', one.quantity);
    }
    expect(found.verdict).toBe('agree');
    for (const { moved } of found.moves) expect(Math.abs(moved)).toBeLessThan(4);
    // What is written into the model says the same.
    const again = expectedOf(found.model, exact);
    found.readings.forEach(({ after }, i) => {
      expectClose(again[i]!, after, 1e-6, '°');
    });
  });

  it('moves nothing where everything reads as the points say', () => {
    const found = fitted(
      MODEL,
      readOff(MODEL, WANTED, () => 0),
    );
    expect(found.moves).toEqual([]);
    expectClose(found.chiSquare, 0, 1e-12, '');
    for (const { before, after } of found.answers) expectClose(after, before, 1e-9, '');
  });

  it('knows before any reading what the law of propagation by exact derivatives knows', () => {
    const model = { ...MODEL, tolerance: { default: 2, 'hub.camber': 0.2, 'hub.toe': 0.1 } };
    const found = fitted(
      model,
      readOff(model, WANTED.slice(0, 1), () => 0),
    );
    const { answers } = knowledgeOf(model);
    for (const { key, plusMinusBefore: plusMinus } of found.answers) {
      expectClose(plusMinus / answers![key]!.uncertainty, 1, 1e-4, '', key);
    }
    expect(found.answers).toHaveLength(10);
  });

  it('gives heights their part in what changes with them, and none in what does not', () => {
    const [damper, rod] = withHeights(
      MODEL,
      [
        reading('damperLength', 0, 1),
        { ...reading('distance', 20, 1), between: ['tieRodInner', 'tieRodOuter'] },
      ],
      2,
    );
    // motionRatio is the damper's movement per wheel movement.
    const { motionRatio } = poseReport(assemble(MODEL), 0, 0) as unknown as { motionRatio: number };
    expectClose(damper!.plusMinus, Math.hypot(1, 2 * motionRatio), 1e-5, 'mm', 'damper');
    expectClose(rod!.plusMinus, 1, 1e-9, 'mm', 'rod');
  });

  it('knows bump steer far better after a toe table, and says of caster no more than before', () => {
    const found = fitted(
      MODEL,
      readOff(MODEL, WANTED.slice(0, 5), () => 0),
    );
    const of = (key: string) => found.answers.find((answer) => answer.key === key)!;
    expect(of('bumpSteer').plusMinusAfter).toBeLessThan(0.15 * of('bumpSteer').plusMinusBefore);
    expectClose(of('caster').plusMinusAfter / of('caster').plusMinusBefore, 1, 0.02, '', 'share');
    const [curve] = found.curves;
    expect(curve!.quantity).toBe('toe');
    const middle = curve!.points.find(({ travel }) => travel === 0)!.at!;
    expectClose(middle.plusMinusBefore, ASSUMED_ANGLE, 1e-9, '°', 'toe before');
  });
});

describe('what cannot be fitted', () => {
  it('is named, and a pose out of reach is left out', () => {
    const { tolerance: _, ...bare } = MODEL;
    expect(allSteps(fitInSteps(bare, WANTED))).toEqual({ ok: false, why: 'noPlusMinus' });
    expect(allSteps(fitInSteps(MODEL, []))).toEqual({ ok: false, why: 'noReadings' });
    const far = { ...reading('camber', 900, 0.1), value: 1 };
    expect(allSteps(fitInSteps(MODEL, [far]))).toEqual({ ok: false, why: 'noReadings' });
    const [near] = readOff(MODEL, [reading('camber', 20, 0.1)], () => 1);
    const found = fitted(MODEL, [far, near!]);
    expect(found.unreached).toEqual([0]);
    expect(found.readings.map(({ reading: one }) => one)).toEqual([near]);
  });

  it('leaves camber and toe open where the file says nothing of them', () => {
    const model = { ...MODEL, hub: { face: MODEL.hub.face } };
    const sources = (of: Model) =>
      fitInputs(of)
        .filter(({ input }) => input.group === 'hub' && input.component === null)
        .map(({ source, plusMinus }) => [source, plusMinus]);
    expect(sources(model)).toEqual([
      ['open', OPEN_ANGLE],
      ['open', OPEN_ANGLE],
    ]);
    const stated = { ...MODEL, tolerance: { default: 2, 'hub.toe': 0.02 } };
    expect(sources(stated)).toEqual([
      ['assumed', ASSUMED_ANGLE],
      ['stated', 0.02],
    ]);
  });

  it('reads what a pose is measured by, toe changes from where the vehicle stands', () => {
    const model: Model = { ...MODEL, travel: { ...MODEL.travel, ride: -20 } };
    const corner = assemble(model);
    const at = (travel: number, rack: number) =>
      poseReport(corner, travel, rack) as unknown as Record<string, number>;
    const quantities = ['toe', 'camber', 'caster', 'kingpinInclination', 'damperLength'] as const;
    const values = expectedOf(model, [
      ...quantities.map((quantity) => reading(quantity, 35, 1)),
      { ...reading('steerAngle', -20, 1), rack: 40 },
      reading('toeChange', 35, 1),
      reading('toeChange', -20, 1),
    ]);
    quantities.forEach((quantity, i) => {
      expectClose(values[i]!, at(35, 0)[quantity]!, 1e-9, '', quantity);
    });
    expectClose(values[5]!, at(-20, 40)['steerAngle']!, 1e-9, '°', 'steer angle');
    expect(values[5]).toBeGreaterThan(5);
    expectClose(values[6]!, at(35, 0)['toe']! - at(-20, 0)['toe']!, 1e-9, '°', 'toe change');
    expectClose(values[7]!, 0, 1e-9, '°', 'toe change at ride height');
  });

  it('moves nothing where nothing that was read depends on what may move', () => {
    const model: Model = { ...MODEL, tolerance: { 'coilover.top': 2 } };
    const [kingpin] = readOff(model, [reading('kingpinInclination', 0, 0.3)], () => 20);
    const found = fitted(model, [kingpin!]);
    expect(found.moves).toEqual([]);
    expectClose(found.chiSquare, 400, 1e-6, '', 'chi-square');
    expect(found.verdict).toBe('disagree');
  });

  it('reads lengths between points as they lie in the design pose', () => {
    const { lowerArm, upperArm, tieRod, coilover, hub } = MODEL;
    const between = (one: string, other: string): Reading => ({
      ...reading('distance', 0, 1),
      between: [one, other] as unknown as NonNullable<Reading['between']>,
    });
    const found = expectedOf(MODEL, [
      between('lowerFrontPivot', 'lowerBallJoint'),
      between('upperRearPivot', 'upperBallJoint'),
      between('damperTop', 'damperBottom'),
      between('hubFace', 'lowerBallJoint'),
      { ...between('tieRodInner', 'tieRodInner'), quantity: 'width' },
    ]);
    const wanted = [
      distance(lowerArm.frontPivot, lowerArm.ballJoint),
      distance(upperArm.rearPivot, upperArm.ballJoint),
      distance(coilover!.top, coilover!.bottom),
      distance(hub.face, lowerArm.ballJoint),
      2 * tieRod.inner[1],
    ];
    wanted.forEach((mm, i) => {
      expectClose(found[i]!, mm, 1e-9, 'mm');
    });
  });
});
