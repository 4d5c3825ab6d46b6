/** A caster sweep as done with turn plates: what a gauge would read, beside the true caster, and why they differ. */
import { assemble } from '../corner.ts';
import type { Model } from '../model/model.ts';
import { fixedAxisCaster, RULE_STEER, ruleFactor, smallAngleCaster } from './casterRead.ts';
import { type SteerEnd, type Steered, steeredBy, steerTo } from './steered.ts';

/** What each part of the difference between the rule's reading and the true caster is worth, degrees; they add up to it. */
export interface CasterDifference {
  /** The rule's factor against 1/(2 sin δ). */
  readonly rule: number;
  /** Camber, caster and kingpin inclination taken as small. */
  readonly smallAngles: number;
  /** Turn plates are zeroed with static toe on the wheel, so that the steer angles are not even about straight ahead. */
  readonly staticToe: number;
  /** The steering axis itself moves while it is steered: ride height is held, so the arms swing. */
  readonly movingAxis: number;
}

export interface CasterSweep {
  /** Steer angle each way, asked and done, degrees: less where the corner does not steer so far. */
  readonly asked: number;
  readonly steer: number;
  /** What ends each way short of what was asked; null where nothing does. */
  readonly ends: { readonly left: SteerEnd | null; readonly right: SteerEnd | null };
  readonly straight: Steered;
  /** The left wheel steered left, its front edge outboard, and steered right, its front edge inboard. */
  readonly left: Steered;
  readonly right: Steered;
  /** Camber steered left less camber steered right, degrees. */
  readonly change: number;
  readonly factor: number;
  readonly byRule: number;
  readonly bySmallAngles: number;
  /** Exact for a still axis, with the kingpin inclination known and static toe left out of account, as a gauge has to. */
  readonly byFixedAxis: number;
  /** Of the set pose. */
  readonly trueCaster: number;
  readonly difference: CasterDifference;
}

/** Less steer than this, degrees, tells nothing of caster. */
const LEAST_STEER = 1;

function readingsOf(
  asked: number,
  ends: CasterSweep['ends'],
  at: readonly [Steered, Steered, Steered],
): CasterSweep {
  const [straight, left, right] = at;
  const steer = left.steer;
  const change = left.camber - right.camber;
  const factor = ruleFactor(steer);
  const camber = [left.camber, right.camber] as const;
  const byRule = factor * change;
  const bySmallAngles = smallAngleCaster(change, steer);
  const { kingpinInclination, caster: trueCaster } = straight;
  const byFixedAxis = fixedAxisCaster(camber, [steer, -steer], kingpinInclination);
  const withToe = fixedAxisCaster(camber, [-left.toe, -right.toe], kingpinInclination);
  return {
    asked,
    steer,
    ends,
    straight,
    left,
    right,
    change,
    factor,
    byRule,
    bySmallAngles,
    byFixedAxis,
    trueCaster,
    difference: {
      rule: byRule - bySmallAngles,
      smallAngles: bySmallAngles - byFixedAxis,
      staticToe: byFixedAxis - withToe,
      movingAxis: withToe - trueCaster,
    },
  };
}

/**
 * Steers the left wheel by an angle either way at its set pose (1 to 60 degrees make sense; 20 is usual) and reads camber. Where one
 * way ends short of it, both go as far as that one does. null where the corner does not stand at ride, or hardly steers.
 */
export function casterSweep(model: Model, asked: number = RULE_STEER): CasterSweep | null {
  const corner = assemble(model);
  const straight = steeredBy(corner, 0);
  const wanted = Math.abs(asked);
  const [left, right] = [steerTo(corner, wanted), steerTo(corner, -wanted)];
  if (straight === null || left === null || right === null) return null;
  const ends = { left: left.end, right: right.end };
  const steer = Math.min(left.at.steer, -right.at.steer);
  if (!(steer >= LEAST_STEER)) return null;
  const [out, back] = [steerTo(corner, steer), steerTo(corner, -steer)];
  if (out === null || back === null) return null;
  return readingsOf(wanted, ends, [straight, out.at, back.at]);
}
