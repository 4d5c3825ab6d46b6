/** Round numbers along an axis, in the unit shown. */

import { fixed, fromShown, toShown } from '../words/format.ts';
import type { LengthUnit } from '../words/lengthUnit.ts';

export interface Tick {
  /** Place on the axis, in the axis's own unit: mm for lengths. */
  readonly at: number;
  readonly text: string;
}

/** The round step (1, 2 or 5 times a power of ten) that cuts `span` into at most `most` parts. */
export function roundStep(span: number, most: number): number {
  const rough = span / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  for (const part of [1, 2, 5]) if (part * power >= rough * (1 - 1e-9)) return part * power;
  return 10 * power;
}

/** Decimals that a multiple of the step needs. */
export function stepDigits(step: number): number {
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}

/** Multiples of a round step inside [least, most], at most `count` parts. */
export function ticksOf(least: number, most: number, count: number): readonly Tick[] {
  if (!(most > least)) return [];
  const step = roundStep(most - least, count);
  const digits = stepDigits(step);
  const ticks: Tick[] = [];
  for (let i = Math.ceil(least / step - 1e-9); i * step <= most + step * 1e-9; i += 1) {
    ticks.push({ at: i * step, text: fixed(i * step, digits) });
  }
  return ticks;
}

/** As `ticksOf` for a length in mm, round in the unit shown. */
export function lengthTicks(
  least: number,
  most: number,
  count: number,
  unit: LengthUnit,
): readonly Tick[] {
  return ticksOf(toShown(least, unit), toShown(most, unit), count).map(({ at, text }) => ({
    at: fromShown(at, unit),
    text,
  }));
}
