/** Rectangles of the plane in which a best place is looked for. */
import type { Judge } from './judge.ts';
import { PLANE_AXES } from './question.ts';

/** [least, greatest] of both coordinates, mm; a side of no length leaves one way to move. */
export interface Box {
  readonly first: readonly [number, number];
  readonly second: readonly [number, number];
}

/** What limits a best place: the picture's edges, how far the point may move, or one of its two axes alone besides. */
export type Room = 'picture' | 'reach' | 'first' | 'second';

function around(centre: number, minus: number, plus: number): readonly [number, number] {
  return [centre - minus, centre + plus];
}

/** The box that a room leaves about the present place. */
export function boxOf({ place, question }: Judge, room: Room): Box {
  const [i, j] = PLANE_AXES[question.plane];
  const { half, reach } = question;
  const [x, y] = [place[i]!, place[j]!];
  const whole = { first: around(x, half, half), second: around(y, half, half) };
  if (room === 'picture') return whole;
  const first = around(x, reach.first.minus, reach.first.plus);
  const second = around(y, reach.second.minus, reach.second.plus);
  return {
    first: room === 'second' ? [x, x] : first,
    second: room === 'first' ? [y, y] : second,
  };
}

function clamp(value: number, [low, high]: readonly [number, number]): number {
  return Math.min(high, Math.max(low, value));
}

/** The nearest place of the box. */
export function inBox({ first, second }: Box, x: number, y: number): readonly [number, number] {
  return [clamp(x, first), clamp(y, second)];
}

/** Whether a place lies in the box, its edges included. */
export function isInBox({ first, second }: Box, x: number, y: number): boolean {
  return x >= first[0] && x <= first[1] && y >= second[0] && y <= second[1];
}
