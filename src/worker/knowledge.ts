/** What is known of the answers of one pose, and which input spoils which. */
import type { Input, MeasureKey } from '../../solver/index.ts';

/** A measure of the set pose, or the toe change from there to an end of the travel. */
export type AnswerKey = MeasureKey | 'toeToBump' | 'toeToDroop';

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
  readonly answers: Readonly<Partial<Record<AnswerKey, Answer>>> | null;
}
