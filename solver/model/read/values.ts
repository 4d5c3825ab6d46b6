/** Readers of single values: text, numbers of a range, points, directions, sections. */
import type { SectionPoint, Vector3 } from '../model.ts';
import { list, type Reader, refuse, refuseValue } from './reader.ts';

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

const turn: Reader<number> = between(-360, 360, 'degrees');

/** Turns about the axes x, y and z. */
export const turns: Reader<Vector3> = {
  wanted: 'three turns [about x, about y, about z], each from -360 to 360 (degrees)',
  read: (value, path) => {
    const given = triple(value, path, turns.wanted);
    given.forEach((angle, axis) => {
      turn.read(angle, `${path}[${axis}]`);
    });
    return given;
  },
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
