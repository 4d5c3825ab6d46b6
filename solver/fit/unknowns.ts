/** What a fit may move: the measured inputs of a model, each counted in its own ± from where it was measured. */
import type { Model } from '../model/model.ts';
import type { Steps } from '../stops/steps.ts';

/** A measured number of a model that has a ±. */
export interface Unknown {
  get(model: Model): number;
  with(model: Model, value: number): Model;
  /** One standard uncertainty, above 0, in the input's unit. */
  readonly plusMinus: number;
}

/** The unknowns x = (value − measured) / ±, all 0 at the model as measured. */
export interface Unknowns {
  readonly measured: Model;
  readonly inputs: readonly Unknown[];
  readonly start: Float64Array;
}

export function unknownsOf(measured: Model, inputs: readonly Unknown[]): Unknowns {
  return { measured, inputs, start: Float64Array.from(inputs, (input) => input.get(measured)) };
}

/** Half a nanometre, or as much of a degree: less than anything is measured to, more than rounding leaves. */
const GRAIN = 1e6;

function rounded(value: number): number {
  return Math.round(value * GRAIN) / GRAIN;
}

/** The model with its unknowns at x; those at 0 stay as they were written. With `isRounded` to a millionth, for files. */
export function modelAt(unknowns: Unknowns, x: Float64Array, isRounded = false): Model {
  const { measured, inputs, start } = unknowns;
  return inputs.reduce((model, input, i) => {
    if (x[i] === 0) return model;
    const value = start[i]! + x[i]! * input.plusMinus;
    return input.with(model, isRounded ? rounded(value) : value);
  }, measured);
}

/** Numbers that are read off a model; `into` answers whether every one of them is there. */
export interface Reader {
  readonly size: number;
  into(model: Model, out: Float64Array): boolean;
}

/** How far an input is moved to either side for its derivative, mm or degrees: small beside any part, large beside rounding. */
const REACH = 0.05;

/**
 * Writes d(read)/dx, `reader.size` rows by `inputs.length` columns, at x, by central differences of exactly solved
 * models (truncation below 1e-6 of the value for parts of usual size); one-sided where a side is out of reach.
 * Answers false where both sides of an input are.
 */
export function* slopesInSteps(
  unknowns: Unknowns,
  x: Float64Array,
  reader: Reader,
  out: Float64Array,
): Steps<boolean> {
  const { inputs, start } = unknowns;
  const columns = inputs.length;
  const model = modelAt(unknowns, x);
  const here = new Float64Array(reader.size);
  const ahead = new Float64Array(reader.size);
  const behind = new Float64Array(reader.size);
  if (!reader.into(model, here)) return false;
  for (let i = 0; i < columns; i += 1) {
    const input = inputs[i]!;
    const value = start[i]! + x[i]! * input.plusMinus;
    const isAhead = reader.into(input.with(model, value + REACH), ahead);
    const isBehind = reader.into(input.with(model, value - REACH), behind);
    if (!isAhead && !isBehind) return false;
    const [high, low] = [isAhead ? ahead : here, isBehind ? behind : here];
    const run = (isAhead ? REACH : 0) + (isBehind ? REACH : 0);
    for (let row = 0; row < reader.size; row += 1) {
      out[row * columns + i] = ((high[row]! - low[row]!) / run) * input.plusMinus;
    }
    yield (i + 1) / columns;
  }
  return true;
}
