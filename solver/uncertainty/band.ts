/** How well every answer is known along a line of poses: what a band about a curve is drawn from. */
import {
  ANSWER_KEYS,
  type AnswerKey,
  answerPlace,
  type Sensitivities,
  sensitivityAt,
} from '../sensitivity/sensitivity.ts';
import { allSteps, type Steps } from '../stops/steps.ts';
import { uncertaintiesOf } from './knowledge.ts';

/** Values and standard uncertainties along a line, in the measures' own units; NaN out of reach and where there is no number. */
export interface Band {
  readonly along: 'travel' | 'rack';
  /** What stayed the same along the line: rack or travel, mm. */
  readonly at: number;
  readonly axis: Float64Array;
  readonly values: Readonly<Record<AnswerKey, Float64Array>>;
  readonly uncertainties: Readonly<Record<AnswerKey, Float64Array>>;
}

function columns(count: number): Record<AnswerKey, Float64Array> {
  return Object.fromEntries(
    ANSWER_KEYS.map((key) => [key, new Float64Array(count).fill(Number.NaN)]),
  ) as Record<AnswerKey, Float64Array>;
}

/** The band along `axis`, one pose a step. */
export function* bandInSteps(
  made: Sensitivities,
  sigmas: Float64Array,
  along: 'travel' | 'rack',
  axis: Float64Array,
  at: number,
): Steps<Band> {
  const band = {
    along,
    at,
    axis,
    values: columns(axis.length),
    uncertainties: columns(axis.length),
  };
  for (let row = 0; row < axis.length; row += 1) {
    const place = axis[row]!;
    const pose =
      along === 'travel' ? sensitivityAt(made, place, at) : sensitivityAt(made, at, place);
    if (typeof pose !== 'string') {
      const uncertainties = uncertaintiesOf(pose, sigmas);
      for (const key of ANSWER_KEYS) {
        band.values[key][row] = pose.values[answerPlace(key)]!;
        band.uncertainties[key][row] = uncertainties[answerPlace(key)]!;
      }
    }
    yield (row + 1) / axis.length;
  }
  return band;
}

/** The band along `axis`, at once: two milliseconds a pose. */
export function bandOf(...given: Parameters<typeof bandInSteps>): Band {
  return allSteps(bandInSteps(...given));
}
