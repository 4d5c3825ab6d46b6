/** Numbers as people read them: mm and degrees, or inches (decimal, or to the nearest 1/16). */
import { MM_PER_INCH } from '../../solver/units.ts';
import type { LengthUnit } from './lengthUnit.ts';

const MINUS = '−';

/** A number with fixed digits and a true minus; never "−0.0". */
export function fixed(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}

/** As `fixed`, with a plus before positive numbers: for differences. */
export function signed(value: number, digits: number): string {
  const text = fixed(value, digits);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

function sixteenths(mm: number): string {
  const count = Math.round((Math.abs(mm) / MM_PER_INCH) * 16);
  const whole = Math.floor(count / 16);
  let top = count % 16;
  let bottom = 16;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const fraction = top === 0 ? '' : `${top}/${bottom}`;
  const number = [whole > 0 || top === 0 ? String(whole) : '', fraction].filter(Boolean).join(' ');
  return mm < 0 && count > 0 ? MINUS + number : number;
}

/** A length without its unit's name: mm to `digits`, inches with about the same resolution, or sixteenths. */
export function lengthNumber(mm: number, unit: LengthUnit, digits = 1): string {
  if (unit === 'mm') return fixed(mm, digits);
  return unit === 'inch' ? fixed(mm / MM_PER_INCH, digits + 1) : sixteenths(mm);
}

/** "mm" or "in". */
export function lengthUnitName(unit: LengthUnit): string {
  return unit === 'mm' ? 'mm' : 'in';
}

/** A length with its unit: "12.3 mm", "0.48 in", "1/2 in". */
export function length(mm: number, unit: LengthUnit, digits = 1): string {
  return `${lengthNumber(mm, unit, digits)} ${lengthUnitName(unit)}`;
}

/** As `length`, with a plus before positive lengths: "+12.3 mm". */
export function signedLength(mm: number, unit: LengthUnit, digits = 1): string {
  const text = length(mm, unit, digits);
  return mm > 0 && !/^0(?:\.0*)? /.test(text) ? `+${text}` : text;
}

/** The unit clearances are shown in: in sixteenths of an inch a touch could read 0, so those are shown in decimals. */
export function gapUnit(unit: LengthUnit): LengthUnit {
  return unit === 'mm' ? 'mm' : 'inch';
}

/** An angle: "1.20°". */
export function angle(degrees: number, digits = 2): string {
  return `${fixed(degrees, digits)}°`;
}

/** Value in the unit shown, for sliders and axes: mm, or inches for both inch forms. */
export function toShown(mm: number, unit: LengthUnit): number {
  return unit === 'mm' ? mm : mm / MM_PER_INCH;
}

/** Inverse of `toShown`. */
export function fromShown(shown: number, unit: LengthUnit): number {
  return unit === 'mm' ? shown : shown * MM_PER_INCH;
}
