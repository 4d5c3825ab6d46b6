/** Rounds what is dragged by hand to what a person can measure. Lengths mm. */
import type { Vector3 } from '../../../solver/index.ts';
import { MM_PER_INCH } from '../../../solver/units.ts';
import type { LengthUnit } from '../../state/view.ts';

/** A fine drag moves a tenth as far and rounds ten times as finely. */
export const FINE = 0.1;

/** Step a dragged point is rounded to, mm: 0.5 mm, or 1/32 inch where inches are shown. */
export function snapStep(unit: LengthUnit, isFine: boolean): number {
  const step = unit === 'mm' ? 0.5 : MM_PER_INCH / 32;
  return isFine ? step * FINE : step;
}

/** Digits that remove rounding noise of binary fractions but no step of ours. */
const NOISE = 1e6;

/** `from` moved by `shift`, rounded to whole steps where it moves at all: what stays put keeps its exact number. */
export function snapped(from: Vector3, shift: ArrayLike<number>, step: number): Vector3 {
  const at = (i: number): number => {
    if (Math.abs(shift[i]!) < 1e-9) return from[i]!;
    return Math.round(Math.round((from[i]! + shift[i]!) / step) * step * NOISE) / NOISE;
  };
  return [at(0), at(1), at(2)];
}
