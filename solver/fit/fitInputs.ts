/** The inputs that a fit may move: those with a ± of their own, and the design pose's camber and toe. */
import type { Input } from '../inputs/input.ts';
import { inputsOf } from '../inputs/list.ts';
import { GRADES, inputSigma } from '../inputs/sigma.ts';
import { inputValue, withInput } from '../inputs/value.ts';
import type { Model } from '../model/model.ts';
import type { Unknown } from './unknowns.ts';

export interface FitInput extends Unknown {
  readonly input: Input;
  /** Where its ± comes from: stated in the model, assumed of a stated angle, or of one that nobody stated. */
  readonly source: 'stated' | 'assumed' | 'open';
}

/**
 * ± of the design pose's camber and toe where the model states none, degrees. A stated angle was read with something: the
 * tape grade. One that the file leaves out was not read at all, and its 0 is only usual. Common practice, no source.
 */
export const ASSUMED_ANGLE: number = GRADES[0]!.degree;
export const OPEN_ANGLE = 1;

const ANGLES: Readonly<Record<string, 'camber' | 'toe'>> = {
  'hub.camber': 'camber',
  'hub.toe': 'toe',
};

function sourced(model: Model, input: Input): Pick<FitInput, 'plusMinus' | 'source'> | null {
  const stated = inputSigma(model, input);
  if (stated !== null) return stated > 0 ? { plusMinus: stated, source: 'stated' } : null;
  const angle = ANGLES[input.key];
  if (angle === undefined) return null;
  return model.hub[angle] === undefined
    ? { plusMinus: OPEN_ANGLE, source: 'open' }
    : { plusMinus: ASSUMED_ANGLE, source: 'assumed' };
}

/** The inputs of a model that a fit may move, in the format's order. */
export function fitInputs(model: Model): readonly FitInput[] {
  return inputsOf(model).flatMap((input): FitInput[] => {
    const found = input.isMeasured ? sourced(model, input) : null;
    if (found === null) return [];
    return [
      {
        ...found,
        input,
        get: (of) => inputValue(of, input),
        with: (of, value) => withInput(of, input, value),
      },
    ];
  });
}

/** Whether the model states a ± for any coordinate: without one a fit could move no point. */
export function statesPlusMinus(model: Model): boolean {
  return fitInputs(model).some(({ input }) => input.component !== null);
}
