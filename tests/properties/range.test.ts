/** Laws of the ranges that travel and rack are swept over. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseRange, stepped } from '../../src/cli/range.ts';

const end = fc.integer({ min: -4000, max: 4000 }).map((quarter) => quarter / 4);

describe('a range A:B:STEP', () => {
  test('starts at A, ends at B exactly, and goes one way in steps of STEP, the last one no longer', () => {
    fc.assert(
      fc.property(end, end, fc.integer({ min: 10, max: 9000 }), (from, to, thousandths) => {
        const step = thousandths / 100;
        const values = parseRange(`${from}:${to}:${step}`, 'test');
        expect(values[0]).toBe(from + 0);
        expect(values.at(-1)).toBe(to + 0);
        const direction = Math.sign(to - from);
        const lengths = values
          .slice(1)
          .map((value, index) => (value - (values[index] ?? 0)) * direction);
        const last = lengths.pop() ?? step;
        expect(Math.max(0, ...lengths.map((length) => Math.abs(length - step)))).toBeLessThan(1e-8);
        expect(last).toBeGreaterThan(0);
        expect(last).toBeLessThan(step + 1e-8);
      }),
      { numRuns: 1000, seed: 1 },
    );
  });

  test.each([
    ['0:1:0.1', [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]],
    ['-10:10:8', [-10, -2, 6, 10]],
    ['10:-10:8', [10, 2, -6, -10]],
    ['10:-10:-8', [10, 2, -6, -10]],
    ['5:5:0', [5]],
    ['5:6:100', [5, 6]],
    ['+3', [3]],
    ['-0', [0]],
    ['1e1:2E1:.5e1', [10, 15, 20]],
  ])('%s', (text, values) => {
    expect(parseRange(text, 'test')).toEqual(values);
  });

  test('a million values are the most', () => {
    expect(stepped(0, 1, 1 / 999_999)).toHaveLength(1_000_000);
    expect(stepped(0, 1, 1e-6)).toBeUndefined();
    expect(stepped(-9e4, 9e4, 5e-324)).toBeUndefined();
  });
});
