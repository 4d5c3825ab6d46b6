/**
 * Figures cut to what is known. The ± keeps one significant digit, two where it begins with 1 or 2, and the number beside
 * it ends where its ± does (JCGM 100:2008, 7.2.6: at most two significant digits). Never more digits than the plain figure.
 */
import { decimalsKnown } from '../../solver/index.ts';
import { MM_PER_INCH } from '../../solver/units.ts';
import type { Known } from '../state/known.ts';
import type { FigureStyle } from './figures.ts';
import { lengthNumber } from './format.ts';

/** Decimals that a ± is worth: 0.55 → 1, 0.14 → 2, 23 → 0, 310 → −2. */
function decimalsOf(spread: number): number {
  return decimalsKnown(spread, Number(spread.toExponential(1)[0]) < 3 ? 2 : 1);
}

/** In sixteenths of an inch: the coarsest of 1, 1/2, … 1/16 that is not coarser than the ±. */
function fractionKnown(plain: FigureStyle, spread: number): Known {
  let steps = 1;
  while (steps < plain.steps && 1 / steps > spread) steps *= 2;
  const least = Math.max(spread, 1 / plain.steps) * MM_PER_INCH;
  const isSmall = spread * plain.steps < 0.5;
  return {
    figure: { ...plain, steps },
    spread: isSmall ? '' : `±${lengthNumber(least, 'sixteenth')}`,
  };
}

/**
 * What a standard uncertainty, in the measure's own unit, leaves of a plain figure; undefined where there is none to go
 * by. The ± is counted in the plain figure's unit.
 */
export function knownFigure(plain: FigureStyle, uncertainty: number): Known | undefined {
  const spread = uncertainty * Math.abs(plain.scale);
  if (!(spread > 0) || !Number.isFinite(spread)) return undefined;
  if (plain.isSixteenth) return fractionKnown(plain, spread);
  const decimals = Math.min(plain.digits, decimalsOf(spread));
  const steps = 10 ** decimals;
  const digits = Math.max(0, decimals);
  const rounded = Math.round(spread * steps) / steps;
  return {
    figure: { ...plain, steps, digits },
    spread: rounded === 0 ? '' : `±${rounded.toFixed(digits)}`,
  };
}

/**
 * A standard uncertainty by itself, with the two significant digits that comparing several of them takes: "±0.41°".
 * "none" where there is none: an angle at exactly 0 has a corner there.
 */
export function spreadWords(plain: FigureStyle, uncertainty: number): string {
  const spread = uncertainty * Math.abs(plain.scale);
  if (!Number.isFinite(spread)) return 'none';
  if (spread === 0) return `±0${plain.unit}`;
  const decimals = decimalsKnown(spread, 2);
  const rounded = Number(spread.toPrecision(2));
  return `±${rounded.toFixed(Math.max(0, decimals))}${plain.unit}`;
}

/** Digits behind the point that a number is shown with beside its ± of two significant digits; never fewer than none. */
export function spreadDigits(plain: FigureStyle, uncertainty: number): number {
  const spread = uncertainty * Math.abs(plain.scale);
  return spread > 0 ? Math.min(6, Math.max(0, decimalsKnown(spread, 2))) : plain.digits;
}
