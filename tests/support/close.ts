import { expect } from 'vitest';

/** Asserts |actual − expected| ≤ tolerance, all in `unit`, and says so when it fails. */
export function expectClose(
  actual: number,
  expected: number,
  tolerance: number,
  unit: string,
  what = 'value',
): void {
  const off = Math.abs(actual - expected);
  expect(
    off <= tolerance,
    `${what}: ${actual} ${unit}, expected ${expected} ± ${tolerance} ${unit} (off by ${off})`,
  ).toBe(true);
}
