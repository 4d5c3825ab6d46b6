import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  AXLE_KEYS,
  EXPLANATIONS,
  inWords,
  MEASURE_KEYS,
  MEASURE_TABLE,
  measureRow,
  missingParts,
} from '../../solver/index.ts';
import { FULL_MODEL } from '../support/full-model.ts';

describe('the table of measures', () => {
  it('has one row for every measure of a pose and of the axle, and no other', () => {
    const keys = MEASURE_TABLE.map((row) => row.key);
    expect([...keys].sort()).toEqual([...MEASURE_KEYS, ...AXLE_KEYS].sort());
  });

  it('explains each in one sentence that ends, and names none twice', () => {
    for (const { key } of MEASURE_TABLE) {
      expect(EXPLANATIONS[key], key).toMatch(/^[A-Z0-9].{20,}\.$/);
    }
    const labels = MEASURE_TABLE.map((row) => row.label);
    expect(new Set(labels).size).toBe(labels.length);
  });

  it('gives each sense a place for the amount, or none in all three', () => {
    for (const { key, sense } of MEASURE_TABLE) {
      if (sense === undefined) continue;
      const holes = [sense.positive, sense.negative].map((words) => words.split('{}').length - 1);
      expect(holes, key).toEqual(key === 'ackermann' ? [0, 0] : [1, 1]);
      expect(sense.none, key).not.toContain('{}');
    }
  });
});

describe('inWords', () => {
  // The geometry contract's own signs, in the trade's words.
  it.each([
    ['camber', -1.2, '1.2°', 'top leans in 1.2°'],
    ['camber', 1.2, undefined, 'top leans out'],
    ['toe', 0.2, undefined, 'front edge in'],
    ['toe', -0.2, '0.20°', 'front edge out 0.20°'],
    ['caster', 4, undefined, 'axis leans back'],
    ['caster', -4, undefined, 'axis leans forward'],
    ['kingpinInclination', 12, undefined, 'axis leans in'],
    ['scrubRadius', 12, '12 mm', 'contact 12 mm outboard of the axis'],
    ['scrubRadius', -12, undefined, 'contact inboard of the axis'],
    ['casterTrail', 30, '30 mm', 'axis 30 mm ahead of the contact'],
    ['steerAngle', 3, undefined, 'steers left'],
    ['bumpSteer', -0.01, '0.25°/in', 'front edge goes out 0.25°/in as the wheel rises'],
    ['rollCentreHeight', -5, '5 mm', '5 mm below the ground'],
    ['plunge', 2, '2 mm', '2 mm shorter than as designed'],
    ['motionRatio', 0.6, undefined, 'damper movement / wheel movement'],
    ['camber', 0, '0.0°', 'upright'],
    ['damperLength', 400, '400 mm', undefined],
    ['camber', Number.NaN, '', undefined],
  ] as const)('of %s %d with %s is %s', (key, value, amount, words) => {
    expect(inWords(measureRow(key), value, amount)).toBe(words);
  });

  it('never leaves a hole, a double blank or a sign in the words', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...MEASURE_TABLE),
        fc.double({ noNaN: true, min: -1e4, max: 1e4 }),
        fc.option(fc.constantFrom('12 mm', '$& in'), { nil: undefined }),
        (row, value, amount) => {
          const words = inWords(row, value, amount);
          if (words === undefined) return row.sense === undefined;
          return !/\{|\}| {2}|^ | $/.test(words);
        },
      ),
    );
  });
});

describe('missingParts', () => {
  it('names the keys a measure waits for', () => {
    const { coilover: _, vehicle: __, ...bare } = FULL_MODEL;
    expect(missingParts(bare, measureRow('damperLength'))).toEqual(['coilover']);
    expect(missingParts(bare, measureRow('rideFrequency'))).toEqual([
      'coilover.springRate',
      'coilover.designForce',
      'vehicle.cornerMass',
    ]);
    expect(missingParts(bare, measureRow('camber'))).toEqual([]);
    expect(missingParts(FULL_MODEL, measureRow('rideFrequency'))).toEqual([]);
  });
});
