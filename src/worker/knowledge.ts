/** What is known of the answers of the set pose, and which input spoils which. */
import {
  ANSWER_KEYS,
  type AnswerKey,
  answerPlace,
  assemble,
  createSensitivities,
  type Input,
  inputSigmas,
  type Model,
  type PoseSensitivity,
  type Sensitivities,
  sensitivityAt,
} from '../../solver/index.ts';
import { rideTravel } from '../../solver/model/defaults.ts';

/** A measure of the set pose, or the toe change from there to an end of the travel. */
export type KnownKey = AnswerKey | 'toeToBump' | 'toeToDroop';

export interface Answer {
  readonly value: number;
  /** One standard uncertainty. */
  readonly uncertainty: number;
  /** Derivative with respect to each input, in the order of `Knowledge.inputs`. */
  readonly slopes: Float64Array;
}

export interface Knowledge {
  /** The inputs that any measure depends on. */
  readonly inputs: readonly Input[];
  /** Their standard uncertainties, in their units; 0 where none is stated. */
  readonly sigmas: Float64Array;
  /** Answers that exist; null where the set pose is out of reach. */
  readonly answers: Readonly<Partial<Record<KnownKey, Answer>>> | null;
}

/** Square root of the sum of squares of slope × σ: independent inputs (JCGM 100:2008, 5.1.2). NaN where a slope is missing. */
export function uncertaintyOf(slopes: Float64Array, sigmas: Float64Array): number {
  let variance = 0;
  for (let i = 0; i < slopes.length; i += 1) {
    if (sigmas[i]! > 0) variance += (slopes[i]! * sigmas[i]!) ** 2;
  }
  return Math.sqrt(variance);
}

/** The row of slopes of an answer: a view, not a copy. */
export function slopesOf(
  { slopes }: PoseSensitivity,
  { inputs }: Sensitivities,
  key: AnswerKey,
): Float64Array {
  const start = answerPlace(key) * inputs.length;
  return slopes.subarray(start, start + inputs.length);
}

/** Everything about the set pose; the toe changes only where both of their poses are reached. */
export function knowledgeOf(model: Model): Knowledge {
  const made = createSensitivities(assemble(model));
  const { inputs } = made;
  const sigmas = inputSigmas(model, inputs);
  const set = sensitivityAt(made, rideTravel(model.travel), 0);
  if (typeof set === 'string') return { inputs, sigmas, answers: null };
  const answer = (value: number, slopes: Float64Array): Answer => ({
    value,
    slopes,
    uncertainty: uncertaintyOf(slopes, sigmas),
  });
  const answers: Partial<Record<KnownKey, Answer>> = {};
  for (const key of ANSWER_KEYS) {
    const value = set.values[answerPlace(key)]!;
    if (Number.isFinite(value)) answers[key] = answer(value, slopesOf(set, made, key).slice());
  }
  const toe = slopesOf(set, made, 'toe');
  for (const [key, travel] of [
    ['toeToBump', model.travel.bump],
    ['toeToDroop', -model.travel.droop],
  ] as const) {
    const end = sensitivityAt(made, travel, 0);
    if (typeof end === 'string') continue;
    const place = answerPlace('toe');
    const slopes = slopesOf(end, made, 'toe').map((slope, i) => slope - toe[i]!);
    answers[key] = answer(end.values[place]! - set.values[place]!, slopes);
  }
  return { inputs, sigmas, answers };
}
