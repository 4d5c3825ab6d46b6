import { describe, expect, it } from 'vitest';
import {
  createShot,
  framePoints,
  freeCentre,
  OUTLOOKS,
  screenAxes,
} from '../../src/scene/camera/framing.ts';
import { mixShots } from '../../src/scene/camera/moves.ts';

const POINTS = Float64Array.from([
  ...[-400, 250, -388],
  ...[400, 1000, 400],
  ...[330, 300, -40],
  ...[0, 950, 388],
  ...[-10, 700, 330],
]);
const WIDTH = 1440;
const HEIGHT = 900;
const INSETS = { top: 48, right: 330, bottom: 190, left: 0 };

/** Where a point is drawn, px from the window's top left corner. */
function drawn(point: readonly number[], shot: ReturnType<typeof createShot>): [number, number] {
  const [right, up] = screenAxes(shot.direction);
  const part = (axis: readonly number[]): number =>
    axis.reduce((sum, a, i) => sum + a * (point[i]! - shot.target[i]!), 0);
  const depth = shot.distance - part(shot.direction);
  const scale = HEIGHT / (2 * Math.tan((shot.fov * Math.PI) / 360) * depth);
  const [x, y] = freeCentre(INSETS);
  return [WIDTH / 2 + x + scale * part(right), HEIGHT / 2 + y - scale * part(up)];
}

describe('framePoints', () => {
  it.each(Object.entries(OUTLOOKS))('fills the free rectangle from %s', (_, outlook) => {
    const shot = createShot();
    framePoints(shot, POINTS, outlook, WIDTH, HEIGHT, INSETS);
    let closest = Number.POSITIVE_INFINITY;
    for (let at = 0; at < POINTS.length; at += 3) {
      const [x, y] = drawn([...POINTS.subarray(at, at + 3)], shot);
      const edges = [
        x - INSETS.left,
        WIDTH - INSETS.right - x,
        y - INSETS.top,
        HEIGHT - INSETS.bottom - y,
      ];
      for (const edge of edges) expect(edge).toBeGreaterThan(0);
      closest = Math.min(closest, ...edges);
    }
    // No room is given away: some point comes near an edge.
    expect(closest).toBeLessThan(60);
  });

  it('looks at the left wheel as people do: forward is up from above, and left from the side', () => {
    const [aboveRight, aboveUp] = screenAxes([-1e-4, 0, 1]);
    expect(aboveUp[0]).toBeCloseTo(1, 3);
    expect(aboveRight[1]).toBeCloseTo(-1, 3);
    expect(screenAxes([0, 1, 0])[0]).toEqual([-1, 0, 0]);
    expect(screenAxes([1, 0, 0])[0][1]).toBe(1);
  });
});

describe('mixShots', () => {
  it('starts and ends where it should, going the short way around', () => {
    const from = createShot();
    const to = createShot();
    framePoints(from, POINTS, OUTLOOKS.front, WIDTH, HEIGHT, INSETS);
    framePoints(to, POINTS, OUTLOOKS.side, WIDTH, HEIGHT, INSETS);
    const out = createShot();
    mixShots(from, to, 0, out);
    expect(out.distance).toBeCloseTo(from.distance, 6);
    expect(out.direction[0]).toBeCloseTo(1, 9);
    mixShots(from, to, 0.5, out);
    expect(out.direction[0]).toBeCloseTo(Math.SQRT1_2, 9);
    expect(out.direction[1]).toBeCloseTo(Math.SQRT1_2, 9);
    mixShots(from, to, 1, out);
    expect(out.distance).toBeCloseTo(to.distance, 6);
    expect(out.fov).toBeCloseTo(to.fov, 9);
    expect(out.direction[1]).toBeCloseTo(1, 9);
  });
});
