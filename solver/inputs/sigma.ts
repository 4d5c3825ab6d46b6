/** Standard uncertainties of the inputs, as the model states them. */
import type { Model } from '../model/model.ts';
import { plainPath } from '../model/sound/names.ts';
import type { Input } from './input.ts';

/** How points are measured: one standard uncertainty of a coordinate (mm), of an angle read (degrees). */
export interface Grade {
  readonly name: 'tape' | 'plumbBob' | 'bench';
  readonly label: string;
  readonly mm: number;
  readonly degree: number;
}

/** Common practice, no source: offered where a model states nothing, never taken silently. */
export const GRADES: readonly Grade[] = [
  { name: 'tape', label: 'tape and level, to hidden centres', mm: 2.5, degree: 0.25 },
  { name: 'plumbBob', label: 'plumb bob on the floor', mm: 1.5, degree: 0.1 },
  { name: 'bench', label: 'on the bench', mm: 0.75, degree: 0.05 },
];

const _stated = new WeakMap<object, ReadonlyMap<string, number>>();

function statedIn(tolerance: Readonly<Record<string, number>>): ReadonlyMap<string, number> {
  let stated = _stated.get(tolerance);
  if (stated === undefined) {
    stated = new Map(Object.entries(tolerance).map(([key, value]) => [plainPath(key), value]));
    _stated.set(tolerance, stated);
  }
  return stated;
}

/**
 * Standard uncertainty of an input in its unit: the one stated for the coordinate, else for its point, else, for a
 * coordinate, `tolerance.default`. null where nothing is stated: the input is then taken as exact, which is to be said.
 */
export function inputSigma({ tolerance }: Model, { key, path, component }: Input): number | null {
  if (tolerance === undefined) return null;
  const stated = statedIn(tolerance);
  const own = stated.get(key) ?? stated.get(path);
  if (own !== undefined) return own;
  return component === null ? null : (stated.get('default') ?? null);
}

/** Standard uncertainties of many inputs, in their order; 0 where none is stated. */
export function inputSigmas(model: Model, inputs: readonly Input[]): Float64Array {
  return Float64Array.from(inputs, (input) => inputSigma(model, input) ?? 0);
}

/** A model that states a grade's uncertainties for its coordinates and for the angles of its hub; what it stated of its own stays. */
export function withGrade(model: Model, grade: Grade): Model {
  return {
    ...model,
    tolerance: {
      default: grade.mm,
      'hub.camber': grade.degree,
      'hub.toe': grade.degree,
      ...model.tolerance,
    },
  };
}
