/**
 * The best place in a rectangle, solved and not only the grid's: from each low place of a lattice the departures are taken
 * as linear in the two coordinates, the least of their greatest is stepped to, and the step is kept where the true number
 * falls and shortened where it does not.
 */
import type { Box } from './box.ts';
import { inBox, isInBox } from './box.ts';
import { type Judge, judgeAt, samplesOf } from './judge.ts';
import { leastGreatest } from './minimax.ts';
import type { Picture } from './picture.ts';
import { PLANE_AXES } from './question.ts';

export interface Spot {
  /** Coordinates along the plane's two axes, mm. */
  readonly at: readonly [number, number];
  /** What it is judged by, degrees; NaN where the corner cannot follow. */
  readonly value: number;
}

/** Lattice of starts along an edge, and how many of the lowest are followed. */
const LATTICE = 7;
const MOST_STARTS = 3;
/** Half of the difference that slopes are taken from, mm. */
const NUDGE = 0.02;
const MOST_STEPS = 30;
/** The search ends where a step is no longer than this, mm. */
const LAST_STEP = 5e-5;
/** Numbers this near, degrees, are alike: then the nearer place is the better one. */
const ALIKE = 1e-6;
/** What a mm of way counts, degrees, so that of many best places the nearest is found. */
const PULL = 1e-8;

function farFrom(judge: Judge, [x, y]: readonly [number, number]): number {
  const [i, j] = PLANE_AXES[judge.question.plane];
  return Math.hypot(x - judge.place[i]!, y - judge.place[j]!);
}

/** Whether one spot is to be preferred; NaN never is. */
function isBetter(judge: Judge, one: Spot, other: Spot): boolean {
  if (Number.isNaN(other.value)) return !Number.isNaN(one.value);
  if (one.value < other.value - ALIKE) return true;
  return (
    one.value <= other.value + ALIKE && farFrom(judge, one.at) < farFrom(judge, other.at) - ALIKE
  );
}

function spotAt(judge: Judge, at: readonly [number, number]): Spot {
  return { at, value: judgeAt(judge, at[0], at[1]) };
}

/** Slopes of the samples along one coordinate, by differences; null where the corner cannot follow on either side. */
function slopes(
  judge: Judge,
  [x, y]: readonly [number, number],
  dx: number,
  dy: number,
): Float64Array | null {
  if (Number.isNaN(judgeAt(judge, x + dx, y + dy))) return null;
  const after = samplesOf(judge);
  if (Number.isNaN(judgeAt(judge, x - dx, y - dy))) return null;
  const before = samplesOf(judge);
  return after.map((value, i) => (value - before[i]!) / (2 * NUDGE));
}

/** Goes down from a start; every step is shorter than the last or lowers the number. */
function descend(judge: Judge, box: Box, start: Spot, longest: number): Spot {
  const [i, j] = PLANE_AXES[judge.question.plane];
  let now = start;
  let step = longest;
  for (let count = 0; count < MOST_STEPS && step > LAST_STEP; count += 1) {
    if (Number.isNaN(judgeAt(judge, now.at[0], now.at[1]))) return now;
    const value = samplesOf(judge);
    const along = slopes(judge, now.at, NUDGE, 0);
    const aside = slopes(judge, now.at, 0, NUDGE);
    if (along === null || aside === null) return now;
    const [x, y] = now.at;
    const ways = (at: number, [low, high]: readonly [number, number]) =>
      [Math.max(low - at, -step), Math.min(high - at, step)] as const;
    const home = [judge.place[i]! - x, judge.place[j]! - y] as const;
    const planes = { value, along, aside };
    const [dx, dy] = leastGreatest(planes, ways(x, box.first), ways(y, box.second), home, PULL);
    const next = spotAt(judge, inBox(box, x + dx, y + dy));
    const moved = Math.hypot(dx, dy);
    if (isBetter(judge, next, now)) now = next;
    else step = Math.min(step, moved) / 3;
  }
  return now;
}

function lattice(box: Box): readonly (readonly [number, number])[] {
  const along = ([low, high]: readonly [number, number]) =>
    high > low
      ? Array.from({ length: LATTICE }, (_, i) => low + ((high - low) * i) / (LATTICE - 1))
      : [low];
  return along(box.second).flatMap((y) => along(box.first).map((x) => [x, y] as const));
}

/** The lowest node of a picture in the box; null where it has none. */
function lowestNode({ xs, ys, values }: Picture, box: Box): Spot | null {
  let lowest: Spot | null = null;
  values.forEach((value, node) => {
    const at = [xs[node % xs.length]!, ys[Math.floor(node / xs.length)]!] as const;
    if (value < (lowest?.value ?? Number.POSITIVE_INFINITY) && isInBox(box, ...at))
      lowest = { at, value };
  });
  return lowest;
}

/** The best place in the box, never worse than the present one nor than any node of the picture there. */
export function bestIn(judge: Judge, box: Box, picture: Picture | null): Spot {
  const [i, j] = PLANE_AXES[judge.question.plane];
  const home = spotAt(judge, inBox(box, judge.place[i]!, judge.place[j]!));
  const spots = lattice(box).map((at) => spotAt(judge, at));
  const low = spots
    .filter(({ value }) => !Number.isNaN(value))
    .sort((a, b) => a.value - b.value)
    .slice(0, MOST_STARTS);
  const node = picture === null ? null : lowestNode(picture, box);
  const starts = [home, ...(node === null ? [] : [node]), ...low];
  const size = Math.max(box.first[1] - box.first[0], box.second[1] - box.second[0]);
  return starts
    .map((start) => descend(judge, box, start, size / 2))
    .reduce((best, next) => (isBetter(judge, next, best) ? next : best), home);
}
