/** The field of one pair is that pair's gap; the field of the worst of all is the least of them on a common scale. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createGapField, pairKey, WORST } from '../../solver/clearance/gapField.ts';
import { createPairGap, pairGapInto } from '../../solver/clearance/pairGap.ts';
import { watchedPairs } from '../../solver/clearance/pairs.ts';
import { assemble, createPose, type Model, placeParts, solve } from '../../solver/index.ts';
import { shipped } from '../support/models.ts';

const MODEL: Model = {
  ...shipped('half-ton-long-travel'),
  required: { default: 6, 'tieRod/wheel': 12, 'coilover/upperArm': 3 },
};
const CORNER = assemble(MODEL);
const PAIRS = watchedPairs(CORNER);

const places = fc.tuple(fc.integer({ min: -160, max: 150 }), fc.integer({ min: -80, max: 80 }));

describe('createGapField(corner, key)', () => {
  test('reads, of every watched pair, that pair’s own gap', () => {
    const pose = createPose();
    solve(CORNER, pose, -70, 40);
    placeParts(CORNER, pose.data);
    for (const pair of PAIRS) {
      const field = createGapField(CORNER, pairKey(pair.names))!;
      const gap = createPairGap(pair);
      field.read(pose);
      pairGapInto(gap, pose);
      expect(field.gap).toBeCloseTo(gap.gap, 6);
      expect(field.value).toBe(field.gap);
      expect(field.wanted).toBe(pair.required);
    }
  });

  test('knows no pair that is not watched', () => {
    expect(createGapField(CORNER, 'wheel/tyre')).toBeNull();
    expect(createGapField(CORNER, 'nothing')).toBeNull();
  });

  test('of the worst: below 0 exactly where one touches, below the wanted gap exactly where one is too near', () => {
    const field = createGapField(CORNER, WORST)!;
    const gaps = PAIRS.map(createPairGap);
    const pose = createPose();
    fc.assert(
      fc.property(places, ([travel, rack]) => {
        if (solve(CORNER, pose, travel, rack) !== 'reached') return;
        placeParts(CORNER, pose.data);
        field.read(pose);
        for (const gap of gaps) pairGapInto(gap, pose);
        const own = gaps[field.which]!;
        expect(field.gap).toBe(own.gap);
        expect(field.value <= 0).toBe(gaps.some(({ gap }) => gap <= 0));
        expect(field.value < field.wanted).toBe(gaps.some(({ gap, pair }) => gap < pair.required));
        const touching = gaps.map(({ gap }) => gap).filter((gap) => gap <= 0);
        if (touching.length > 0) expect(field.gap).toBe(Math.min(...touching));
      }),
      { seed: 5, numRuns: 150 },
    );
  });
});
