/** Numbers as people type them: with a comma or a true minus, as a fraction, with their unit behind. */
import { MM_PER_INCH } from '../../solver/units.ts';
import type { LengthUnit } from '../state/view.ts';

export type Entered =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly why: string };

const FORM =
  /^([+-]?)(?:(\d+)[ -])?(?:(\d+)\/(\d+)|(\d*[.,]?\d*(?:e[+-]?\d+)?)) ?(mm|in|inch|inches|"|″|°|deg|%)?$/i;

/** A comma before exactly three digits may stand for either mark. */
const AMBIGUOUS = /^[+-]?\d{1,3},\d{3}(?!\d)/;

interface Parts {
  readonly value: number;
  readonly unit: string;
}

function parts(text: string): Parts | null {
  const found = FORM.exec(text);
  if (found === null) return null;
  const [, sign, whole, top, bottom, decimal, unit] = found;
  const fraction = top === undefined ? 0 : Number(top) / Number(bottom);
  const plain = decimal === undefined ? 0 : Number(decimal.replace(',', '.'));
  const isEmpty = top === undefined && !/\d/.test(decimal ?? '');
  // "3 1" is a whole number and no fraction: two numbers.
  const isTwo = whole !== undefined && top === undefined;
  if (isEmpty || isTwo) return null;
  const size = Number(whole ?? 0) + fraction + plain;
  if (!Number.isFinite(size)) return null;
  return { value: sign === '-' ? -size : size, unit: (unit ?? '').toLowerCase() };
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
