/** What a candidate is typed in by: each field's label, its unit, its text, and what a typed text makes of the candidate. */
import { backspacingOf, type Candidate, offsetOf } from '../../../solver/fitment/candidate.ts';
import { nearestReading } from '../../../solver/fitment/nearestReading.ts';
import { offSeries, writtenSize } from '../../../solver/fitment/sizeSeries.ts';
import { parseTyreSize } from '../../../solver/model/tyre.ts';
import type { Field } from '../../state/fitment.ts';
import type { LengthUnit } from '../../state/view.ts';
import { enteredLength, enteredNumber } from '../../words/entry.ts';
import { lengthUnitName, toShown } from '../../words/format.ts';

export type Taken =
  | { readonly ok: true; readonly candidate: Candidate }
  | {
      readonly ok: false;
      readonly message: string;
      readonly nearest?: string;
      readonly asWritten?: boolean;
    };

export interface FieldSpec {
  readonly field: Field;
  readonly label: string;
  /** What is good to know about it, under the label. */
  readonly hint?: string;
  readonly unitName: (unit: LengthUnit) => string;
  readonly shown: (candidate: Candidate, unit: LengthUnit) => string;
  readonly take: (candidate: Candidate, text: string, unit: LengthUnit) => Taken;
}

/** A number without digits nobody asked for. */
function plain(value: number): string {
  return String(Number(value.toFixed(3))).replace('-', '−');
}

function taken(candidate: Candidate): Taken {
  return { ok: true, candidate };
}

/** The candidate on another rim diameter; a contour drawn for another rim is let go of. */
function withRim(candidate: Candidate, rimDiameter: number, rimWidth: number): Candidate {
  if (candidate.rimDiameter === rimDiameter && candidate.rimWidth === rimWidth) return candidate;
  const { section: _, ...rest } = candidate;
  return { ...rest, rimDiameter, rimWidth };
}

/** The candidate with another tyre, on the rim that the tyre is for. */
function withSize(candidate: Candidate, size: string, code: number): Candidate {
  return { ...withRim(candidate, code, candidate.rimWidth), tyre: { size } };
}

/** "Ø 790 × 250", "790 mm x 250 mm": a tyre as it was measured, diameter and section width in mm. */
const MEASURED = /^(?:Ø\s*)?(\d{3,4}(?:\.\d+)?)\s*(?:mm)?\s*[x×]\s*(\d{3}(?:\.\d+)?)\s*(?:mm)?$/i;

function measuredTyre(text: string): { diameter: number; width: number } | null {
  const [, diameter, width] = MEASURED.exec(text.trim()) ?? [];
  if (diameter === undefined || width === undefined) return null;
  return { diameter: Number(diameter), width: Number(width) };
}

/** Takes a size; `isInsisted` also takes one that is off the series but can be read. */
export function takeSize(candidate: Candidate, text: string, isInsisted = false): Taken {
  const measured = measuredTyre(text);
  if (measured !== null) return taken({ ...candidate, tyre: measured });
  const parsed = parseTyreSize(text);
  if (parsed.ok && (isInsisted || offSeries(parsed.size).length === 0)) {
    return taken(withSize(candidate, text.trim(), parsed.size.rimDiameterCode));
  }
  const reading = nearestReading(text, candidate.rimDiameter);
  if (reading.kind === 'near') {
    const { why, text: nearest, asWritten } = reading;
    return { ok: false, message: why, nearest, asWritten };
  }
  return { ok: false, message: reading.kind === 'none' ? reading.why : 'This is no tyre size.' };
}

function shownTyre({ tyre }: Candidate): string {
  if ('size' in tyre) return tyre.size;
  return `Ø ${plain(tyre.diameter)} × ${plain(tyre.width)} mm`;
}

/** "17x8.5", "8.5Jx17": a rim as it is stamped, either way round. */
const RIM = /^(\d+(?:[.,]\d+)?)\s*(?:J{1,2}|K)?\s*[x×]\s*(\d+(?:[.,]\d+)?)\s*(?:J{1,2}|K)?$/i;

function stampedRim(text: string): readonly [number, number] | null {
  const [, one, other] = RIM.exec(text.trim()) ?? [];
  if (one === undefined || other === undefined) return null;
  const [a, b] = [one, other].map((number) => Number(number.replace(',', '.')));
  return [Math.max(a!, b!), Math.min(a!, b!)];
}

/** Another rim diameter, the tyre's size with it. */
function takeDiameter(candidate: Candidate, code: number, width = candidate.rimWidth): Taken {
  const next = withRim(candidate, code, width);
  const parsed = 'size' in next.tyre ? parseTyreSize(next.tyre.size) : null;
  if (parsed === null || !parsed.ok || parsed.size.rimDiameterCode === code) return taken(next);
  const size = { ...parsed.size, rimDiameterCode: code };
  const [reason] = offSeries(size);
  if (reason !== undefined && offSeries(parsed.size).length === 0) {
    return { ok: false, message: `No such rim with this tyre: ${reason}.` };
  }
  return taken({ ...next, tyre: { size: writtenSize(size) } });
}

/** A field of a rim's inch code; a whole rim stamp is taken apart. */
function rimField(
  field: 'rimDiameter' | 'rimWidth',
  label: string,
  take: (candidate: Candidate, inches: number) => Taken,
): FieldSpec {
  return {
    field,
    label,
    unitName: () => 'in',
    shown: (candidate) => plain(candidate[field]),
    take: (candidate, text) => {
      const stamp = stampedRim(text);
      if (stamp !== null) return takeDiameter(candidate, ...stamp);
      const entered = enteredNumber(text);
      if (!entered.ok) return { ok: false, message: entered.why };
      return take(candidate, entered.value);
    },
  };
}

function lengthField(
  field: Field,
  label: string,
  hint: string,
  read: (candidate: Candidate) => number,
  write: (candidate: Candidate, mm: number) => Candidate,
): FieldSpec {
  return {
    field,
    label,
    hint,
    unitName: lengthUnitName,
    shown: (candidate, unit) => plain(toShown(read(candidate), unit)),
    take: (candidate, text, unit) => {
      const entered = enteredLength(text, unit);
      if (!entered.ok) return { ok: false, message: entered.why };
      return taken(write(candidate, entered.value));
    },
  };
}

function takeMass(candidate: Candidate, text: string): Taken {
  const { mass: _, ...rest } = candidate;
  if (text.trim() === '' || text.trim() === '–') return taken(rest);
  const entered = enteredNumber(text.replace(/ ?kg$/i, ''));
  if (!entered.ok) return { ok: false, message: entered.why };
  return taken({ ...rest, mass: entered.value });
}

export const FIELD_SPECS: readonly FieldSpec[] = [
  {
    field: 'tyre',
    label: 'Tyre size',
    hint: '265/70R17, LT285/75R16, 35x12.50R17; measured: 790 × 250 mm',
    unitName: () => '',
    shown: shownTyre,
    take: (candidate, text) => takeSize(candidate, text),
  },
  rimField('rimDiameter', 'Rim diameter', (candidate, code) => takeDiameter(candidate, code)),
  rimField('rimWidth', 'Rim width', (candidate, width) =>
    taken(withRim(candidate, candidate.rimDiameter, width)),
  ),
  lengthField(
    'offset',
    'Offset',
    'mounting face outboard of the rim’s middle +, inboard −',
    offsetOf,
    (candidate, value) => ({ ...candidate, mounting: { by: 'offset', value } }),
  ),
  lengthField(
    'backspacing',
    'Backspacing',
    'inner lip’s edge to the mounting face',
    backspacingOf,
    (candidate, value) => ({ ...candidate, mounting: { by: 'backspacing', value } }),
  ),
  lengthField(
    'spacer',
    'Spacer',
    'behind the wheel',
    ({ spacer }) => spacer,
    (candidate, spacer) => ({ ...candidate, spacer }),
  ),
  {
    field: 'mass',
    label: 'Mass of the wheel',
    hint: 'leave empty where unknown',
    unitName: () => 'kg',
    shown: ({ mass }) => (mass === undefined ? '' : plain(mass)),
    take: takeMass,
  },
];
