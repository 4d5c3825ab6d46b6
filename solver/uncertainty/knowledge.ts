/**
 * How well the answers of a pose are known: the law of propagation of uncertainty for independent inputs,
 * u² = Σ (∂f/∂x_i)²·u_i² (JCGM 100:2008, 5.1.2), with exact derivatives. Inputs are taken as independent of each other: a tape held to
 * one wrong datum moves several points alike, and is not seen.
 */
import { assemble } from '../corner.ts';
import type { Input } from '../inputs/input.ts';
import { inputSigmas } from '../inputs/sigma.ts';
import { rideTravel } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import {
  ANSWER_KEYS,
  type AnswerKey,
  createSensitivities,
  type PoseSensitivity,
  type Sensitivities,
  sensitivityAt,
  type ToeSensitivity,
  toeSensitivityAt,
} from '../sensitivity/sensitivity.ts';

/** The change of toe at rack 0 from the set pose to an end of the travel, degrees; and its greatest less its least over all of it. */
export const TOE_CHANGE_KEYS = ['toeToBump', 'toeToDroop', 'toeChange'] as const;

export type ToeChangeKey = (typeof TOE_CHANGE_KEYS)[number];

/** An answer whose uncertainty can be asked for. */
export type KnownKey = AnswerKey | ToeChangeKey;

export interface KnownAnswer {
  /** In the measure's own unit. */
  readonly value: number;
  /** One standard uncertainty; NaN where the answer has a corner and no derivative. */
  readonly uncertainty: number;
  /** Derivative with respect to each input, in the order of `Knowledge.inputs`. */
  readonly slopes: Float64Array;
}

/** What is known of a pose. Plain data. */
export interface Knowledge {
  readonly travel: number;
  readonly rack: number;
  /** The inputs that any measure depends on. */
  readonly inputs: readonly Input[];
  /** Their standard uncertainties, in their units; 0 where none is stated. */
  readonly sigmas: Float64Array;
  /** Answers that exist; null where the pose is out of reach. */
  readonly answers: Readonly<Partial<Record<KnownKey, KnownAnswer>>> | null;
}

/** Standard uncertainty of a sum of independent parts slope·sigma. An input known exactly has no part, whatever its slope. */
export function combined(slopes: ArrayLike<number>, sigmas: ArrayLike<number>): number {
  let variance = 0;
  for (let i = 0; i < sigmas.length; i += 1) {
    if (sigmas[i]! > 0) variance += (slopes[i]! * sigmas[i]!) ** 2;
  }
  return Math.sqrt(variance);
}

/** Standard uncertainty of every answer of a differentiated pose, by `answerPlace`; NaN where the answer is. */
export function uncertaintiesOf(pose: PoseSensitivity, sigmas: Float64Array): Float64Array {
  const count = sigmas.length;
  return Float64Array.from(ANSWER_KEYS, (_, place) => {
    const value = pose.values[place]!;
    if (Number.isNaN(value)) return Number.NaN;
    return known(value, pose.slopes.subarray(place * count, (place + 1) * count), sigmas)
      .uncertainty;
  });
}

/** An uncertainty below this part of its answer is rounding: nothing uncertain moves the answer. */
const ROUNDING = 1e-12;

function known(value: number, slopes: Float64Array, sigmas: Float64Array): KnownAnswer {
  const uncertainty = combined(slopes, sigmas);
  const isRounding = uncertainty < ROUNDING * (1 + Math.abs(value));
  return { value, slopes, uncertainty: isRounding ? 0 : uncertainty };
}

function toeBetween(from: ToeSensitivity, to: ToeSensitivity, sigmas: Float64Array): KnownAnswer {
  const slopes = to.slopes.map((slope, i) => slope - from.slopes[i]!);
  return known(to.toe - from.toe, slopes, sigmas);
}

/** Heights at which toe is read for its change over the travel. */
export const TOE_HEIGHTS = 33;

/** The heights, mm of travel, from full droop to full bump. */
export function toeHeights({ travel }: Model): Float64Array {
  const span = travel.bump + travel.droop;
  return Float64Array.from(
    { length: TOE_HEIGHTS },
    (_, i) => -travel.droop + (span * i) / (TOE_HEIGHTS - 1),
  );
}

/** Toe's change over the travel: its slopes are those of the two poses where it is greatest and least, which to first order stay the extremes. */
function toeChange(made: Sensitivities, sigmas: Float64Array): KnownAnswer | null {
  let least: ToeSensitivity | null = null;
  let most: ToeSensitivity | null = null;
  for (const travel of toeHeights(made.corner.model)) {
    const at = toeSensitivityAt(made, travel, 0);
    if (typeof at === 'string') return null;
    if (least === null || at.toe < least.toe) least = at;
    if (most === null || at.toe > most.toe) most = at;
  }
  return least === null || most === null ? null : toeBetween(least, most, sigmas);
}

function toeChanges(
  made: Sensitivities,
  sigmas: Float64Array,
): readonly (readonly [KnownKey, KnownAnswer])[] {
  const { travel } = made.corner.model;
  const set = toeSensitivityAt(made, rideTravel(travel), 0);
  if (typeof set === 'string') return [];
  const ends = [
    ['toeToBump', travel.bump],
    ['toeToDroop', -travel.droop],
  ] as const;
  const found: (readonly [KnownKey, KnownAnswer])[] = [];
  for (const [key, at] of ends) {
    const end = toeSensitivityAt(made, at, 0);
    if (typeof end !== 'string') found.push([key, toeBetween(set, end, sigmas)]);
  }
  const change = toeChange(made, sigmas);
  return change === null ? found : [...found, ['toeChange', change]];
}

/** What is known of the pose at (travel, rack), mm, and of the toe change, which is the same for all poses. Costs some 10 ms. */
export function knowledgeAt(
  made: Sensitivities,
  sigmas: Float64Array,
  travel: number,
  rack: number,
): Knowledge {
  const { inputs } = made;
  const count = inputs.length;
  const pose = sensitivityAt(made, travel, rack);
  if (typeof pose === 'string') return { travel, rack, inputs, sigmas, answers: null };
  const answers: (readonly [KnownKey, KnownAnswer])[] = ANSWER_KEYS.map((key, place) => {
    const slopes = pose.slopes.slice(place * count, (place + 1) * count);
    return [key, known(pose.values[place]!, slopes, sigmas)];
  });
  const there = [...answers, ...toeChanges(made, sigmas)].filter(([, { value }]) =>
    Number.isFinite(value),
  );
  return { travel, rack, inputs, sigmas, answers: Object.fromEntries(there) };
}

/** What is known of a model's set pose, by the uncertainties the model states. */
export function knowledgeOf(model: Model): Knowledge {
  const made = createSensitivities(assemble(model));
  return knowledgeAt(made, inputSigmas(model, made.inputs), rideTravel(model.travel), 0);
}
