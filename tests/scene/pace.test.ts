import { expect, it } from 'vitest';
import { createPace } from '../../src/scene/pace.ts';

/** Draws frames that come `wait` ms after something moved; returns the last one's scale. */
function frames(pace: ReturnType<typeof createPace>, count: number, wait: number): number | null {
  let scale: number | null = null;
  for (let i = 0; i < count; i += 1) {
    pace.asked(200 * i);
    scale = pace.drawn(200 * i + wait);
  }
  return scale;
}

it('draws coarser only where frames come late again and again, and stays so', () => {
  const pace = createPace(false);
  expect(pace.rest).toBe(1);
  expect(frames(pace, 50, 16)).toBe(1);
  expect(frames(pace, 2, 90)).toBe(1);
  expect(frames(pace, 1, 16)).toBe(1);
  expect(frames(pace, 3, 90)).toBeLessThan(1);
  expect(frames(pace, 1, 16)).toBeLessThan(1);
});

it('counts the wait from the first request, not the time without any', () => {
  const pace = createPace(false);
  for (let i = 0; i < 10; i += 1) {
    pace.asked(1000 * i);
    pace.asked(1000 * i + 5);
    expect(pace.drawn(1000 * i + 20)).toBe(1);
  }
});

it('leaves the resolution alone where nothing moves', () => {
  const pace = createPace(true);
  expect(pace.drawn(10)).toBeNull();
  expect(frames(pace, 1, 16)).toBeLessThan(1);
  expect(pace.drawn(20)).toBeNull();
  expect(pace.rest).toBeGreaterThan(1);
});
