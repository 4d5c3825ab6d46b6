/**
 * Numbers as people type them: fractions (14 3/8, 14-3/8", 3/16+2, 14⅜), feet and inches (1' 2 3/8), degrees and minutes
 * (1° 30'), a comma or a true minus, with their unit behind.
 */
import { MM_PER_INCH } from '../../solver/units.ts';
import type { LengthUnit } from './lengthUnit.ts';

export type Entered =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly why: string };

const FOOT = 12 * MM_PER_INCH;

type Kind = 'length' | 'angle' | 'number';

/** Size of each unit, mm or degrees. A plain number takes any: its field says what is meant. */
const UNITS: Record<Kind, readonly (readonly [RegExp, number])[]> = {
  length: [
    [/^mm\.?$/, 1],
    [/^cm$/, 10],
    [/^m$/, 1000],
    [/^(?:"|in\.?|inch|inches)$/, MM_PER_INCH],
    [/^(?:'|ft\.?|foot|feet)$/, FOOT],
  ],
  angle: [
    [/^(?:°|deg\.?|degrees?)$/, 1],
    [/^(?:'|min\.?|minutes?)$/, 1 / 60],
    [/^(?:"|sec\.?|seconds?)$/, 1 / 3600],
  ],
  number: [[/^(?:mm|in|inch|inches|"|°|deg|%)$/, 1]],
};

const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** A number with its unit: a fraction, which may follow its whole number, or a decimal. */
const TERM =
  /^(?:(?:(\d+)[ -])?(\d+)\/(\d+)|(\d+[.,]?\d*(?:e[+-]?\d+)?|[.,]\d+(?:e[+-]?\d+)?)) ?([a-z]+\.?|["'°%])?/;

/** A comma before exactly three digits may stand for either mark. */
const AMBIGUOUS = /^[+-]?\d{1,3},\d{3}(?!\d)/;
/** Both marks, each in its place: the first one only parts thousands. */
const THOUSANDS = /\d{1,3}(?:,\d{3})+(?=\.\d)|\d{1,3}(?:\.\d{3})+(?=,\d)/g;

interface Term {
  readonly value: number;
  /** Size of its unit; null where it has none. */
  readonly size: number | null;
}

function tidied(text: string): string {
  return text
    .toLowerCase()
    .replace(/[−–—]/g, '-')
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${FRACTIONS[sign]}`)
    .replace(/⁄/g, '/')
    .replace(/[″“”]|''|′′|’’/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(THOUSANDS, (whole) => whole.replace(/[.,]/g, ''))
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^([+-]) /, '$1');
}

function sizeOf(unit: string | undefined, kind: Kind): number | null | undefined {
  if (unit === undefined) return null;
  return UNITS[kind].find(([name]) => name.test(unit))?.[1];
}

/** The unit that may follow one without a plus: inches behind feet, minutes behind degrees, seconds behind minutes. */
function following(size: number, kind: Kind): number | null {
  if (kind === 'length') return size === FOOT ? MM_PER_INCH : null;
  return kind === 'angle' && size > 1 / 3600 ? size / 60 : null;
}

/** What joins the rest of an entry to its last term; null where nothing does. */
function joint(rest: string, { size }: Term, kind: Kind): string | null {
  const plus = /^ ?\+ ?/.exec(rest);
  if (plus !== null) return plus[0];
  const isLed = size !== null && following(size, kind) !== null;
  return isLed ? (/^ ?-?/.exec(rest)?.[0] ?? '') : null;
}

/** The first term of the rest; null where there is none. */
function termOf(rest: string, kind: Kind): (Term & { readonly length: number }) | null {
  const found = TERM.exec(rest);
  if (found === null) return null;
  const [all, whole = '0', top, bottom, decimal, unit] = found;
  const size = sizeOf(unit, kind);
  const value =
    decimal === undefined
      ? Number(whole) + Number(top) / Number(bottom)
      : Number(decimal.replace(',', '.'));
  return size === undefined || !Number.isFinite(value) ? null : { value, size, length: all.length };
}

/** The terms of an entry after its sign; null where something in it is no term. */
function termsOf(text: string, kind: Kind): readonly Term[] | null {
  const terms: Term[] = [];
  let rest = text;
  while (rest !== '') {
    const last = terms.at(-1);
    const join = last === undefined ? '' : joint(rest, last, kind);
    const term = join === null ? null : termOf(rest.slice(join.length), kind);
    if (join === null || term === null) return null;
    const isSmaller = (term.size ?? 0) < (last?.size ?? Number.POSITIVE_INFINITY);
    if (!isSmaller && !join.includes('+')) return null;
    terms.push(term);
    rest = rest.slice(join.length + term.length);
  }
  return terms;
}

/** The terms' sum. One without a unit has that which follows its neighbour's or is its neighbour's; the first one's is the next that is named, or the usual. */
function sumOf(terms: readonly Term[], kind: Kind, usual: number): number {
  const named = terms.find(({ size }) => size !== null)?.size ?? usual;
  let sum = 0;
  let before: number | null = null;
  for (const { value, size } of terms) {
    const implied: number = before === null ? named : (following(before, kind) ?? before);
    before = size ?? implied;
    sum += value * before;
  }
  return sum;
}

function read(text: string, kind: Kind, usual: number): Entered {
  const refused = (why: string): Entered => ({ ok: false, why });
  const tidy = tidied(text);
  if (tidy === '') return refused('Write a number.');
  if (AMBIGUOUS.test(tidy)) {
    const [point, none] = [tidy.replace(',', '.'), tidy.replace(',', '')];
    return refused(`Write ${point} or ${none}: a comma before three digits can be read both ways.`);
  }
  const sign = /^[+-]/.exec(tidy)?.[0] ?? '';
  const terms = termsOf(tidy.slice(sign.length), kind);
  if (terms === null || terms.length === 0) return refused(`“${text.trim()}” is not a number.`);
  const sum = sumOf(terms, kind, usual);
  return { ok: true, value: sign === '-' ? -sum : sum };
}

/** A typed number, as it stands; a unit behind it is let pass. Degrees may have minutes and seconds. */
export function enteredNumber(text: string): Entered {
  const entered = read(text, 'number', 1);
  return entered.ok || !text.includes('°') ? entered : enteredAngle(text);
}

/** A typed angle in degrees: decimal, or with minutes and seconds. */
export function enteredAngle(text: string): Entered {
  return read(text, 'angle', 1);
}

/** A typed length in mm. Without a unit of its own it is in the unit shown. */
export function enteredLength(text: string, unit: LengthUnit): Entered {
  const entered = read(text, 'length', unit === 'mm' ? 1 : MM_PER_INCH);
  if (!entered.ok) {
    const isOther = read(text, 'number', 1).ok || read(text, 'angle', 1).ok;
    return isOther ? { ok: false, why: `“${text.trim()}” is not a length.` } : entered;
  }
  // Inches to mm leave noise in the last digits that nobody typed.
  const rounded = Math.round(entered.value * 1e6) / 1e6;
  return { ok: true, value: Math.abs(rounded - entered.value) < 1e-9 ? rounded : entered.value };
}
