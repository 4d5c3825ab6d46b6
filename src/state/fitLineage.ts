/** Which points of a design a fit has moved, and where they were measured: so that no reading is ever counted twice. */
import {
  applyInputs,
  type Input,
  inputOf,
  inputsOf,
  inputValue,
  type Model,
} from '../../solver/index.ts';

/** One input that was fitted: its key, what was measured, what the fit made of it. */
export interface FittedInput {
  readonly key: string;
  readonly measured: number;
  readonly fitted: number;
}

const SAME = 1e-9;

/** Most inputs that are remembered: some dozen fits of a whole corner. */
const MOST = 600;

/** Adds to a lineage what a fit moved from `measured` to `fitted`. */
export function withFit(
  lineage: readonly FittedInput[],
  measured: Model,
  fitted: Model,
): readonly FittedInput[] {
  const moved = inputsOf(measured).flatMap((input): FittedInput[] => {
    const [was, is] = [inputValue(measured, input), inputValue(fitted, input)];
    return was === is ? [] : [{ key: input.key, measured: was, fitted: is }];
  });
  return [...lineage, ...moved].slice(-MOST);
}

/** The design with every input that still stands where a fit put it back where it was measured, and how many those are. */
export function asMeasured(
  model: Model,
  lineage: readonly FittedInput[],
): { readonly model: Model; readonly count: number } {
  const back = new Map<Input, number>();
  for (const { key, measured, fitted } of lineage) {
    const input = inputOf(model, key);
    if (input !== undefined && Math.abs(inputValue(model, input) - fitted) <= SAME) {
      back.set(input, measured);
    }
  }
  if (back.size === 0) return { model, count: 0 };
  return { model: applyInputs(model, [...back.keys()], [...back.values()]), count: back.size };
}
