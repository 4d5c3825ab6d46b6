/** Lengths and angles as a drawing says them: mm to a tenth, or inches to a thousandth; degrees to a tenth. */
import { MM_PER_INCH } from '../../../solver/units.ts';

export type DrawingUnit = 'mm' | 'inch';

/** A true minus, and no minus before nothing. */
function tidy(text: string): string {
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

export function lengthFigure(mm: number, unit: DrawingUnit): string {
  return unit === 'mm' ? tidy(mm.toFixed(1)) : `${tidy((mm / MM_PER_INCH).toFixed(3))}"`;
}

export function angleFigure(degrees: number): string {
  return `${tidy(degrees.toFixed(1))}°`;
}
