/** A figure of any kind as it is typed and read, in the unit shown. */
import type { UnitKind } from '../../solver/index.ts';
import { type Entered, enteredLength, enteredNumber } from './entry.ts';
import { figureNumber, figureSteps, figureStyle } from './figures.ts';
import { gapUnit, length, lengthUnitName, toShown } from './format.ts';
import type { LengthUnit } from './lengthUnit.ts';

export interface Quantity {
  /** What stands behind the field: "mm", "°/100 mm"; empty for a plain number. */
  readonly unitName: string;
  /** The value for a field: no digits but its own, up to as many as count. */
  text(value: number): string;
  entered(text: string): Entered;
  /** The value to be read, with its unit. */
  figure(value: number): string;
}

/** Digits a field shows at most. */
const DIGITS = 4;

function plain(value: number, digits: number): string {
  const text = String(Number(Math.abs(value).toFixed(digits)));
  return value < 0 && text !== '0' ? `−${text}` : text;
}

function lengths(unit: LengthUnit): Quantity {
  const of = gapUnit(unit);
  return {
    unitName: lengthUnitName(of),
    text: (mm) => plain(toShown(mm, of), of === 'mm' ? 2 : DIGITS),
    entered: (text) => enteredLength(text, of),
    figure: (mm) => length(mm, of, Math.abs(mm) < 10 ? 2 : 1),
  };
}

/** How figures of a kind are typed and read. Lengths are in decimals in either inch form, so that small moves do not read as none. */
export function quantityOf(kind: UnitKind, unit: LengthUnit): Quantity {
  if (kind === 'millimetre') return lengths(unit);
  const style = figureStyle(kind, unit);
  return {
    unitName: style.unit.trim(),
    text: (value) => plain(value * style.scale, DIGITS),
    entered(text) {
      const entered = enteredNumber(text);
      return entered.ok ? { ok: true, value: entered.value / style.scale } : entered;
    },
    figure: (value) => `${figureNumber(figureSteps(value, style), style)}${style.unit}`,
  };
}
