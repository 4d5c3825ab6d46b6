/** Better points: against textbook constructions, against general-purpose optimisers, inside their bounds, and never worse. */

import fc from 'fast-check';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import * as numeric from 'numeric';
import { describe, expect, it, vi } from 'vitest';
import type { Answers } from '../../solver/improve/answer.ts';
import { answersInSteps, improveInSteps } from '../../solver/improve/answers.ts';
import { dimensionOf, dimensionValue } from '../../solver/improve/dimension.ts';
import { distinctOf } from '../../solver/improve/distinct.ts';
import { knownTo } from '../../solver/improve/known.ts';
import { type Moving, movedModel, movingOf } from '../../solver/improve/moving.ts';
import type { Holds, Mover, Wish } from '../../solver/improve/plan.ts';
import { type Question, questionInSteps } from '../../solver/improve/question.ts';
import { figureOf, missesOf, type PoseWish } from '../../solver/improve/read.ts';
import { searchInSteps } from '../../solver/improve/search.ts';
import {
  allSteps,
  assemble,
  certify,
  createMeasures,
  createPose,
  extremesOf,
  inputSigma,
  inputsOf,
  inputValue,
  Measure,
  type Model,
  measureInto,
  solve,
  type Vector3,
  watchedPairs,
  withInput,
} from '../../solver/index.ts';
import { buildable } from '../support/arbitraries.ts';
import { shipped, sound } from '../support/models.ts';

// Each search solves some ten thousand corners.
vi.setConfig({ testTimeout: 240_000 });

const FREE: Holds = { limits: false, gaps: false, broken: false, stays: [] };
const TOE: Wish = {
  of: 'toeChange',
  from: 'droop',
  to: 'bump',
  value: 0,
  within: 0.05,
  matters: 1,
};

function question(
  model: Model,
  movers: readonly Mover[],
  wishes: readonly Wish[],
  holds = FREE,
): Question {
  const asked = allSteps(questionInSteps(model, { movers, wishes, holds }, undefined));
  if (asked === null) throw new Error('The model cannot be assembled.');
  return asked;
}

/** What is found from some of the starts: the others come to the same places. */
function found(asked: Question, starts: readonly number[] = [0, 1]): Answers {
  const candidates = starts.map((start) => allSteps(searchInSteps(asked, start)));
  return allSteps(answersInSteps(asked, candidates));
}

/** One coordinate of a point that may move so far either way. */
function around(key: string, value: number, by: number): Mover {
  return { inputs: [key], from: value - by, to: value + by };
}

/** The greatest change of toe over the travel, degrees, from its own sweep. */
function toeChange(model: Model): number {
  const corner = assemble(model);
  const [pose, measures] = [createPose(), createMeasures()];
  let most = 0;
  for (let travel = -model.travel.droop; travel <= model.travel.bump; travel += 1) {
    solve(corner, pose, travel, 0);
    measureInto(corner, pose, measures);
    most = Math.max(most, Math.abs(measures[Measure.steerAngle]!));
  }
  return most;
}

describe('zero bump steer in the plane (textbook construction)', () => {
  const equal = shipped('planar-equal-arms');

  it('needs a tie rod as long as equal parallel arms, and parallel to them: both ends found from afar', () => {
    const off: Model = { ...equal, tieRod: { ...equal.tieRod, inner: [120, 412, 9] } };
    const asked = question(
      off,
      [
        { inputs: ['tieRod.inner.y'], from: 380, to: 430 },
        { inputs: ['tieRod.inner.z'], from: -25, to: 25 },
      ],
      [TOE],
    );
    for (const start of [0, 1, 2]) {
      const { x } = allSteps(searchInSteps(asked, start))!;
      expect(x[0]).toBeCloseTo(400, 4);
      expect(x[1]).toBeCloseTo(0, 4);
    }
    const { answers } = allSteps(improveInSteps(asked));
    expect(answers[0]!.model.tieRod.inner).toEqual([120, 400, 0]);
    expect(toeChange(answers[0]!.model)).toBeLessThan(1e-9);
  });

  /** Arms whose axes run along the vehicle, so that the front view tells all: heights and widths of the pivots as drawn. */
  const planar = fc.record({
    lower: fc.tuple(fc.integer({ min: 380, max: 440 }), fc.integer({ min: -130, max: -80 })),
    upper: fc.tuple(fc.integer({ min: 440, max: 520 }), fc.integer({ min: 150, max: 190 })),
    innerAt: fc.integer({ min: 380, max: 460 }),
    outerZ: fc.integer({ min: -40, max: 60 }),
  });

  it('at one height needs the tie rod’s line through the arms’ instant centre', () => {
    fc.assert(
      fc.property(planar, ({ lower, upper, innerAt, outerZ }) => {
        const model = sound({
          ...equal,
          lowerArm: {
            frontPivot: [150, ...lower],
            rearPivot: [-150, ...lower],
            ballJoint: [0, 750, -100],
          },
          upperArm: {
            frontPivot: [150, ...upper],
            rearPivot: [-150, ...upper],
            ballJoint: [0, 720, 200],
          },
          tieRod: { inner: [120, innerAt, outerZ + 10], outer: [120, 745, outerZ] },
        });
        const asked = question(
          model,
          [around('tieRod.inner.z', outerZ, 120)],
          [
            {
              of: 'measure',
              measure: 'bumpSteer',
              height: 'ride',
              lock: 'straight',
              aiming: 'exactly',
              value: 0,
              within: 1e-3,
              matters: 1,
            },
          ],
        );
        const { x } = allSteps(searchInSteps(asked, 0))!;
        // Lines of both arms in the front view, as y = f(z) crossed: the instant centre.
        const [ly, lz] = [750 - lower[0], -100 - lower[1]];
        const [uy, uz] = [720 - upper[0], 200 - upper[1]];
        const along =
          ((upper[0] - lower[0]) * uz - (upper[1] - lower[1]) * uy) / (ly * uz - lz * uy);
        const centre = [lower[0] + along * ly, lower[1] + along * lz] as const;
        const onLine = outerZ + ((centre[1] - outerZ) * (innerAt - 745)) / (centre[0] - 745);
        if (Math.abs(onLine - outerZ) > 115) return;
        expect(x[0]).toBeCloseTo(onLine, 4);
      }),
      { numRuns: 40, seed: 20261125 },
    );
  });
});

const CAMBER: PoseWish = {
  of: 'change',
  measure: 'camber',
  height: 'bump',
  aiming: 'exactly',
  value: -1.5,
  within: 0.25,
  matters: 1,
};

function rodAndUpper(model: Model): readonly Mover[] {
  const [, y, z] = model.tieRod.inner;
  const { frontPivot } = model.upperArm;
  return [
    around('tieRod.inner.y', y, 15),
    around('tieRod.inner.z', z, 15),
    {
      inputs: ['upperArm.frontPivot.z', 'upperArm.rearPivot.z'],
      from: frontPivot[2] - 20,
      to: frontPivot[2] + 20,
    },
  ];
}

/** Misses at a place that a library chose. */
function misses({ model, moving, plan }: Question, x: readonly number[]): number[] {
  const corner = assemble(movedModel(model, moving, x));
  return plan.wishes.flatMap((wish) => [...missesOf(corner, wish as PoseWish)]);
}

function costAt(asked: Question, x: readonly number[]): number {
  return misses(asked, x).reduce((sum, each) => sum + each * each, 0);
}

describe.each(['half-ton-factory', 'rear-steer-saloon', 'tall-knuckle-crossover'] as const)(
  'what is found for the %s',
  (name) => {
    const model = shipped(name);
    const asked = question(model, rodAndUpper(model), [TOE as PoseWish, CAMBER]);
    const { low, high, present } = asked.moving;
    const ours = allSteps(searchInSteps(asked, 0))!;

    it('is as good as what a library’s bounded Levenberg–Marquardt comes to', () => {
      const count = misses(asked, present).length;
      const theirs = levenbergMarquardt(
        {
          x: Array.from({ length: count }, (_, i) => i),
          y: Array.from({ length: count }, () => 0),
        },
        (x) => {
          const values = misses(asked, x);
          return (i) => values[i]!;
        },
        {
          initialValues: [...present],
          minValues: [...low],
          maxValues: [...high],
          damping: 1e-2,
          gradientDifference: 1e-3,
          centralDifference: true,
          maxIterations: 200,
          improvementThreshold: 1e-12,
        },
      );
      expect(costAt(asked, ours.x)).toBeLessThanOrEqual(theirs.parameterError * (1 + 1e-6));
      expect(theirs.parameterError).toBeLessThan(costAt(asked, ours.x) * 1.1 + 1e-3);
    });

    it('is not bettered by a general minimiser that starts from it', () => {
      // Bounded by being written as sin² of free numbers; kept off the bounds, where their slope is 0.
      const inside = (free: readonly number[]) =>
        free.map((each, i) => low[i]! + (high[i]! - low[i]!) * Math.sin(each) ** 2);
      const start = ours.x.map((each, i) => {
        const share = (each - low[i]!) / (high[i]! - low[i]!);
        return Math.asin(Math.sqrt(Math.min(0.99, Math.max(0.01, share))));
      });
      const general = numeric.uncmin((free: number[]) => costAt(asked, inside(free)), start);
      expect(costAt(asked, ours.x)).toBeLessThanOrEqual(general.f * (1 + 1e-4) + 1e-9);
    });
  },
);

describe('answers', () => {
  it('are inside their bounds and never worse than the present design, whatever it is', () => {
    fc.assert(
      fc.property(buildable, fc.integer({ min: -3, max: 1 }), (model, value) => {
        if (assemble(model).linkage.broken !== null) return;
        const movers = rodAndUpper(model);
        const asked = question(model, movers, [TOE, { ...CAMBER, value }], {
          ...FREE,
          broken: true,
          gaps: true,
          limits: true,
        });
        const { answers, cost } = found(asked, [0, 3]);
        for (const answer of answers) {
          expect(answer.cost.after).toBeLessThan(answer.cost.before);
          expect(answer.cost.before).toBe(cost);
          expect(answer.holds).toBe(true);
          answer.values.forEach((each, i) => {
            expect(each).toBeGreaterThanOrEqual(movers[i]!.from);
            expect(each).toBeLessThanOrEqual(movers[i]!.to);
          });
          for (const { wanted, after } of answer.floors)
            expect(after).toBeGreaterThanOrEqual(wanted - 1e-6);
        }
      }),
      { numRuns: 6, seed: 4 },
    );
  });

  it('keep what must hold where a free search would break it, by independent proof', () => {
    const model = shipped('half-ton-long-travel');
    const wishes = [TOE, { ...CAMBER, value: -2 }];
    const limitLeft = (changed: Model): number =>
      changed.lowerArm.ballJointLimit! -
      extremesOf(assemble(changed), undefined, ['lowerBallJoint'])[0]!.greatest.bound;
    const free = found(question(model, rodAndUpper(model), wishes));
    expect(limitLeft(free.answers[0]!.model)).toBeLessThan(0);
    const asked = question(model, rodAndUpper(model), wishes, {
      ...FREE,
      limits: true,
      gaps: true,
    });
    const { answers, setAside } = found(asked);
    const [best] = answers;
    // What the design breaks already is not held, and said to be so.
    const broken = certify(assemble(model), watchedPairs(assemble(model))).filter(
      ({ least, required }) => least < required,
    );
    expect(setAside.filter((label) => / to /.test(label))).toHaveLength(broken.length);
    expect(broken.length).toBeGreaterThan(0);
    expect(best!.floors.some(({ label }) => setAside.includes(label))).toBe(false);
    expect(limitLeft(best!.model)).toBeGreaterThanOrEqual(0);
    expect(best!.cost.after).toBeGreaterThan(free.answers[0]!.cost.after);
    expect(best!.floors.every(({ holding }) => holding === 'proven')).toBe(true);
    const clear = (changed: Model): string[] =>
      certify(assemble(changed), watchedPairs(assemble(changed)))
        .filter(({ verdict }) => verdict === 'clear')
        .map(({ names }) => names.join('/'));
    expect(clear(best!.model)).toEqual(expect.arrayContaining(clear(model)));
  });

  it('keep a measure that is to stay, and say what moves with them', () => {
    const model = shipped('tall-knuckle-crossover');
    const [x, , z] = model.upperArm.ballJoint;
    const movers = [around('upperArm.ballJoint.x', x, 25), around('upperArm.ballJoint.z', z, 25)];
    const wish: Wish = {
      of: 'measure',
      measure: 'casterTrail',
      height: 'ride',
      lock: 'straight',
      aiming: 'atLeast',
      value: 60,
      within: 2,
      matters: 1,
    };
    const stay = { measure: 'caster', height: 'ride', lock: 'straight', within: 0.5 } as const;
    const freely = found(question(model, movers, [wish])).answers[0]!;
    const held = found(question(model, movers, [wish], { ...FREE, stays: [stay] }));
    const caster = (changed: Model): number => {
      const [corner, pose, measures] = [assemble(changed), createPose(), createMeasures()];
      solve(corner, pose, model.travel.ride ?? 0, 0);
      measureInto(corner, pose, measures);
      return measures[Measure.caster]!;
    };
    expect(Math.abs(caster(freely.model) - caster(model))).toBeGreaterThan(0.6);
    const [best] = held.answers;
    expect(Math.abs(caster(best!.model) - caster(model))).toBeLessThanOrEqual(0.5 + 1e-6);
    expect(best!.moves.map(({ label }) => label)).toContain('Upper arm, ball joint, fore and aft');
    expect(best!.effects.map(({ label }) => label)).toContain('caster');
  });

  it('for a gap bring it to what is wanted', () => {
    const model = shipped('half-ton-long-travel');
    const [x, y, z] = model.tieRod.outer;
    const movers = [
      around('tieRod.outer.x', x, 20),
      around('tieRod.outer.y', y, 20),
      around('tieRod.outer.z', z, 20),
    ];
    const wish: Wish = { of: 'least', key: 'tieRod/wheel', value: 8, within: 1, matters: 1 };
    const told = found(question(model, movers, [wish]));
    expect(told.wishes[0]!.figure).toBeLessThan(0);
    const corner = assemble(told.answers[0]!.model);
    const [proven] = certify(
      corner,
      watchedPairs(corner).filter(({ names }) => names.join('/') === 'tieRod/wheel'),
    );
    expect(proven!.least).toBeGreaterThan(7.7);
    const [answered] = told.answers[0]!.wishes;
    expect(answered!.provenAtLeast).toBeCloseTo(proven!.provenAtLeast, 9);
    expect(answered!.after.figure).toBeCloseTo(proven!.least, 2);
  });

  it('are none where nothing is left to be wished for, and say which wishes nothing can move', () => {
    const equal = shipped('planar-equal-arms');
    const movers = [around('tieRod.inner.z', 0, 20)];
    const camber: Wish = {
      of: 'measure',
      measure: 'camber',
      height: 'ride',
      lock: 'straight',
      aiming: 'exactly',
      value: 0,
      within: 0.1,
      matters: 1,
    };
    const bar: Wish = { ...camber, measure: 'barMotionRatio' };
    const told = found(question(equal, movers, [TOE, camber, bar]));
    expect(told.answers).toEqual([]);
    expect(told.wishes.map(({ isMoved }) => isMoved)).toEqual([true, false, false]);
    expect(told.wishes[2]!.figure).toBeNaN();
  });
});

describe('what a wish is known to', () => {
  it('is what moving every input by its uncertainty adds up to, and nothing for gaps or without tolerances', () => {
    const model: Model = {
      ...shipped('rear-steer-saloon'),
      tolerance: { default: 1, 'hub.camber': 0.1 },
    };
    const corner = assemble(model);
    const trail: PoseWish = {
      of: 'measure',
      measure: 'casterTrail',
      height: -30,
      lock: 'left',
      aiming: 'exactly',
      value: 0,
      within: 1,
      matters: 1,
    };
    const gap: Wish = { of: 'least', key: 'tieRod/wheel', value: 8, within: 1, matters: 1 };
    const wishes = [TOE as PoseWish, CAMBER, trail];
    const known = knownTo(corner, [...wishes, gap]);
    wishes.forEach((wish, i) => {
      const variance = inputsOf(model).reduce((sum, input) => {
        const sigma = inputSigma(model, input) ?? 0;
        const by = (step: number): number =>
          figureOf(assemble(withInput(model, input, inputValue(model, input) + step)), wish);
        const slope = sigma === 0 ? 0 : (by(1e-3) - by(-1e-3)) / 2e-3;
        return sum + (slope * sigma) ** 2;
      }, 0);
      expect(known[i]! / Math.sqrt(variance)).toBeCloseTo(1, 4);
    });
    expect(known[3]).toBeNull();
    const { tolerance: _, ...bare } = model;
    expect(knownTo(assemble(bare), wishes)).toEqual([null, null, null]);
  });
});

describe('distinct answers', () => {
  const moving: Moving = {
    movers: [],
    dimensions: [],
    present: [0, 0],
    low: [-10, -10],
    high: [10, 10],
  };
  const at = (start: number, x: readonly number[], cost: number) => ({
    start,
    only: null,
    x,
    cost,
    spots: [],
  });

  it('are the best of each neighbourhood, the one that moves least among equals, and none far behind', () => {
    const kept = distinctOf(
      [
        at(0, [8, 0], 1),
        at(1, [8.5, 0], 1.02),
        at(2, [-3, 0], 1.0001),
        at(3, [0, 9], 80),
        at(4, [0, -9], 20),
      ],
      moving,
      100,
    );
    expect(kept.map(({ start }) => start)).toEqual([2, 0, 4]);
  });

  it('are none that cost as much as the present design', () => {
    expect(distinctOf([at(0, [0, 0], 5)], moving, 5)).toEqual([]);
  });
});

describe('movers', () => {
  it('make an arm longer square to its pivots’ line, and find the length that was', () => {
    const model = shipped('tall-knuckle-crossover');
    const { frontPivot, rearPivot, ballJoint } = model.upperArm;
    const long = dimensionValue(model, dimensionOf(model, 'upperArm.length')!);
    const axis = frontPivot.map((each, i) => each - rearPivot[i]!);
    const moving = movingOf(model, [
      { inputs: ['upperArm.length'], from: long - 20, to: long + 20 },
    ]);
    const longer = movedModel(model, moving, [long + 7]).upperArm.ballJoint;
    const by = longer.map((each, i) => each - ballJoint[i]!);
    expect(Math.hypot(...by)).toBeCloseTo(7, 9);
    expect(by.reduce((sum, each, i) => sum + each * axis[i]!, 0)).toBeCloseTo(0, 6);
    // Camber gain asked for as the present one makes it: the length is found that the invented design had.
    const now = allSteps(
      questionInSteps(model, { movers: [], wishes: [CAMBER], holds: FREE }, undefined),
    )!.before;
    const off = movedModel(model, moving, [long + 7]);
    const { present } = movingOf(off, moving.movers);
    expect(present[0]).toBeCloseTo(long + 7, 9);
    const asked = question(off, moving.movers, [{ ...CAMBER, value: now.wishes[0]!.figure }]);
    expect(allSteps(searchInSteps(asked, 0))!.x[0]).toBeCloseTo(long, 3);
    const { answers } = found(asked, [0]);
    expect(answers[0]!.moves[0]).toMatchObject({ label: 'Upper arm, length', unit: 'mm' });
    expect(answers[0]!.moves[0]!.after).toBeCloseTo(long, 1);
  });

  it('take along what moves together, and leave out what the model has not', () => {
    const model = shipped('planar-equal-arms');
    const together: Mover = {
      inputs: ['upperArm.frontPivot.z', 'upperArm.rearPivot.z'],
      from: 150,
      to: 250,
    };
    const moving = movingOf(model, [together, { inputs: ['strap.length'], from: 0, to: 1 }]);
    expect(moving.movers).toEqual([together]);
    const { upperArm } = movedModel(
      { ...model, upperArm: { ...model.upperArm, rearPivot: [-150, 400, 190] as Vector3 } },
      moving,
      [212.5],
    );
    expect(upperArm.frontPivot[2]).toBe(212.5);
    expect(upperArm.rearPivot[2]).toBe(202.5);
  });
});
