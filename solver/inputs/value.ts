/** Reading inputs out of a model and making models with other values, quickly: only what is on the way is copied. */
import { hubAngle, wheelSpacer } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { loadedRadius } from '../model/tyre.ts';
import type { Input } from './input.ts';

/** Numbers the file may leave out. */
const DEFAULTS: Readonly<Record<string, (model: Model) => number>> = {
  'hub.camber': ({ hub }) => hubAngle(hub.camber),
  'hub.toe': ({ hub }) => hubAngle(hub.toe),
  'wheel.spacer': ({ wheel }) => wheelSpacer(wheel),
  'tyre.loadedRadius': ({ tyre, wheel }) => loadedRadius(tyre, wheel),
};

type Holder = Record<string, unknown>;

const _keys = new Map<string, readonly string[]>();

/** The keys on the way to an input; all but the last lead to what holds it. */
function keysOf({ path, component }: Input): readonly string[] {
  const name = component === null ? path : `${path}.${component}`;
  let keys = _keys.get(name);
  if (keys === undefined) {
    keys = name.split('.');
    _keys.set(name, keys);
  }
  return keys;
}

/** Value of an input, in its unit, defaults included. Throws for an input the model does not have. */
export function inputValue(model: Model, input: Input): number {
  const found = keysOf(input).reduce<unknown>(
    (part, key) => (part as Holder | undefined)?.[key],
    model,
  );
  if (typeof found === 'number') return found;
  const value = DEFAULTS[input.path]?.(model);
  if (value === undefined) throw new Error(`The model has no input ${input.key}.`);
  return value;
}

/** Values of many inputs, in their order. */
export function inputValues(model: Model, inputs: readonly Input[]): Float64Array {
  return Float64Array.from(inputs, (input) => inputValue(model, input));
}

/**
 * A model with the inputs at other values (same order); parts that do not change are shared with `model`. Whether the
 * result is sound is for `readModel` to say where the change may be large.
 */
export function applyInputs(
  model: Model,
  inputs: readonly Input[],
  values: ArrayLike<number>,
): Model {
  const fresh = new Set<unknown>();
  const root = { ...model } as unknown as Holder;
  inputs.forEach((input, index) => {
    const keys = keysOf(input);
    let holder = root;
    for (let i = 0; i < keys.length - 1; i += 1) {
      const key = keys[i]!;
      let inner = holder[key] as Holder;
      if (!fresh.has(inner)) {
        inner = (Array.isArray(inner) ? inner.slice() : { ...inner }) as unknown as Holder;
        fresh.add(inner);
        holder[key] = inner;
      }
      holder = inner;
    }
    holder[keys[keys.length - 1]!] = values[index]!;
  });
  return root as unknown as Model;
}

/** A model with one input at another value. */
export function withInput(model: Model, input: Input, value: number): Model {
  return applyInputs(model, [input], [value]);
}
