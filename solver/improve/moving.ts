/** Movers as numbers of a search: a model with the inputs of each moved together. */
import type { Input } from '../inputs/input.ts';
import { inputOf } from '../inputs/list.ts';
import { applyInputs, inputValue } from '../inputs/value.ts';
import type { Model } from '../model/model.ts';
import type { Mover } from './plan.ts';

export interface Moving {
  readonly movers: readonly Mover[];
  /** The inputs of each mover, the first one leading. */
  readonly inputs: readonly (readonly Input[])[];
  readonly present: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** The movers as the model has them; those whose inputs it lacks are left out. */
export function movingOf(model: Model, movers: readonly Mover[]): Moving {
  const known = movers.filter(
    ({ inputs }) => inputs.length > 0 && inputs.every((key) => inputOf(model, key) !== undefined),
  );
  const inputs = known.map((mover) => mover.inputs.map((key) => inputOf(model, key)!));
  return {
    movers: known,
    inputs,
    present: inputs.map(([lead]) => inputValue(model, lead!)),
    low: known.map(({ from, to }) => Math.min(from, to)),
    high: known.map(({ from, to }) => Math.max(from, to)),
  };
}

/** The model with every mover's lead at a value, those that go with it as far from where they were. */
export function movedModel(model: Model, moving: Moving, x: readonly number[]): Model {
  const inputs: Input[] = [];
  const values: number[] = [];
  moving.inputs.forEach((group, i) => {
    const by = x[i]! - moving.present[i]!;
    for (const input of group) {
      inputs.push(input);
      // The lead's own value is written as it is: a sum would leave dust in it.
      values.push(input === group[0] ? x[i]! : Number((inputValue(model, input) + by).toFixed(6)));
    }
  });
  return applyInputs(model, inputs, values);
}
