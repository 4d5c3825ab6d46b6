/** Leaving pairs unwatched that touch by design, and watching them again: an edit of the model like any other. */
import type { Model } from '../../../solver/index.ts';
import { partNames, splitPair } from '../../../solver/model/sound/names.ts';

type Pair = readonly [string, string];

function isSame(model: Model, key: string, [a, b]: Pair): boolean {
  const pair = splitPair(key, new Set(partNames(model)));
  return pair?.includes(a) === true && pair.includes(b);
}

export function withoutPair(model: Model, pair: Pair): Model {
  return { ...model, unwatched: [...(model.unwatched ?? []), pair.join('/')] };
}

export function withPair(model: Model, pair: Pair): Model {
  const rest = (model.unwatched ?? []).filter((key) => !isSame(model, key, pair));
  const { unwatched: _, ...others } = model;
  return rest.length === 0 ? others : { ...model, unwatched: rest };
}
