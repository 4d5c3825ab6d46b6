import { describe, expect, test } from 'vitest';
import {
  type AnswerKey,
  answerPlace,
  applyInputs,
  assemble,
  assembleNear,
  bandOf,
  combined,
  createSensitivities,
  decimalsKnown,
  GRADES,
  inputOf,
  inputSigmas,
  inputValues,
  type KnownKey,
  knowledgeAt,
  knowledgeOf,
  type Model,
  type MonteCarloOptions,
  measureAgain,
  monteCarlo,
  monteCarloInSteps,
  numericalTolerance,
  type PoseSensitivity,
  poseReport,
  type Sensitivities,
  sensitivityAt,
  uncertaintiesOf,
  withGrade,
} from '../../solver/index.ts';
import { evenNumbers, normalNumbers } from '../../solver/uncertainty/random.ts';
import { coverageInterval, deviationOf, meanOf } from '../../solver/uncertainty/statistics.ts';
import { SHIPPED, shipped } from '../support/models.ts';

const model = shipped('half-ton-factory');

function within(factor: number, found: number, wanted: number): void {
  expect(found).toBeGreaterThan(wanted / factor);
  expect(found).toBeLessThan(wanted * factor);
}

describe('the law of propagation', () => {
  test('adds independent parts as squares', () => {
    expect(combined([3, -4, 7], [1, 1, 0])).toBe(5);
    // An input known exactly has no part even where there is no derivative.
    expect(combined([3, Number.NaN], [1, 0])).toBe(3);
    expect(combined([3, Number.NaN], [1, 1])).toBeNaN();
  });

  // "One example corner", common practice, no source: the order of size, within a factor of two.
  test.each([
    'half-ton-factory',
    'half-ton-long-travel',
    'rear-steer-saloon',
    'tall-knuckle-crossover',
  ] as const)('gives what the trade knows of ±2 mm on every coordinate: %s', (name) => {
    const { tolerance: _, ...bare } = shipped(name);
    const { answers } = knowledgeOf({ ...bare, tolerance: { default: 2 } });
    const of = (key: KnownKey): number => answers![key]!.uncertainty;
    within(2, of('bumpSteer') * 25.4, 0.07);
    within(2, of('caster'), 0.55);
    within(2.1, of('kingpinInclination'), 0.57);
    within(2, of('scrubRadius'), 5);
    within(2, of('bumpCamber') * 25.4, 0.04);
  });

  test('knows an inner tie rod end 3 mm too high for 0.07°/in of bump steer', () => {
    const { tolerance: _, ...bare } = model;
    const { answers } = knowledgeOf({ ...bare, tolerance: { 'tieRod.inner.z': 3 } });
    within(1.5, answers!.bumpSteer!.uncertainty * 25.4, 0.07);
  });

  test('has nothing to say of a model that states nothing, and says so by zeros', () => {
    const { tolerance: _, ...bare } = model;
    const { answers, sigmas } = knowledgeOf(bare);
    expect(sigmas.every((sigma) => sigma === 0)).toBe(true);
    for (const answer of Object.values(answers!)) expect(answer.uncertainty).toBe(0);
    expect(knowledgeOf(withGrade(bare, GRADES[1]!)).answers!.caster!.uncertainty).toBeGreaterThan(
      0.2,
    );
  });

  test('reads camber and toe in the design pose as well as the hub was read, whatever the points', () => {
    const { answers } = knowledgeOf({
      ...model,
      tolerance: { default: 2, 'hub.camber': 0.1, 'hub.toe': 0.05 },
    });
    expect(answers!.camber!.uncertainty).toBeCloseTo(0.1, 9);
    expect(answers!.toe!.uncertainty).toBeCloseTo(0.05, 9);
    expect(knowledgeOf(model).answers!.camber!.uncertainty).toBe(0);
  });

  test('has no answers for a pose out of reach', () => {
    const made = createSensitivities(assemble(model));
    expect(knowledgeAt(made, inputSigmas(model, made.inputs), 900, 0).answers).toBeNull();
  });

  test('differentiates the toe change as differences of whole corners do', () => {
    const { inputs, answers } = knowledgeOf(model);
    const values = inputValues(model, inputs);
    const moved = (i: number, by: number): Model =>
      applyInputs(
        model,
        inputs,
        values.map((value, k) => (k === i ? value + by : value)),
      );
    for (const key of ['tieRod.inner.z', 'lowerArm.ballJoint.y', 'upperArm.rearPivot.z']) {
      const i = inputs.findIndex((input) => input.key === key);
      for (const asked of ['toeToBump', 'toeToDroop', 'toeChange'] as const) {
        const [up, down] = [0.02, -0.02].map(
          (by) => knowledgeOf(moved(i, by)).answers![asked]!.value,
        );
        expect(answers![asked]!.slopes[i]!, `${asked} by ${key}`).toBeCloseTo(
          (up! - down!) / 0.04,
          5,
        );
      }
    }
  });
});

describe('the band of a curve', () => {
  test('is at each of its places what the pose there is known to', () => {
    const made = createSensitivities(assemble(model));
    const sigmas = inputSigmas(model, made.inputs);
    const axis = Float64Array.of(-400, -60, 0, 45);
    const band = bandOf(made, sigmas, 'travel', axis, 12);
    for (let row = 1; row < axis.length; row += 1) {
      const report = poseReport(assemble(model), axis[row]!, 12);
      if (report.reached === false) throw new Error('out of reach');
      expect(band.values.bumpSteer[row]).toBeCloseTo(report['bumpSteer'] as number, 12);
      const pose = sensitivityAt(made, axis[row]!, 12);
      if (typeof pose === 'string') throw new Error(pose);
      expect(band.uncertainties.camber[row]).toBe(uncertaintiesOf(pose, sigmas)[0]);
    }
    expect(band.values.camber[0]).toBeNaN();
    expect(band.uncertainties.camber[0]).toBeNaN();
    // Camber is read in the design pose: its band is widest at the ends.
    expect(band.uncertainties.camber[1]).toBeGreaterThan(band.uncertainties.camber[2]!);
  });
});

describe('coverage', () => {
  const runs = 300;
  const keys = [
    'caster',
    'scrubRadius',
    'bumpSteer',
    'bumpCamber',
    'rollCentreHeight',
    'toe',
  ] as const;

  function found(made: Sensitivities, travel: number): PoseSensitivity {
    const at = sensitivityAt(made, travel, 0);
    if (typeof at === 'string') throw new Error(at);
    return at;
  }

  // 95.45 % of 300 is 286, with a binomial standard deviation of 3.6; four of these to either side.
  test.each([0, model.travel.bump])(
    'of value ± 2u at travel %d is the normal distribution’s over 300 corners measured with invented errors',
    (travel) => {
      const normal = normalNumbers(evenNumbers(21));
      const truth = createSensitivities(assemble(model));
      const sigmas = inputSigmas(model, truth.inputs);
      const values = inputValues(model, truth.inputs);
      const wanted = found(truth, travel).values;
      const hits = new Map<string, number>(keys.map((key) => [key, 0]));
      for (let run = 0; run < runs; run += 1) {
        const read = values.map((value, i) => value + sigmas[i]! * normal());
        const corner = assembleNear(truth.corner, applyInputs(model, truth.inputs, read));
        const measured = found(createSensitivities(corner), travel);
        const known = uncertaintiesOf(measured, sigmas);
        for (const key of keys) {
          const at = answerPlace(key);
          const isHit = Math.abs(measured.values[at]! - wanted[at]!) <= 2 * known[at]!;
          hits.set(key, hits.get(key)! + (isHit ? 1 : 0));
        }
      }
      // Toe was read in the design pose, where points do not move it.
      if (travel === 0) hits.delete('toe');
      for (const [key, count] of hits) {
        expect(count, key).toBeGreaterThanOrEqual(272);
        expect(count, key).toBeLessThanOrEqual(299);
      }
    },
  );
});

describe('measure again', () => {
  const knowledge = knowledgeOf(model);
  const answer = knowledge.answers!.bumpSteer!;
  const again = measureAgain(knowledge, answer, 0.5);

  test('ranks coordinates and points by their share of the variance, which add up to one', () => {
    for (const list of [again.spoilers, again.points]) {
      const shares = list.map(({ share }) => share);
      expect([...shares].sort((a, b) => b - a)).toEqual(shares);
      expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 6);
    }
    expect(again.spoilers[0]!.input.key).toBe('tieRod.inner.z');
    expect(again.points[0]!.label).toBe('Tie rod, inner joint');
  });

  test('foretells what the model would be known to with these inputs measured better', () => {
    for (const count of [1, 2, 3]) {
      const better = Object.fromEntries(
        again.spoilers.slice(0, count).map(({ input }) => [input.key, 0.5]),
      );
      const then = knowledgeOf({ ...model, tolerance: { ...model.tolerance, ...better } });
      expect(again.steps[count]).toBeCloseTo(then.answers!.bumpSteer!.uncertainty, 9);
      const points = Object.fromEntries(
        again.points.slice(0, count).map(({ path }) => [path, 0.5]),
      );
      const whole = knowledgeOf({ ...model, tolerance: { ...model.tolerance, ...points } });
      expect(again.pointSteps[count]).toBeCloseTo(whole.answers!.bumpSteer!.uncertainty, 9);
    }
  });

  test('makes nothing worse, and takes 0 as known perfectly', () => {
    expect(measureAgain(knowledge, answer, 9).steps).toEqual([
      answer.uncertainty,
      answer.uncertainty,
      answer.uncertainty,
      answer.uncertainty,
    ]);
    const perfect = measureAgain(knowledge, answer, 0);
    const left = 1 - perfect.spoilers.slice(0, 3).reduce((sum, { share }) => sum + share, 0);
    expect(perfect.steps[3]).toBeCloseTo(answer.uncertainty * Math.sqrt(left), 9);
  });
});

describe('digits of what is known', () => {
  // JCGM 101:2008, 7.9.2, example 1: u = 0.000 35 g with two digits is 35·10⁻⁵, so δ = 0.000 005 g; example 2: 2 K, δ = 0.5 K.
  test('the numerical tolerance is that of the examples of the supplement', () => {
    expect(numericalTolerance(0.00035, 2)).toBeCloseTo(0.000005, 12);
    expect(numericalTolerance(2)).toBe(0.5);
    expect([decimalsKnown(0.0996), decimalsKnown(0.05), decimalsKnown(587.5)]).toEqual([1, 2, -2]);
  });
});

describe('drawn numbers', () => {
  test('are even, independent of their neighbours, and the same for the same seed', () => {
    const even = evenNumbers(7);
    const count = 40_000;
    const bins = new Float64Array(20);
    const pairs = new Float64Array(16);
    let last = even();
    for (let i = 0; i < count; i += 1) {
      const next = even();
      bins[Math.floor(next * 20)]! += 1;
      pairs[4 * Math.floor(last * 4) + Math.floor(next * 4)]! += 1;
      last = next;
    }
    const chiSquare = (counts: Float64Array): number =>
      counts.reduce(
        (sum, n) => sum + (n - count / counts.length) ** 2 / (count / counts.length),
        0,
      );
    // 99.9 % points of chi-square: 43.8 with 19 degrees of freedom, 37.7 with 15 (any table).
    expect(chiSquare(bins)).toBeLessThan(43.8);
    expect(chiSquare(pairs)).toBeLessThan(37.7);
    const [a, b, c] = [evenNumbers(3), evenNumbers(3), evenNumbers(4)];
    const first = Array.from({ length: 5 }, a);
    expect(Array.from({ length: 5 }, b)).toEqual(first);
    expect(Array.from({ length: 5 }, c)).not.toEqual(first);
  });

  test('of the normal kind have its moments and its tails', () => {
    const normal = normalNumbers(evenNumbers(11));
    const drawn = Array.from({ length: 40_000 }, normal);
    const moment = (k: number): number => drawn.reduce((sum, x) => sum + x ** k, 0) / drawn.length;
    expect(Math.abs(moment(1))).toBeLessThan(0.02);
    expect(moment(2)).toBeCloseTo(1, 1);
    expect(Math.abs(moment(3))).toBeLessThan(0.06);
    expect(moment(4)).toBeCloseTo(3, 0);
    const outside = drawn.filter((x) => Math.abs(x) > 1.959964).length / drawn.length;
    expect(Math.abs(outside - 0.05)).toBeLessThan(0.004);
  });
});

describe('the examples of JCGM 101:2008, 9.2: the sum of four independent quantities of mean 0 and deviation 1', () => {
  const draws = 100_000;
  const summedUp = (next: () => number): Float64Array =>
    Float64Array.from({ length: draws }, () => next() + next() + next() + next()).sort();

  // Normal quantities: u = 2.0, 95 % interval ±3.92. Rectangular ones: u = 2.0, ±2√3·(2 − (3/5)^¼) = ±3.88. From memory; both exact.
  test.each<readonly [string, () => number, number]>([
    ['normal', normalNumbers(evenNumbers(31)), 3.92],
    [
      'rectangular',
      (() => {
        const even = evenNumbers(32);
        return () => Math.sqrt(12) * (even() - 0.5);
      })(),
      3.88,
    ],
  ])('%s', (_name, next, half) => {
    const sorted = summedUp(next);
    const mean = meanOf(sorted);
    expect(Math.abs(mean)).toBeLessThan(0.03);
    expect(Math.abs(deviationOf(sorted, mean) - 2)).toBeLessThan(0.02);
    const [low, high] = coverageInterval(sorted, 0.95);
    // The drawn ends stray by 0.0085·u for so many draws.
    expect(Math.abs(low + half)).toBeLessThan(0.06);
    expect(Math.abs(high - half)).toBeLessThan(0.06);
  });
});

describe('Monte Carlo', () => {
  test.each(SHIPPED.filter((name) => shipped(name).tolerance !== undefined))(
    'agrees with the linear values of %s to what so many draws can tell',
    (name) => {
      const draws = 2000;
      const found = monteCarlo(shipped(name), { draws, seed: 5 });
      if (found === null) throw new Error('out of reach');
      expect(found.unbuilt).toBe(0);
      expect(found.answers.length).toBeGreaterThan(30);
      const smooth: KnownKey[] = [
        'caster',
        'kingpinInclination',
        'scrubRadius',
        'casterTrail',
        'halfTrack',
        'bumpSteer',
        'bumpCamber',
        'trackRate',
        'rollCentreHeight',
        'toeToBump',
        'motionRatio',
      ];
      for (const { key, linear, mean, uncertainty } of found.answers) {
        if (!smooth.includes(key)) continue;
        // Standard deviation of a standard deviation: u/√(2n); 4 of them, and 3 % for what is not linear.
        expect(Math.abs(uncertainty / linear.uncertainty - 1), key).toBeLessThan(
          4 / Math.sqrt(2 * draws) + 0.03,
        );
        expect(Math.abs(mean - linear.value) / linear.uncertainty, key).toBeLessThan(
          4 / Math.sqrt(draws) + 0.05,
        );
      }
    },
  );

  test('covers: the linear band holds 95 of 100 corners as they really are', () => {
    const draws = 4000;
    const found = monteCarlo(model, {
      draws,
      seed: 9,
      keys: ['caster', 'bumpSteer', 'bumpCamber', 'scrubRadius'],
    });
    for (const { key, linear, low, high, isLinearGood } of found!.answers) {
      const half = 1.959964 * linear.uncertainty;
      // The drawn 2.5 % points stray by √(p(1−p)/n)/f ≈ 0.042·u for 4000 draws; four of these.
      expect(Math.abs(low - (linear.value - half)), key).toBeLessThan(0.2 * linear.uncertainty);
      expect(Math.abs(high - (linear.value + half)), key).toBeLessThan(0.2 * linear.uncertainty);
      expect(isLinearGood, key).toBe(true);
    }
  });

  test('sees where the linear values do not serve: a side-view centre far away', () => {
    const found = monteCarlo(shipped('rear-steer-saloon'), {
      draws: 1000,
      seed: 2,
      keys: ['sideViewCentreX'],
    });
    const [answer] = found!.answers;
    expect(answer!.isLinearGood).toBe(false);
    expect(answer!.linear.value - answer!.low).toBeGreaterThan(
      2 * 1.96 * answer!.linear.uncertainty,
    );
  });

  test('counts what cannot be built, keeps its seed’s word, and tells how far it is', () => {
    const wild = { ...model, tolerance: { default: 45 } };
    const options: MonteCarloOptions = {
      draws: 300,
      seed: 3,
      travel: 100,
      keys: ['camber', 'caster'],
    };
    const once = monteCarlo(wild, options);
    expect(once!.unbuilt).toBeGreaterThan(0);
    expect(once!.unbuilt).toBeLessThan(300);
    for (const { histogram, without } of once!.answers) {
      expect(histogram.counts.reduce((sum, n) => sum + n, 0)).toBe(300 - once!.unbuilt - without);
    }
    expect(monteCarlo(wild, options)).toEqual(once);
    const progress: number[] = [];
    const steps = monteCarloInSteps(model, { draws: 500, keys: ['caster'] });
    for (let step = steps.next(); step.done !== true; step = steps.next())
      progress.push(step.value);
    expect(progress.length).toBeGreaterThan(5);
    expect([...progress].sort((a, b) => a - b)).toEqual(progress);
  });

  test('draws one and the same corner of a model that states nothing', () => {
    const { tolerance: _, ...bare } = model;
    const found = monteCarlo(bare, { draws: 60, keys: ['caster'] });
    expect(found!.isExact).toBe(true);
    expect(found!.answers[0]!.uncertainty).toBeLessThan(1e-12);
    expect(found!.answers[0]!.isLinearGood).toBe(true);
    expect(monteCarlo(bare, { draws: 10, travel: 900 })).toBeNull();
  });

  test('draws the axle’s measures and the toe change where they are asked for', () => {
    const keys: AnswerKey[] = ['ackermann', 'turningCircle'];
    const found = monteCarlo(model, {
      draws: 800,
      seed: 6,
      rack: 55,
      keys: [...keys, 'toeChange'],
    });
    expect(found!.answers.map(({ key }) => key)).toEqual([...keys, 'toeChange']);
    for (const { linear, uncertainty } of found!.answers.slice(0, 2)) {
      expect(Math.abs(uncertainty / linear.uncertainty - 1)).toBeLessThan(0.2);
    }
  });

  test('takes no more than its one input where one is stated', () => {
    const found = monteCarlo(
      { ...model, tolerance: { 'hub.toe': 0.1 } },
      { draws: 400, keys: ['toe', 'caster'] },
    );
    const [toe, caster] = found!.answers;
    expect(toe!.uncertainty).toBeCloseTo(0.1, 1);
    expect(caster!.uncertainty).toBeLessThan(1e-9);
    expect(inputOf(model, 'hub.toe')?.unit).toBe('degree');
  });
});
