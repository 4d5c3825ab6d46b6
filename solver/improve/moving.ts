/** Movers as numbers of a search: a model with the dimensions of each moved together. */
import type { Input } from '../inputs/input.ts';
import { applyInputs } from '../inputs/value.ts';
import type { Model } from '../model/model.ts';
import { type Dimension, dimensionOf, dimensionValue, withDimension } from './dimension.ts';
import type { Mover } from './plan.ts';

export interface Moving {
  readonly movers: readonly Mover[];
  /** The dimensions of each mover, the first one leading. */
  readonly dimensions: readonly (readonly Dimension[])[];
  readonly present: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** The movers as the model has them; those whose dimensions it lacks are left out. */
export function movingOf(model: Model, movers: readonly Mover[]): Moving {
  const of = ({ inputs }: Mover) => inputs.flatMap((key) => dimensionOf(model, key) ?? []);
  const known = movers.filter(
    (mover) => mover.inputs.length > 0 && of(mover).length === mover.inputs.length,
  );
  const dimensions = known.map(of);
  return {
    movers: known,
    dimensions,
    present: dimensions.map(([lead]) => dimensionValue(model, lead!)),
    low: known.map(({ from, to }) => Math.min(from, to)),
    high: known.map(({ from, to }) => Math.max(from, to)),
  };
}

/**
 * The model with every mover's lead at a value, those that go with it as far from where they were. Points first: an arm's
 * length is then counted from where its pivots are.
 */
export function movedModel(model: Model, moving: Moving, x: readonly number[]): Model {
  const inputs: Input[] = [];
  const values: number[] = [];
  const lengths: (readonly [Dimension, number])[] = [];
  moving.dimensions.forEach((group, i) => {
    const by = x[i]! - moving.present[i]!;
    group.forEach((dimension, place) => {
      // The lead's own value is written as it is: a sum would leave dust in it.
      const value =
        place === 0 ? x[i]! : Number((dimensionValue(model, dimension) + by).toFixed(6));
      if (dimension.input === null) lengths.push([dimension, value]);
      else {
        inputs.push(dimension.input);
        values.push(value);
      }
    });
  });
  const points = applyInputs(model, inputs, values);
  return lengths.reduce((now, [dimension, value]) => withDimension(now, dimension, value), points);
}
