/**
 * Caster as gauges work it out of the change of camber between two steer angles, the left wheel's camber γ1 at +δ (steered left) and γ2
 * at −δ. Degrees in, degrees out.
 */
import { degrees, radians } from '../units.ts';

/** What gauges multiply the camber change over ±20° with: workshop rule. */
export const RULE_FACTOR = 1.5;
/** The steer angle the rule is made for, degrees. */
export const RULE_STEER = 20;

/** The rule's factor at another steer angle, scaled so that it errs by the same part: 1.5·sin 20°/sin δ. */
export function ruleFactor(steer: number): number {
  return (RULE_FACTOR * Math.sin(radians(RULE_STEER))) / Math.sin(radians(steer));
}

/** (γ1 − γ2)/(2 sin δ): true while caster, camber and kingpin inclination are small. */
export function smallAngleCaster(change: number, steer: number): number {
  return change / (2 * Math.sin(radians(steer)));
}

/**
 * Exact for an axis that stands still while the wheel is turned about it: sin γ + (tan σ·cos h − tan τ·sin h)·cos γ is constant over
 * the heading h of the wheel, positive to the left, with σ the kingpin inclination and τ the caster. The headings are those of the
 * two readings, ±δ where static toe is left out of account.
 */
export function fixedAxisCaster(
  camber: readonly [number, number],
  heading: readonly [number, number],
  kingpinInclination: number,
): number {
  const [first, second] = camber.map(radians) as [number, number];
  const [h1, h2] = heading.map(radians) as [number, number];
  const leaning = Math.cos(h1) * Math.cos(first) - Math.cos(h2) * Math.cos(second);
  const rise = Math.sin(first) - Math.sin(second) + Math.tan(radians(kingpinInclination)) * leaning;
  const reach = Math.sin(h1) * Math.cos(first) - Math.sin(h2) * Math.cos(second);
  return degrees(Math.atan(rise / reach));
}
