/** How well a wish's figure is known from points as measured: one standard uncertainty, by the law of propagation (JCGM 100, 5.1.2). */
import type { Corner } from '../corner.ts';
import { inputSigmas } from '../inputs/sigma.ts';
import {
  type AnswerKey,
  answerPlace,
  createSensitivities,
  type Sensitivities,
  sensitivityAt,
} from '../sensitivity/sensitivity.ts';
import { heightsOf, rackAt, travelAt } from './places.ts';
import type { Height, Lock, Wish } from './plan.ts';
import { toeDepartures } from './read.ts';

/** Derivatives of an answer in a pose by every input; null out of reach. */
function slopesAt(
  made: Sensitivities,
  key: AnswerKey,
  height: Height,
  lock: Lock,
): Float64Array | null {
  const { corner, inputs } = made;
  const found = sensitivityAt(made, travelAt(corner.model, height), rackAt(corner, lock));
  if (typeof found === 'string') return null;
  const first = answerPlace(key) * inputs.length;
  return found.slopes.slice(first, first + inputs.length);
}

/** The height of a stretch at which toe departs the most. */
function worstHeight(corner: Corner, from: Height, to: Height): number {
  const departures = toeDepartures(corner, from, to).map(Math.abs);
  const worst = departures.indexOf(Math.max(...departures));
  return heightsOf(corner.model, from, to)[worst] ?? 0;
}

function slopesOf(made: Sensitivities, wish: Wish): Float64Array | null {
  if (wish.of === 'least') return null;
  if (wish.of === 'measure') return slopesAt(made, wish.measure, wish.height, wish.lock);
  if (wish.of === 'toeChange') {
    // A steer angle is counted from the set pose's toe, and so is what toe departs by.
    return slopesAt(made, 'steerAngle', worstHeight(made.corner, wish.from, wish.to), 'straight');
  }
  const there = slopesAt(made, wish.measure, wish.height, 'straight');
  const here = slopesAt(made, wish.measure, 'ride', 'straight');
  return there === null || here === null ? null : there.map((each, i) => each - here[i]!);
}

/**
 * What each wish's figure is known to, in its own unit, the inputs taken as independent of each other; null for gaps and
 * margins, where the model states no tolerance, and where a figure has no derivative.
 */
export function knownTo(corner: Corner, wishes: readonly Wish[]): readonly (number | null)[] {
  const { model } = corner;
  if (model.tolerance === undefined) return wishes.map(() => null);
  const made = createSensitivities(corner);
  const sigmas = inputSigmas(model, made.inputs);
  return wishes.map((wish) => {
    const slopes = slopesOf(made, wish);
    if (slopes === null) return null;
    const variance = slopes.reduce((sum, slope, i) => sum + (slope * sigmas[i]!) ** 2, 0);
    return Number.isFinite(variance) ? Math.sqrt(variance) : null;
  });
}
