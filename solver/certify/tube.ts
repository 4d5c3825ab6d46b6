/** The tube that the linkage cannot leave in a cell. */
import type { Linkage } from '../linkage/linkage.ts';
import {
  type Along,
  type Drive,
  type Rates,
  ratesWithin,
  type Slopes,
  type Tube,
} from './rates.ts';
import { midLength, swing, swingOf, type Taylor, type TaylorVector } from './taylor.ts';

/** Share and size by which every tube is widened: far more than rounding and the solver's residuals come to. */
const SAFETY = 1e-9;
const SAFETY_SIZE = 1e-12;
const MOST_ROUNDS = 6;
const FIRST_GUESS = 1.3;
const NEXT_GUESS = 1.15;
/** Tubes wider than this are not worth a try, rad. */
const WIDEST = 0.5;

function widened(rest: number): number {
  return rest * (1 + SAFETY) + SAFETY_SIZE;
}

/** How far a vector with these rates strays from its tangent: slopes count half, they grow from 0. */
export function strays({ a, b }: Along<TaylorVector>): number {
  return widened((swing(a) + a.rest + swing(b) + b.rest) / 2);
}

/** The same of a number. */
export function straysNumber({ a, b }: Along<Taylor>): number {
  return widened((swingOf(a) + a.rest + swingOf(b) + b.rest) / 2);
}

/** The same for the knuckle's turn: what its spin strays, and half the square of what it turns. */
function straysTurn(spin: Along<TaylorVector>): number {
  const first = midLength(spin.a) + midLength(spin.b);
  const widest = first + swing(spin.a) + swing(spin.b);
  return strays(spin) + widened((first * widest) / 2);
}

function tubeOf(rates: Rates): Tube {
  return {
    theta: straysNumber(rates.theta),
    phi: straysNumber(rates.phi),
    axis: strays(rates.axis),
    turn: straysTurn(rates.spin),
    outer: strays(rates.outer),
    rack: straysNumber(rates.rack),
  };
}

function wider(tube: Tube, factor: number): Tube {
  return {
    theta: tube.theta * factor,
    phi: tube.phi * factor,
    axis: tube.axis * factor,
    turn: tube.turn * factor,
    outer: tube.outer * factor,
    rack: tube.rack * factor,
  };
}

function isWithin(inner: Tube, outer: Tube): boolean {
  return (
    inner.theta <= outer.theta &&
    inner.phi <= outer.phi &&
    inner.axis <= outer.axis &&
    inner.turn <= outer.turn &&
    inner.outer <= outer.outer &&
    inner.rack <= outer.rack
  );
}

export const NO_TUBE: Tube = { theta: 0, phi: 0, axis: 0, turn: 0, outer: 0, rack: 0 };

/** The rates that hold over a cell, and the tube that is not left there. */
export interface Settled {
  readonly rates: Rates;
  readonly tube: Tube;
}

/**
 * Looks for a tube that cannot be left, from the exact slopes at the centre's pose. Suppose that on any straight way from
 * the centre nothing leaves some tube: then the rates are enclosed, and integrated they bound how far anything really
 * strays. Where that is no farther than was supposed, the supposition cannot fail first.
 */
export function settle(
  linkage: Linkage,
  pose: Float64Array,
  drive: Drive,
  slopes: Slopes,
): Settled | null {
  const tangent = ratesWithin(linkage, pose, drive, slopes, NO_TUBE);
  if (tangent === null) return null;
  let guess = wider(tubeOf(tangent), FIRST_GUESS);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    if (!(Math.max(guess.theta, guess.phi, guess.turn) < WIDEST)) return null;
    const rates = ratesWithin(linkage, pose, drive, slopes, guess);
    if (rates === null) return null;
    const strayed = tubeOf(rates);
    if (isWithin(strayed, guess)) return { rates, tube: strayed };
    guess = wider(strayed, NEXT_GUESS);
  }
  return null;
}
