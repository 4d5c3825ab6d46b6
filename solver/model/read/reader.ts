/** The pieces the model's tables are made of: each checks one kind of value and hands back a clean copy of it. */
import { described, itemPath, keyPath, Refusal, WHOLE_FILE } from './failure.ts';
import { nearestKey } from './nearest.ts';

/** Reads one value; throws a Refusal naming `path` when it is not what `wanted` says. */
export interface Reader<T> {
  readonly wanted: string;
  readonly read: (value: unknown, path: string) => T;
  /** For an object: its keys in the order of the format's table. */
  readonly fields?: Readonly<Record<string, Field<unknown>>>;
  /** For a list: its items. */
  readonly items?: Reader<unknown>;
  /** For a point in space, as against a direction or a pair of numbers. */
  readonly isPoint?: boolean;
}

interface Field<T> {
  readonly reader: Reader<T>;
  readonly isRequired: boolean;
}

type RequiredField<T> = Field<T> & { readonly isRequired: true };
type OptionalField<T> = Field<T> & { readonly isRequired: false };

/** One field a key: the compiler refuses a table that misses a key, adds one, or has one optional that is not. */
export type Fields<T> = {
  readonly [K in keyof T]-?: Partial<Pick<T, K>> extends Pick<T, K>
    ? OptionalField<Exclude<T[K], undefined>>
    : RequiredField<T[K]>;
};

export function required<T>(reader: Reader<T>): RequiredField<T> {
  return { reader, isRequired: true };
}

export function optional<T>(reader: Reader<T>): OptionalField<T> {
  return { reader, isRequired: false };
}

export function refuse(path: string, found: string, wanted: string): never {
  throw new Refusal(path === '' ? WHOLE_FILE : path, found, wanted);
}

export function refuseValue(path: string, value: unknown, wanted: string): never {
  return refuse(path, described(value), wanted);
}

/** The value as an object with keys; lists and null are none. */
export function keyed(
  value: unknown,
  path: string,
  wanted: string,
): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refuseValue(path, value, wanted);
  }
  return value as Record<string, unknown>;
}

/** The value of an object's own key: what a prototype holds is not in the file. */
export function own(object: Readonly<Record<string, unknown>>, key: string): unknown {
  return Object.hasOwn(object, key) ? object[key] : undefined;
}

/** Refuses the first key that is not known, naming the one it may have been meant to be. */
export function refuseUnknownKeys(
  object: Readonly<Record<string, unknown>>,
  path: string,
  known: readonly string[],
): void {
  for (const key of Object.keys(object)) {
    if (known.includes(key)) continue;
    const meant = nearestKey(key, known);
    const question = meant === undefined ? '' : `; did you mean "${meant}"?`;
    refuse(keyPath(path, key), 'an unknown key', `one of ${known.join(', ')}${question}`);
  }
}

/** An object of a fixed set of keys: unknown keys, then missing ones, then each value in the table's order. */
export function object<T>(wanted: string, fields: Fields<T>): Reader<T> {
  const table = Object.entries(fields) as [string, Field<unknown>][];
  const known = table.map(([key]) => key);
  const read = (value: unknown, path: string): T => {
    const given = keyed(value, path, wanted);
    refuseUnknownKeys(given, path, known);
    for (const [key, { reader, isRequired }] of table) {
      if (isRequired && own(given, key) === undefined) {
        refuse(keyPath(path, key), 'nothing', reader.wanted);
      }
    }
    const clean: Record<string, unknown> = {};
    for (const [key, { reader }] of table) {
      const item = own(given, key);
      if (item !== undefined) clean[key] = reader.read(item, keyPath(path, key));
    }
    return clean as T;
  };
  return { wanted, read, fields };
}

/** A list of any length of at least `least`. */
export function list<T>(wanted: string, items: Reader<T>, least = 0): Reader<readonly T[]> {
  const read = (value: unknown, path: string): readonly T[] => {
    if (!Array.isArray(value) || value.length < least) return refuseValue(path, value, wanted);
    return Array.from(value, (item, index) => items.read(item, itemPath(path, index)));
  };
  return { wanted, read, items };
}

/** A list of exactly two items of one kind. */
export function pair<T>(wanted: string, items: Reader<T>): Reader<readonly [T, T]> {
  const read = (value: unknown, path: string): readonly [T, T] => {
    if (!Array.isArray(value) || value.length !== 2) return refuseValue(path, value, wanted);
    return [items.read(value[0], `${path}[0]`), items.read(value[1], `${path}[1]`)];
  };
  return { wanted, read, items };
}
