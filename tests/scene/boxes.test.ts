import { expect, it } from 'vitest';
import { createBoxes } from '../../src/scene/labels/boxes.ts';

it('places labels off each other, inside the edges, and gives up where there is no room', () => {
  const boxes = createBoxes(40);
  boxes.clear(0, 0, 300, 200);
  const placed: [number, number][] = [];
  for (let i = 0; i < 12; i += 1) {
    if (boxes.place(150, 100, 90, 20)) placed.push([boxes.left, boxes.top]);
  }
  expect(placed.length).toBeGreaterThan(3);
  expect(placed.length).toBeLessThan(12);
  placed.forEach(([x, y], i) => {
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x + 90).toBeLessThanOrEqual(300);
    for (const [otherX, otherY] of placed.slice(i + 1)) {
      expect(Math.abs(otherX - x) >= 90 || Math.abs(otherY - y) >= 20).toBe(true);
    }
  });
  expect(boxes.place(500, 100, 90, 20)).toBe(false);
});
