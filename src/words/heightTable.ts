/** A table of heights and what was read at them, as it is copied from a sheet or typed: one line a height. */

import { type Entered, enteredAngle, enteredLength } from './entry.ts';
import type { LengthUnit } from './lengthUnit.ts';

/** One line that could be read: its numbers as texts, height first. */
export interface HeightLine {
  readonly height: string;
  readonly value: string;
  readonly plusMinus: string | null;
}

export interface HeightTable {
  readonly lines: readonly HeightLine[];
  /** Lines that could not be read, as they were, each with the reason. */
  readonly bad: readonly { readonly line: string; readonly why: string }[];
}

/** A unit stays with its number, and a fraction with its whole. */
function glued(line: string): string {
  return line
    .replace(/(\d)[ \u00a0]+(mm|cm|m|in|inch|inches|ft|deg|°|"|″|'|′)(?![a-z])/gi, '$1$2')
    .replace(/°[ \u00a0]+(\d+ ?['′])/g, '°$1')
    .replace(/(\d)[ \u00a0]+(\d+\/\d)/g, '$1-$2')
    .replace(/±/g, ' ')
    .trim();
}

/** Cells of a line, parted by tabs or semicolons, else by blanks, else by commas that are no decimal marks. */
function cellsOf(line: string): readonly string[] {
  const text = glued(line);
  const part = /[\t;]/.test(text) ? /[\t;]/ : /\s/.test(text) ? /,?\s+/ : /,/;
  return text
    .split(part)
    .map((cell) => cell.trim())
    .filter((cell) => cell !== '');
}

function readLine(line: string, unit: LengthUnit, isLength: boolean): HeightLine | string {
  const [height, value, plusMinus = null, ...more] = cellsOf(line);
  if (height === undefined || value === undefined) {
    return 'Found one number, wanted two: the height, then what was read there.';
  }
  if (more.length > 0) {
    return `Found ${3 + more.length} numbers, wanted two or three: height, reading, and its ±.`;
  }
  const amount = (text: string): Entered =>
    isLength ? enteredLength(text, unit) : enteredAngle(text);
  const entered = [enteredLength(height, unit), amount(value)];
  if (plusMinus !== null) entered.push(amount(plusMinus));
  const wrong = entered.find((one) => !one.ok);
  return wrong === undefined || wrong.ok ? { height, value, plusMinus } : wrong.why;
}

/** Reads all lines; a first line without any digit is taken for a heading. `isLength`: what was read is a length, not an angle. */
export function readHeightTable(text: string, unit: LengthUnit, isLength: boolean): HeightTable {
  const all = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  const lines = all[0] !== undefined && !/\d/.test(all[0]) ? all.slice(1) : all;
  const read = lines.map((line) => ({ line, found: readLine(line, unit, isLength) }));
  return {
    lines: read.flatMap(({ found }) => (typeof found === 'string' ? [] : [found])),
    bad: read.flatMap(({ line, found }) =>
      typeof found === 'string' ? [{ line, why: found }] : [],
    ),
  };
}
