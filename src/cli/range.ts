/** Numbers and ranges as they are typed: travel and rack in mm, angles in degrees. */
import { LARGEST_NUMBER, quoted } from '../../solver/index.ts';
import { BadInput } from './refusal.ts';

/** Most values of one range, and most poses of a sweep. */
export const MOST_POSES = 1_000_000;

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/** A number as typed (-12, +3, 1e1); undefined when it is none or not below 1e5 in size. */
function toNumber(text: string): number | undefined {
  const value = Number(text);
  return NUMBER.test(text) && Math.abs(value) < LARGEST_NUMBER ? value + 0 : undefined;
}

/** The number of mm an option holds; `where` begins the message when it is none. */
export function parseMillimetres(text: string, where: string): number {
  const value = toNumber(text);
  if (value === undefined) {
    throw new BadInput(
      `${where}: found ${quoted(text)}, wanted a number of mm smaller than 1e5 in size`,
    );
  }
  return value;
}

/** Steps this close to a whole number, in steps, are whole: decimal steps are not exact in binary. */
const WHOLE = 1e-9;

/** The number of degrees an option holds; `where` begins the message when it is none. */
export function parseDegrees(text: string, where: string): number {
  const value = toNumber(text);
  if (value === undefined) {
    throw new BadInput(
      `${where}: found ${quoted(text)}, wanted a number of degrees smaller than 1e5 in size`,
    );
  }
  return value;
}

/**
 * From `from` to `to` in steps of `step` > 0, in either direction, both ends included: the last value is `to` exactly, after a shorter
 * step where `step` does not divide the range. Undefined when there would be more than MOST_POSES.
 */
export function stepped(from: number, to: number, step: number): readonly number[] | undefined {
  const steps = Math.abs(to - from) / step;
  if (!(steps < MOST_POSES)) return undefined;
  const direction = Math.sign(to - from);
  const values: number[] = [];
  for (let index = 0; index < steps - WHOLE; index += 1) {
    // Rounded to a millionth of a micrometre, so that steps of 0.1 read as they were meant.
    values.push(Math.round((from + direction * index * step) * 1e9) / 1e9 + 0);
  }
  values.push(to);
  return values;
}

/** The values of a range "A:B:STEP", or of a single number. The step's sign is ignored. */
export function parseRange(text: string, where: string): readonly number[] {
  const parts = text.split(':').map(toNumber);
  const [from, to, step] = parts;
  if (parts.includes(undefined) || from === undefined || parts.length === 2 || parts.length > 3) {
    throw new BadInput(`${where}: found ${quoted(text)}, wanted A:B:STEP or one number (mm)`);
  }
  if (to === undefined || step === undefined || from === to) return [from];
  if (step === 0)
    throw new BadInput(`${where}: found a step of 0, wanted a step that is not 0 (mm)`);
  const values = stepped(from, to, Math.abs(step));
  if (!values) {
    throw new BadInput(`${where}: found more than 1000000 steps, wanted a longer step (mm)`);
  }
  return values;
}
