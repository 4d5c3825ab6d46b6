/** Values of a model by their path, keys and places joined by dots: "wheel.offset", "tieRod.bends.0". */
import type { Model } from '../../../solver/index.ts';
import { plainPath, splitPair } from '../../../solver/model/sound/names.ts';

function child(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Record<string, unknown>)[key]
    : undefined;
}

/** What stands at a path, or undefined. */
export function valueAt(model: Model, path: string): unknown {
  return path.split('.').reduce<unknown>(child, model);
}

function replaced(holder: unknown, keys: readonly string[], value: unknown): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  const inner = replaced(child(holder, key), rest, value);
  if (Array.isArray(holder)) {
    const list: unknown[] = [...holder];
    if (inner === undefined) list.splice(Number(key), 1);
    else list[Number(key)] = inner;
    return list;
  }
  const { [key]: _, ...others } = (holder ?? {}) as Record<string, unknown>;
  if (inner === undefined) return others;
  // The key keeps its place, so that a change of one number changes one line of the file.
  return child(holder, key) === undefined
    ? { ...others, [key]: inner }
    : { ...(holder as object), [key]: inner };
}

/** A model with `value` at a path; parts that are missing on the way are made. */
export function withValue(model: Model, path: string, value: unknown): Model {
  return replaced(model, path.split('.'), value) as Model;
}

function isWithin(path: string, part: string): boolean {
  return path === part || path.startsWith(`${part}.`);
}

/**
 * A model without what stands at a path, and without what speaks of it: tolerances of its points, and clearances wanted
 * of an obstacle by its name. A list whose last item goes goes too.
 */
export function withoutValue(model: Model, path: string): Model {
  const keys = path.split('.');
  const last = keys.at(-1) ?? '';
  const holder = valueAt(model, keys.slice(0, -1).join('.'));
  if (Array.isArray(holder) && holder.length === 1 && /^\d+$/.test(last)) {
    return withoutValue(model, keys.slice(0, -1).join('.'));
  }
  const gone = valueAt(model, path);
  const next = replaced(model, keys, undefined) as Model;
  const tolerance = Object.entries(next.tolerance ?? {}).filter(
    ([key]) => key === 'default' || !isWithin(plainPath(key), path),
  );
  const names = keys[0] === 'obstacles' ? namesIn(gone) : [];
  const required = Object.entries(next.required ?? {}).filter(
    ([key]) => !names.some((name) => mentions(key, name, model)),
  );
  return {
    ...next,
    ...(next.tolerance === undefined ? {} : { tolerance: Object.fromEntries(tolerance) }),
    ...(next.required === undefined ? {} : { required: Object.fromEntries(required) }),
  };
}

function namesIn(value: unknown): readonly string[] {
  const list: readonly unknown[] = Array.isArray(value) ? value : [value];
  return list.map((item) => child(item, 'name')).filter((name) => typeof name === 'string');
}

/** Whether a pair such as "tyre/frame rail" is one of an obstacle of this name. */
function mentions(key: string, name: string, model: Model): boolean {
  const all = new Set([...partsIn(key, name), ...namesIn(model.obstacles)]);
  return splitPair(key, all)?.includes(name) ?? false;
}

/** The other side of a pair, on whichever side the name stands. */
function partsIn(key: string, name: string): readonly string[] {
  if (key.startsWith(`${name}/`)) return [name, key.slice(name.length + 1)];
  if (key.endsWith(`/${name}`)) return [name, key.slice(0, -name.length - 1)];
  return [];
}
