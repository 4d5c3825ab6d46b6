/** An optional part or number of a model, and the ways one is made. */
import type { Model } from '../../../solver/index.ts';
import { valueAt, withoutValue, withValue } from './place.ts';

/** Something a section can gain or lose. Either is null when there is nothing to gain, or to lose. */
export interface Part {
  /** As it reads after "Add" and "Remove": "front cam". */
  readonly name: string;
  readonly add: ((model: Model) => Model) | null;
  readonly remove: ((model: Model) => Model) | null;
}

export type PartMaker = (model: Model) => Part | null;

/** A part or number at a path, present or not. */
export function single(path: string, name: string, add: (model: Model) => Model): PartMaker {
  return (model) =>
    valueAt(model, path) === undefined
      ? { name, add, remove: null }
      : { name, add: null, remove: (now) => withoutValue(now, path) };
}

/** A number with a starting value. */
export function number(
  path: string,
  name: string,
  value: number | ((model: Model) => number),
): PartMaker {
  return single(path, name, (model) =>
    withValue(model, path, typeof value === 'number' ? value : value(model)),
  );
}

/** A list that grows and shrinks at its end. */
export function listed(path: string, name: string, add: (model: Model) => Model): PartMaker {
  return (model) => {
    const list = valueAt(model, path);
    const count = Array.isArray(list) ? list.length : 0;
    const last = `${path}.${count - 1}`;
    return { name, add, remove: count === 0 ? null : (now) => withoutValue(now, last) };
  };
}

/** A number or part that exists only inside another. */
export function inside(part: string, maker: PartMaker): PartMaker {
  return (model) => (valueAt(model, part) === undefined ? null : maker(model));
}

export function axis(path: string, name: string, value: readonly number[]): PartMaker {
  return single(path, name, (model) => withValue(model, path, [...value]));
}
