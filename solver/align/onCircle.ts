/** The least total turn along a circle in plan: pieces between the places where a cam is at 0 or at its end, each smooth. */
import {
  angleFrom,
  armCircle,
  type Circle,
  meetings,
  pointOn,
  shareAt,
  shareSlope,
} from './plan.ts';
import { type Held, jointOf, type Plan, type Stance } from './stance.ts';
import { totalTurn, turnSlope } from './turn.ts';

/** What is sought: shares of the links that can be moved, the knuckle held to the targets. */
export interface Sought {
  readonly stance: Stance;
  readonly held: Held;
  /** Places in `Stance.arms` of the links that can be moved. */
  readonly links: readonly number[];
  /** Per link, which side of its shifted pivot the joint is on: see `shareAt`. */
  readonly sides: readonly number[];
  /** A point near all that is sought. */
  readonly near: Plan;
}

/** How far past its end a share may be, by rounding. */
const SLACK = 1e-10;
/** Nothing is sought farther from the point nearby than this part of the shortest link. */
const FARTHEST = 0.4;
const SAMPLES = 6;
const HALVINGS = 60;

/** The shares with the lower ball joint at p, put to their end where rounding carries them past it. */
export function soughtAt(
  { stance, held, links, sides }: Sought,
  p: Plan,
): { readonly shares: readonly number[]; readonly isInside: boolean; readonly turn: number } {
  let isInside = true;
  const shares = stance.arms.map((link, i) => {
    if (!links.includes(i)) return 0;
    const share = shareAt(link, jointOf(held, i), held.z, p, sides[i]!);
    const [least, most] = link.range;
    if (!(share >= least - SLACK && share <= most + SLACK)) isInside = false;
    return Math.min(Math.max(share, least), most);
  });
  const turn = isInside ? totalTurn(stance.arms, shares) : Number.POSITIVE_INFINITY;
  return { shares, isInside, turn };
}

/** Angles, from the one nearest to the point nearby, at which a cam or shim comes to 0 or to an end; sorted. */
function breaks(sought: Sought, circle: Circle, own: number | null, middle: number): number[] {
  const { stance, held, links } = sought;
  const shortest = Math.min(...stance.arms.map(({ length }) => length));
  const window = 2 * Math.asin(Math.min(1, (FARTHEST * shortest) / (2 * circle.radius)));
  const angles = links.flatMap((link) => {
    if (link === own) return [];
    return [...new Set([0, ...stance.arms[link]!.range])].flatMap((share) => {
      const other = armCircle(stance, held, link, share);
      return other === null ? [] : meetings(circle, other);
    });
  });
  const turned = angles.map((angle) => {
    const from = angle - middle;
    return Math.atan2(Math.sin(from), Math.cos(from));
  });
  return [-window, ...turned.filter((angle) => Math.abs(angle) < window), window].sort(
    (a, b) => a - b,
  );
}

/** Change of the total turn along the circle, rad per rad, on a piece where each cam keeps its sign. */
function slopeOn(
  { stance, held, links, sides }: Sought,
  circle: Circle,
  own: number | null,
  signs: readonly number[],
  angle: number,
): number {
  const p = pointOn(circle, angle);
  const [tx, ty] = [-circle.radius * Math.sin(angle), circle.radius * Math.cos(angle)];
  return links.reduce((sum, link) => {
    if (link === own) return sum;
    const arm = stance.arms[link]!;
    const joint = jointOf(held, link);
    const share = shareAt(arm, joint, held.z, p, sides[link]!);
    const [sx, sy] = shareSlope(arm, joint, held.z, p, share);
    return sum + turnSlope(arm, share, signs[link]!) * (sx * tx + sy * ty);
  }, 0);
}

/** The least on one piece: the least of a few samples, then where the slope between its neighbours turns. */
function leastOnPiece(
  sought: Sought,
  circle: Circle,
  own: number | null,
  from: number,
  to: number,
): number {
  const signs = soughtAt(sought, pointOn(circle, (from + to) / 2)).shares.map((share) =>
    share < 0 ? -1 : 1,
  );
  const samples = Array.from({ length: SAMPLES + 1 }, (_, i) => from + ((to - from) * i) / SAMPLES);
  const turns = samples.map((angle) => soughtAt(sought, pointOn(circle, angle)).turn);
  const best = turns.indexOf(Math.min(...turns));
  let [low, high] = [samples[Math.max(0, best - 1)]!, samples[Math.min(SAMPLES, best + 1)]!];
  if (!(slopeOn(sought, circle, own, signs, low) < 0)) return low;
  if (!(slopeOn(sought, circle, own, signs, high) > 0)) return high;
  for (let count = 0; count < HALVINGS; count += 1) {
    const middle = (low + high) / 2;
    if (slopeOn(sought, circle, own, signs, middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * The point of a circle near `sought.near` at which the total turn is least, every share within its range; null where there
 * is none. `own` is the link whose share is the same all along the circle, if it is one's.
 */
export function leastOnCircle(sought: Sought, circle: Circle, own: number | null): Plan | null {
  const middle = angleFrom(circle, sought.near);
  let best: Plan | null = null;
  let least = Number.POSITIVE_INFINITY;
  const take = (angle: number): void => {
    const p = pointOn(circle, angle);
    const { turn } = soughtAt(sought, p);
    if (turn < least) [best, least] = [p, turn];
  };
  const angles = breaks(sought, circle, own, middle).map((angle) => middle + angle);
  for (const [i, angle] of angles.entries()) {
    take(angle);
    const next = angles[i + 1];
    if (next === undefined || !(next > angle)) continue;
    if (!soughtAt(sought, pointOn(circle, (angle + next) / 2)).isInside) continue;
    take(leastOnPiece(sought, circle, own, angle, next));
  }
  return best;
}
