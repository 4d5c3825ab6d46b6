/** Where the arrow keys take the probe. */
import type { Spot } from './placeDrawing.ts';

/** Places are asked about to so much, mm. */
export const SNAP = 0.1;

/** Steps of an arrow key as parts of the picture's half, plain and with Shift; with Alt it is the finest. */
const PLAIN = 1 / 20;
const COARSE = 1 / 4;

const WAYS: Readonly<Record<string, Spot>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

export function snapped(value: number): number {
  return Number((Math.round(value / SNAP) * SNAP).toFixed(1));
}

/**
 * The place that a key leads to from `from`, mm along the plane's axes; null for a key that leads nowhere. `half` is from
 * the present point, `home`, to the picture's edges; `sense` is −1 where the first axis grows to the left.
 */
export function keyed(
  { key, shiftKey, altKey }: Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey'>,
  from: Spot,
  home: Spot,
  half: number,
  sense: 1 | -1,
): Spot | null {
  if (key === 'Home') return home;
  const way = WAYS[key];
  if (way === undefined) return null;
  const step = altKey ? SNAP : Math.max(SNAP, half * (shiftKey ? COARSE : PLAIN));
  return [from[0] + sense * way[0] * step, from[1] + way[1] * step];
}
