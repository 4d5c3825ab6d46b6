/** Exact derivatives of every measure against the solver itself: its values, and five-point differences of whole corners. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  ANSWER_KEYS,
  type AnswerKey,
  answerPlace,
  applyInputs,
  assemble,
  assembleNear,
  axleInto,
  type Carrier,
  type Corner,
  createAxle,
  createMeasures,
  createPose,
  createSensitivities,
  type Input,
  inputsOf,
  inputValues,
  type Model,
  measureInto,
  type PoseSensitivity,
  readModel,
  sensitivityAt,
  solve,
} from '../../solver/index.ts';
import { buildable, inRange, place } from '../support/arbitraries.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { shipped } from '../support/models.ts';

/** All answers of a corner in a pose by the solver; null out of reach. */
function answersOf(corner: Corner, travel: number, rack: number): number[] | null {
  const [pose, measures, axle] = [createPose(), createMeasures(), new Float64Array(4)];
  if (solve(corner, pose, travel, rack) !== 'reached') return null;
  measureInto(corner, pose, measures);
  axleInto(createAxle(corner), travel, rack, axle);
  return [...measures, ...axle];
}

/** Step of a difference, in the input's unit: small against what bends the answers, large against rounding. */
function stepOf({ unit }: Input): number {
  if (unit === 'degree') return 0.01;
  return unit === 'share' ? 1e-3 : 0.03;
}

/** Five-point difference of every answer for one input, by corners assembled anew: (a₋₂ − 8a₋₁ + 8a₁ − a₂)/12h. */
function differences(model: Model, input: Input, travel: number, rack: number): number[] | null {
  const h = stepOf(input);
  const [now] = inputValues(model, [input]);
  const [a, b, c, d] = [-2, -1, 1, 2].map((k) =>
    answersOf(assemble(applyInputs(model, [input], [now! + k * h])), travel, rack),
  );
  if (!a || !b || !c || !d) return null;
  return a.map((value, i) => (value - 8 * b[i]! + 8 * c[i]! - d[i]!) / (12 * h));
}

/** An instant centre this far off, mm, moves too unevenly for differences to tell anything. */
const FAR = 20_000;

function isFar({ values }: PoseSensitivity, key: AnswerKey): boolean {
  if (!key.endsWith('CentreZ')) return Math.abs(values[answerPlace(key)]!) > FAR;
  const across = key === 'frontViewCentreZ' ? 'frontViewCentreY' : 'sideViewCentreX';
  return Math.abs(values[answerPlace(across)]!) > FAR;
}

/** Nearer straight ahead than this, mm of rack, Ackermann is the quotient of two small differences. */
const STRAIGHT = 5;

describe('the derivatives of every measure', () => {
  test('stand beside the values that the solver gives', () => {
    fc.assert(
      fc.property(buildable, place, (model, at) => {
        const [travel, rack] = inRange(model, at);
        const corner = assemble(model);
        const wanted = answersOf(corner, travel, rack);
        const given = sensitivityAt(createSensitivities(corner), travel, rack);
        expect(typeof given === 'string').toBe(wanted === null);
        if (typeof given === 'string' || wanted === null) return;
        wanted.forEach((value, i) => {
          const found = given.values[i]!;
          if (ANSWER_KEYS[i] === 'ackermann' && Math.abs(rack) < STRAIGHT) return;
          if (!Number.isFinite(value)) expect(found, ANSWER_KEYS[i]).toBeNaN();
          else
            expect(Math.abs(found - value), ANSWER_KEYS[i]).toBeLessThan(
              1e-9 * (1 + Math.abs(value)),
            );
        });
      }),
      { numRuns: 150, seed: 41, endOnFailure: true },
    );
  });

  test('are those of five-point differences of whole corners', () => {
    let compared = 0;
    fc.assert(
      fc.property(buildable, place, fc.nat(1000), (model, at, pick) => {
        const [travel, rack] = inRange(model, at);
        const made = createSensitivities(assemble(model));
        const given = sensitivityAt(made, travel, rack);
        if (typeof given === 'string') return;
        for (let k = pick % 5; k < made.inputs.length; k += 5) {
          const input = made.inputs[k]!;
          const wanted = differences(model, input, travel, rack);
          wanted?.forEach((slope, i) => {
            const value = Math.abs(given.values[i]!);
            const found = given.slopes[i * made.inputs.length + k]!;
            if (Number.isNaN(found) || isFar(given, ANSWER_KEYS[i]!)) return;
            if (ANSWER_KEYS[i] === 'ackermann' && Math.abs(rack) < STRAIGHT) return;
            compared += 1;
            const allowed = 1e-5 * Math.abs(slope) + 1e-8 * (1 + value);
            expect(Math.abs(found - slope), `${ANSWER_KEYS[i]} by ${input.key}`).toBeLessThan(
              allowed,
            );
          });
        }
      }),
      { numRuns: 25, seed: 42, endOnFailure: true },
    );
    expect(compared).toBeGreaterThan(6000);
  });

  const { vehicle: _, ...withoutVehicle } = FULL_MODEL;
  const { coilover, antiRollBar, strap } = FULL_MODEL;
  const riding = (on: Carrier): Model => ({
    ...FULL_MODEL,
    coilover: { ...coilover!, on },
    antiRollBar: { ...antiRollBar!, on },
    strap: { ...strap!, on },
  });
  const bare = shipped('half-ton-factory');
  const thin: Model = {
    format: bare.format,
    name: 'nothing fitted',
    lowerArm: bare.lowerArm,
    upperArm: bare.upperArm,
    tieRod: bare.tieRod,
    hub: { face: bare.hub.face },
    wheel: bare.wheel,
    tyre: { size: '265/70R17' },
    travel: bare.travel,
  };

  // Every part on every carrier, springs that come loose, models with hardly a part, lines that are one.
  test.each<readonly [string, Model]>([
    ['everything', FULL_MODEL],
    ['parts on the knuckle', riding('knuckle')],
    ['parts on the upper arm', riding('upperArm')],
    ['a spring that is loose', { ...FULL_MODEL, coilover: { ...coilover!, designForce: -500 } }],
    ['a spring that comes loose', { ...FULL_MODEL, coilover: { ...coilover!, designForce: 500 } }],
    ['no vehicle', withoutVehicle],
    ['nothing fitted', thin],
    ['a planar corner', shipped('planar-equal-arms')],
  ])('hold for %s', (_name, model) => {
    const corner = assemble(model);
    const made = createSensitivities(corner);
    const count = made.inputs.length;
    for (const [travel, rack] of [
      [0, 0],
      [37, 20],
      [-60, -31],
    ] as const) {
      const given = sensitivityAt(made, travel, rack);
      const values = answersOf(corner, travel, rack);
      if (typeof given === 'string' || values === null) throw new Error('out of reach');
      values.forEach((value, i) => {
        if (!Number.isFinite(value)) expect(given.values[i], ANSWER_KEYS[i]).toBeNaN();
        else expect(given.values[i], ANSWER_KEYS[i]).toBeCloseTo(value, 6);
      });
      made.inputs.forEach((input, k) => {
        differences(model, input, travel, rack)?.forEach((slope, i) => {
          const found = given.slopes[i * count + k]!;
          if (Number.isNaN(found) || isFar(given, ANSWER_KEYS[i]!)) return;
          const allowed = 1e-5 * Math.abs(slope) + 1e-7 * (1 + Math.abs(given.values[i]!));
          expect(Math.abs(found - slope), `${ANSWER_KEYS[i]} by ${input.key}`).toBeLessThan(
            allowed,
          );
        });
      });
    }
  });

  test('are left out where an angle has its corner, and there alone', () => {
    const model = shipped('planar-equal-arms');
    const made = createSensitivities(assemble(model));
    const [at, moved] = [sensitivityAt(made, 0, 0), sensitivityAt(made, 30, 0)];
    if (typeof at === 'string' || typeof moved === 'string') throw new Error('out of reach');
    const row = (of: PoseSensitivity, key: AnswerKey): number[] => [
      ...of.slopes.subarray(answerPlace(key) * made.inputs.length).subarray(0, made.inputs.length),
    ];
    // The rod lies along the rack here: any move of either end opens the angle.
    expect(at.values[answerPlace('tieRodInner')]).toBeCloseTo(0, 9);
    expect(row(at, 'tieRodInner').every(Number.isNaN)).toBe(true);
    expect(row(moved, 'tieRodInner').some(Number.isNaN)).toBe(false);
    // A housing that follows its stud stays on it whatever was measured.
    expect(row(at, 'tieRodOuter').every((slope) => slope === 0)).toBe(true);
  });

  test('leave no measure and no input out', () => {
    const shown = shipped('tall-knuckle-crossover');
    const model = { ...shown, tieRod: { ...shown.tieRod, pitch: 1.5, turns: 1 } };
    const made = createSensitivities(assemble(model));
    const given = sensitivityAt(made, 30, 20);
    if (typeof given === 'string') throw new Error(given);
    const count = made.inputs.length;
    const moves = (row: number, k: number): boolean =>
      Math.abs(given.slopes[row * count + k]!) > 1e-12;
    ANSWER_KEYS.forEach((key, row) => {
      if (Number.isNaN(given.values[row]!)) return;
      expect(
        made.inputs.some((_, k) => moves(row, k)),
        key,
      ).toBe(true);
    });
    made.inputs.forEach(({ key }, k) => {
      // A bearing slides along its own bar to no effect.
      if (/^antiRollBar\.axis\..\.y$/.test(key)) return;
      expect(
        ANSWER_KEYS.some((_, row) => moves(row, k)),
        key,
      ).toBe(true);
    });
    expect(inputsOf(model).length).toBeGreaterThan(count);
  });

  test('are zero for inputs that only shape clearances and limits', () => {
    const others = inputsOf(FULL_MODEL).filter(({ isMeasured }) => !isMeasured);
    expect(others.length).toBeGreaterThan(20);
    const values = inputValues(FULL_MODEL, others).map((value) => value + 3);
    const moved = assemble(applyInputs(FULL_MODEL, others, values));
    const corner = assemble(FULL_MODEL);
    expect(answersOf(moved, 40, 25)).toEqual(answersOf(corner, 40, 25));
  });

  test('of camber and toe in the design pose are those of the hub that was read, and no point’s', () => {
    const model = shipped('half-ton-factory');
    const made = createSensitivities(assemble(model));
    const given = sensitivityAt(made, 0, 0);
    if (typeof given === 'string') throw new Error(given);
    for (const [key, own] of [
      ['camber', 'hub.camber'],
      ['toe', 'hub.toe'],
    ] as const) {
      made.inputs.forEach((input, k) => {
        const slope = given.slopes[answerPlace(key) * made.inputs.length + k]!;
        expect(slope, `${key} by ${input.key}`).toBeCloseTo(input.key === own ? 1 : 0, 9);
      });
    }
  });
});

describe('a corner assembled near another', () => {
  test('has the poses of one assembled by itself', () => {
    const shift = fc.double({ min: -25, max: 25, noNaN: true });
    const shifts = fc.array(shift, { minLength: 60, maxLength: 60 });
    fc.assert(
      fc.property(buildable, place, shifts, (model, at, by) => {
        const inputs = inputsOf(model)
          .filter(({ unit }) => unit === 'mm')
          .slice(0, 60);
        const values = inputValues(model, inputs).map((value, i) => value + by[i]!);
        const moved = applyInputs(model, inputs, values);
        if (!readModel(moved, 'moved').ok) return;
        const [travel, rack] = inRange(model, at);
        const wanted = answersOf(assemble(moved), travel, rack);
        const found = answersOf(assembleNear(assemble(model), moved), travel, rack);
        expect(found === null).toBe(wanted === null);
        wanted?.forEach((value, i) => {
          if (!Number.isFinite(value)) return;
          expect(Math.abs(found![i]! - value), ANSWER_KEYS[i]).toBeLessThan(
            1e-7 * (1 + Math.abs(value)),
          );
        });
      }),
      { numRuns: 150, seed: 43, endOnFailure: true },
    );
  });
});
