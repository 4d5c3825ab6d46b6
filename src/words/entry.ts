/** Numbers as people type them: with a comma or a true minus, as a fraction, with their unit behind. */
import { MM_PER_INCH } from '../../solver/units.ts';
import type { LengthUnit } from '../state/view.ts';

export type Entered =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly why: string };

const UNIT = `(?: ?(mm|in|inch|inches|"|″|°|deg|%))?`;
const FRACTION = new RegExp(String.raw`^([+-]?)(?:(\d+)[ -])?(\d+)/(\d+)${UNIT}$`, 'i');
const DECIMAL = new RegExp(String.raw`^([+-]?(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?)${UNIT}$`, 'i');

/** A comma before exactly three digits may stand for either mark. */
const AMBIGUOUS = /^[+-]?\d{1,3},\d{3}(?!\d)/;

interface Parts {
  readonly value: number;
  readonly unit: string;
}

function fraction(text: string): Parts | null {
  const found = FRACTION.exec(text);
  if (found === null) return null;
  const [, sign, whole = '0', top, bottom, unit = ''] = found;
  const size = Number(whole) + Number(top) / Number(bottom);
  return { value: sign === '-' ? -size : size, unit: unit.toLowerCase() };
}

function decimal(text: string): Parts | null {
  const found = DECIMAL.exec(text);
  if (found === null) return null;
  const [, number = '', unit = ''] = found;
  return { value: Number(number.replace(',', '.')), unit: unit.toLowerCase() };
}

function parts(text: string): Parts | null {
  const found = fraction(text) ?? decimal(text);
  return found !== null && Number.isFinite(found.value) ? found : null;
}

function read(text: string): Parts | string {
  const tidy = text.replace(/[−–]/g, '-').replace(/\s+/g, ' ').trim();
  if (tidy === '') return 'Write a number.';
  if (AMBIGUOUS.test(tidy)) {
    const [point, none] = [tidy.replace(',', '.'), tidy.replace(',', '')];
    return `Write ${point} or ${none}: a comma before three digits can be read both ways.`;
  }
  return parts(tidy) ?? `“${text.trim()}” is not a number.`;
}

/** A typed number, as it stands; a unit behind it is let pass. */
export function enteredNumber(text: string): Entered {
  const found = read(text);
  return typeof found === 'string' ? { ok: false, why: found } : { ok: true, value: found.value };
}

/** A typed length in mm. Without a unit of its own it is in the unit shown. */
export function enteredLength(text: string, unit: LengthUnit): Entered {
  const found = read(text);
  if (typeof found === 'string') return { ok: false, why: found };
  if (found.unit === '°' || found.unit === 'deg' || found.unit === '%') {
    return { ok: false, why: `“${text.trim()}” is not a length.` };
  }
  const isInch = found.unit === '' ? unit !== 'mm' : found.unit !== 'mm';
  // Inches to mm leave noise in the last digits that nobody typed.
  const mm = isInch ? Math.round(found.value * MM_PER_INCH * 1e6) / 1e6 : found.value;
  return { ok: true, value: mm };
}
