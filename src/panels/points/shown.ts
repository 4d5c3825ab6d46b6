/** A number of a field as it is shown and slid in the unit of the view. */
import type { LengthUnit } from '../../state/view.ts';
import { fromShown, lengthNumber, toShown } from '../../words/format.ts';
import type { Spec } from './spec.ts';

function isInches(spec: Spec, unit: LengthUnit): boolean {
  return spec.kind === 'length' && unit !== 'mm';
}

/** The number for a text field: no digits beyond what means something, and none made up. */
export function shownText(value: number, spec: Spec, unit: LengthUnit): string {
  const isLength = isInches(spec, unit);
  const shown = isLength ? toShown(value, unit) : value;
  return String(Number(shown.toFixed(3))).replace('-', '−');
}

/** Nearest sixteenth of an inch, where that is the unit; else null. */
export function sixteenth(value: number, spec: Spec, unit: LengthUnit): string | null {
  return spec.kind === 'length' && unit === 'sixteenth' ? lengthNumber(value, unit) : null;
}

/** Unit behind the number. */
export function unitName(spec: Spec, unit: LengthUnit): string {
  if (spec.kind === 'length') return unit === 'mm' ? 'mm' : 'in';
  return spec.unit ?? '';
}

/** One step of the slider or an arrow key, in the unit shown. */
export function shownStep(spec: Spec, unit: LengthUnit): number {
  if (!isInches(spec, unit)) return spec.step;
  if (spec.step < 0.5) return 0.002;
  return unit === 'sixteenth' ? 1 / 16 : 0.02;
}

export interface Slide {
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

/** Ends and step of a slider in the unit shown. `about` is where a slider about its value lies, mm. */
export function slideOf(value: number, about: number, spec: Spec, unit: LengthUnit): Slide {
  const step = shownStep(spec, unit);
  const shift = spec.isAround === true ? about : 0;
  const show = (number: number) => (isInches(spec, unit) ? toShown(number, unit) : number);
  const [least, most] = [show(spec.least + shift), show(spec.most + shift)];
  const now = show(value);
  return {
    min: Math.floor(Math.min(least, now) / step) * step,
    max: Math.ceil(Math.max(most, now) / step) * step,
    step,
  };
}

/** What a slider's or arrow's number stands for in the file. */
export function fromSlide(shown: number, spec: Spec, unit: LengthUnit): number {
  const value = isInches(spec, unit) ? fromShown(shown, unit) : shown;
  return Math.round(value * 1e6) / 1e6;
}

/** What is shown on a slider. */
export function toSlide(value: number, spec: Spec, unit: LengthUnit): number {
  return isInches(spec, unit) ? toShown(value, unit) : value;
}
