/** Figures of the measures as they are shown: scale, digits and unit by the kind of the measure and the unit of length. */
import type { UnitKind } from '../../solver/index.ts';
import { MM_PER_INCH, NEWTONS_PER_POUND } from '../../solver/units.ts';
import { fixed, lengthNumber, signed } from './format.ts';
import type { LengthUnit } from './lengthUnit.ts';

export interface FigureStyle {
  /** Shown value = value × scale. */
  readonly scale: number;
  /** Smallest steps per shown unit: two values of the same step read the same. */
  readonly steps: number;
  readonly digits: number;
  /** Stands after the number, its blank included. */
  readonly unit: string;
  readonly isSixteenth: boolean;
}

/** Rates along travel are read over this length, mm, where the unit is not the inch. */
const RATE_LENGTH = 100;
const MM_PER_FOOT = 12 * MM_PER_INCH;

function style(scale: number, digits: number, unit: string): FigureStyle {
  return { scale, steps: 10 ** digits, digits, unit, isSixteenth: false };
}

const METRIC: Readonly<Record<UnitKind, FigureStyle>> = {
  degree: style(1, 2, '°'),
  millimetre: style(1, 1, ' mm'),
  distance: style(1e-3, 2, ' m'),
  degreePerMm: style(RATE_LENGTH, 2, `°/${RATE_LENGTH} mm`),
  degreePerRackMm: style(1, 3, '°/mm'),
  ratio: style(1, 3, ''),
  perMm: style(RATE_LENGTH, 3, `/${RATE_LENGTH} mm`),
  percent: style(1, 1, ' %'),
  newton: style(1, 0, ' N'),
  newtonPerMm: style(1, 1, ' N/mm'),
  hertz: style(1, 2, ' Hz'),
};

const INCH: Readonly<Record<UnitKind, FigureStyle>> = {
  ...METRIC,
  millimetre: style(1 / MM_PER_INCH, 2, ' in'),
  distance: style(1 / MM_PER_FOOT, 1, ' ft'),
  degreePerMm: style(MM_PER_INCH, 3, '°/in'),
  degreePerRackMm: style(MM_PER_INCH, 2, '°/in'),
  perMm: style(MM_PER_INCH, 4, '/in'),
  newton: style(1 / NEWTONS_PER_POUND, 0, ' lbf'),
  newtonPerMm: style(MM_PER_INCH / NEWTONS_PER_POUND, 0, ' lbf/in'),
};

const SIXTEENTH: Readonly<Record<UnitKind, FigureStyle>> = {
  ...INCH,
  millimetre: {
    scale: 1 / MM_PER_INCH,
    steps: 16,
    digits: 0,
    unit: ' in',
    isSixteenth: true,
  },
};

const STYLES: Readonly<Record<LengthUnit, Readonly<Record<UnitKind, FigureStyle>>>> = {
  mm: METRIC,
  inch: INCH,
  sixteenth: SIXTEENTH,
};

/** How a measure of this kind is shown. */
export function figureStyle(kind: UnitKind, unit: LengthUnit): FigureStyle {
  return STYLES[unit][kind];
}

/** The value in its smallest shown steps, a whole number: equal steps read equally. NaN stays NaN. */
export function figureSteps(value: number, { scale, steps }: FigureStyle): number {
  // Halves go away from zero on both sides, and never to a minus zero.
  const count = Math.round(Math.abs(value) * scale * steps);
  return value < 0 ? 0 - count : count;
}

/** Number of a count of steps, without its unit. */
export function figureNumber(count: number, figure: FigureStyle): string {
  if (figure.isSixteenth) return lengthNumber((count / figure.steps) * MM_PER_INCH, 'sixteenth');
  return fixed(count / figure.steps, figure.digits);
}

/** As `figureNumber`, with a plus before positive numbers: for differences. */
export function figureDifference(count: number, figure: FigureStyle): string {
  if (figure.isSixteenth) return `${count > 0 ? '+' : ''}${figureNumber(count, figure)}`;
  return signed(count / figure.steps, figure.digits);
}
