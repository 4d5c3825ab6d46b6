/**
 * Of all settings that reach the targets, the one with the least total turn of the cams from 0. With camber, caster and toe
 * given the knuckle's attitude is known, and each pivot's share follows from where the lower ball joint stands in plan: so the
 * total turn is a function of a point in the plane, of a point on a circle where one link has no hardware, or it has a few values.
 * It has kinks where a cam stands at 0; the least lies on a kink, or where the function is smooth. Both are looked for.
 */
import { radians } from '../units.ts';
import type { AlignedAngles } from './alignment.ts';
import { lastThatHolds, leastBetween } from './golden.ts';
import type { Stood } from './nearest.ts';
import { leastOnCircle, type Sought, soughtAt } from './onCircle.ts';
import { armCircle, type Circle, circleOf, meetings, pointOn } from './plan.ts';
import { type Held, hold, jointOf, type Plan, type Stance } from './stance.ts';

/** Cams so square to their slots, mm of u·d per mm of reach, that a pivot may be past the joint: both answers are tried. */
const SQUARE = 2;

/** Which side of its shifted pivot each link's joint is on: those of a known place, and where in doubt the others too. */
function sidesOf(stance: Stance, held: Held, { shares, place }: Stood): number[][] {
  return stance.arms.reduce<number[][]>(
    (all, link, i) => {
      if (link.fitting === null) return all.map((rest) => [...rest, 1]);
      const joint = jointOf(held, i);
      const apart = [0, 1, 2].reduce((sum, axis) => {
        const joined = axis < 2 ? place.p[axis]! : held.z;
        const pivot = link.pivot[axis]! + shares[i]! * link.reach * link.direction[axis]!;
        return sum + (joined + joint[axis]! - pivot) * link.direction[axis]!;
      }, 0);
      const side = apart < 0 ? -1 : 1;
      const isDoubtful = Math.abs(apart) < SQUARE * link.reach;
      const both = isDoubtful ? [side, -side] : [side];
      return both.flatMap((each) => all.map((rest) => [...rest, each]));
    },
    [[]],
  );
}

/** Circles of the links that nothing moves. */
function fixedCircles(stance: Stance, held: Held): (Circle | null)[] {
  const arms = stance.arms.flatMap((link, i) =>
    link.fitting === null ? [armCircle(stance, held, i, 0)] : [],
  );
  return stance.setsToe ? arms : [...arms, circleOf(stance.rod, held.outer, held.z, 0)];
}

/** The least over the circles of one link's share, the share itself sought. */
function leastOverShare(sought: Sought, outer: number, start: number): Plan | null {
  const at = (share: number): Plan | null => {
    const circle = armCircle(sought.stance, sought.held, outer, share);
    return circle && leastOnCircle(sought, circle, outer);
  };
  const holds = (share: number): boolean => at(share) !== null;
  if (!holds(start)) return null;
  const turn = (share: number): number => {
    const p = at(share);
    return p === null ? Number.POSITIVE_INFINITY : soughtAt(sought, p).turn;
  };
  const [low, high] = sought.stance.arms[outer]!.range;
  const [least, most] = [lastThatHolds(holds, start, low), lastThatHolds(holds, start, high)];
  return at(leastBetween(turn, least, most));
}

/** Points of the plane, or of the circles that fixed links leave, at which the least may lie. */
function candidates(sought: Sought, start: Stood): Plan[] {
  const { stance, held, links } = sought;
  const circles = fixedCircles(stance, held);
  const fixed = circles.flatMap((circle) => (circle === null ? [] : [circle]));
  const [first, second] = fixed;
  if (fixed.length < circles.length) return [];
  if (first !== undefined && second !== undefined) {
    return meetings(first, second).map((angle) => pointOn(first, angle));
  }
  const found = (point: Plan | null): Plan[] => (point === null ? [] : [point]);
  if (first !== undefined) return found(leastOnCircle(sought, first, null));
  const kinks = links.flatMap((link) =>
    [...new Set([0, ...stance.arms[link]!.range])].flatMap((share) => {
      const circle = armCircle(stance, held, link, share);
      return circle === null ? [] : found(leastOnCircle(sought, circle, link));
    }),
  );
  const outer = links[0]!;
  return [...kinks, ...found(leastOverShare(sought, outer, start.shares[outer]!))];
}

/**
 * Every setting found that reaches the targets, the least total turn first, each with its place. `start` is one setting
 * that reaches them; it is among the answers.
 */
export function leastTurns(stance: Stance, targets: AlignedAngles, start: Stood): Stood[] {
  const [camber, caster] = [radians(targets.camber), radians(targets.caster)];
  const toe = radians(targets.toe);
  const held = hold(stance, camber, caster, toe);
  const links = stance.arms.flatMap(({ fitting }, i) => (fitting === null ? [] : [i]));
  if (held === null || links.length === 0) return [start];
  const found = sidesOf(stance, held, start).flatMap((sides) => {
    const sought: Sought = { stance, held, links, sides, near: start.place.p };
    return candidates(sought, start).flatMap((p) => {
      const { shares, isInside } = soughtAt(sought, p);
      return isInside ? [{ shares, place: { camber, caster, toe, p } }] : [];
    });
  });
  return [...found, start];
}
