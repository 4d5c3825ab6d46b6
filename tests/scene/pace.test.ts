import { expect, it } from 'vitest';
import { createPace } from '../../src/scene/pace.ts';

function frames(
  pace: ReturnType<typeof createPace>,
  count: number,
  wait: number,
  from = 0,
): number {
  let scale = 1;
  for (let i = 0; i < count; i += 1) {
    pace.asked(from + 200 * i);
    scale = pace.drawn(from + 200 * i + wait);
  }
  return scale;
}

it('draws coarser only where frames come late again and again, and finely at rest', () => {
  const pace = createPace();
  expect(frames(pace, 50, 16)).toBe(1);
  expect(frames(pace, 2, 90)).toBe(1);
  expect(frames(pace, 1, 16)).toBe(1);
  expect(frames(pace, 3, 90)).toBeLessThan(1);
  expect(pace.rested()).toBe(1);
  // The next motion starts as coarse as the last one had to be.
  expect(frames(pace, 1, 16)).toBeLessThan(1);
});

it('counts the wait from the first request, not the time without any', () => {
  const pace = createPace();
  for (let i = 0; i < 10; i += 1) {
    pace.asked(1000 * i);
    pace.asked(1000 * i + 5);
    expect(pace.drawn(1000 * i + 20)).toBe(1);
  }
});
