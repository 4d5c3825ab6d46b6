/** Figures of measures as papers print them, with what their signs mean. */
import { inWords, type MeasureRow, type UnitKind } from '../../solver/index.ts';
import { figureNumber, figureSteps, figureStyle } from '../words/figures.ts';
import { gapUnit, length } from '../words/format.ts';
import type { LengthUnit } from '../words/lengthUnit.ts';

export const NO_NUMBER = 'none';

/** "0.20°", "12.3 mm"; "none" where there is no number. */
export function figureText(kind: UnitKind, value: number, unit: LengthUnit): string {
  if (!Number.isFinite(value)) return NO_NUMBER;
  const style = figureStyle(kind, unit);
  return `${figureNumber(figureSteps(value, style), style)}${style.unit}`;
}

/** "top leans in": what the printed figure's sign means; empty for a measure without signs. */
export function senseText(row: MeasureRow, value: number, unit: LengthUnit): string {
  if (!Number.isFinite(value)) return '';
  return inWords(row, figureSteps(value, figureStyle(row.kind, unit))) ?? '';
}

/** The figure of a row, then what its sign means: "−0.20°, top leans in". */
export function rowText(row: MeasureRow, value: number, unit: LengthUnit): string {
  const words = senseText(row, value, unit);
  const text = figureText(row.kind, value, unit);
  return words === '' ? text : `${text}, ${words}`;
}

/** A length centre to centre: to a tenth of a mm, a hundredth or a sixteenth of an inch. */
export function lengthText(mm: number, unit: LengthUnit): string {
  return Number.isFinite(mm) ? length(mm, unit) : NO_NUMBER;
}

/** A small distance; in decimals where lengths are in sixteenths. */
export function smallText(mm: number, unit: LengthUnit): string {
  return Number.isFinite(mm) ? length(mm, gapUnit(unit)) : NO_NUMBER;
}
