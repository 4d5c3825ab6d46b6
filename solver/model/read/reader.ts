/** The pieces the model's tables are made of: each checks one kind of value and hands back a clean copy of it. */
import type { SectionPoint, Vector3 } from '../model.ts';
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

export const text: Reader<string> = {
  wanted: 'text',
  read: (value, path) => (typeof value === 'string' ? value : refuseValue(path, value, 'text')),
};

/** One of a few words. */
export function word<T extends string>(...words: readonly T[]): Reader<T> {
  const wanted = words.map((each) => `"${each}"`).join(' or ');
  return {
    wanted,
    read: (value, path) => words.find((each) => each === value) ?? refuseValue(path, value, wanted),
  };
}

/** Size below which every number of a file must lie. */
export const LARGEST_NUMBER = 1e5;

/** A finite number smaller than 1e5 in size for which `holds`. Minus zero reads as zero. */
export function number(wanted: string, holds: (value: number) => boolean): Reader<number> {
  const read = (value: unknown, path: string): number => {
    if (typeof value !== 'number' || !(Math.abs(value) < LARGEST_NUMBER) || !holds(value)) {
      return refuseValue(path, value, wanted);
    }
    return value + 0;
  };
  return { wanted, read };
}

export const anyNumber: Reader<number> = number('a number smaller than 1e5 in size', () => true);

/** A number above 0, of the unit named. */
export function positive(unit: string): Reader<number> {
  return number(`a number above 0 and below 1e5 (${unit})`, (value) => value > 0);
}

/** A number of at least 0, of the unit named. */
export function notNegative(unit: string): Reader<number> {
  return number(`a number of at least 0 and below 1e5 (${unit})`, (value) => value >= 0);
}

/** A number between two ends, both allowed. */
export function between(least: number, most: number, unit?: string): Reader<number> {
  const wanted = `a number from ${least} to ${most}${unit === undefined ? '' : ` (${unit})`}`;
  return number(wanted, (value) => value >= least && value <= most);
}

/** Half-angle of a joint's cone. */
export const limitAngle: Reader<number> = number(
  'a number above 0 and at most 90 (degrees)',
  (value) => value > 0 && value <= 90,
);

function triple(value: unknown, path: string, wanted: string): Vector3 {
  if (!Array.isArray(value) || value.length !== 3) return refuseValue(path, value, wanted);
  return [
    anyNumber.read(value[0], `${path}[0]`),
    anyNumber.read(value[1], `${path}[1]`),
    anyNumber.read(value[2], `${path}[2]`),
  ];
}

export const point: Reader<Vector3> = {
  wanted: 'a point [x, y, z] (mm)',
  read: (value, path) => triple(value, path, point.wanted),
  isPoint: true,
};

/** Shortest direction taken as one: its components may be of any scale, but must survive being divided by its length. */
const SHORTEST_DIRECTION = 1e-9;

export const direction: Reader<Vector3> = {
  wanted: 'a direction [x, y, z]',
  read: (value, path) => {
    const vector = triple(value, path, direction.wanted);
    if (Math.hypot(...vector) < SHORTEST_DIRECTION) {
      refuse(path, shown(vector), 'a direction that is not zero');
    }
    return vector;
  },
};

/** A list of numbers as a message shows it. */
export function shown(numbers: readonly number[]): string {
  return `[${numbers.join(', ')}]`;
}

const sectionPoint: Reader<SectionPoint> = {
  wanted: 'a section point [s, ρ] (mm)',
  read: (value, path) => {
    if (!Array.isArray(value) || value.length !== 2) {
      return refuseValue(path, value, sectionPoint.wanted);
    }
    const radius = notNegative('mm, a radius');
    return [anyNumber.read(value[0], `${path}[0]`), radius.read(value[1], `${path}[1]`)];
  },
};

export const section: Reader<readonly SectionPoint[]> = list(
  'a list of at least 2 section points [s, ρ] (mm)',
  sectionPoint,
  2,
);
