/** A row of figures: how it is read off a column and told as a difference from the present. */
import type { FitmentFigures } from '../../../solver/fitment/figures.ts';
import type { LengthUnit } from '../../state/view.ts';
import { fixed, length, signed, signedLength } from '../../words/format.ts';

/** What a cell says: the figure, and beneath it what it means or by how much it differs. */
export interface CellText {
  readonly figure: string;
  readonly below?: string;
}

/** One column's figures beside the present's, and how lengths are shown. */
export interface RowContext {
  readonly own: FitmentFigures;
  readonly present: FitmentFigures;
  readonly isPresent: boolean;
  readonly unit: LengthUnit;
  /** The bearing's middle inboard of the hub face, mm. */
  readonly bearing: number;
}

export interface FigureRow {
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
  readonly cell: (context: RowContext) => CellText;
}

const NONE: CellText = { figure: '–' };

/** Differences below this, mm, are none that could be measured. */
export const SAME = 0.05;

export interface Words {
  readonly more: string;
  readonly less: string;
}

export function difference(change: number, unit: LengthUnit, { more, less }: Words): string {
  if (Math.abs(change) < SAME) return 'as now';
  return `${signedLength(change, unit)} ${change > 0 ? more : less}`;
}

/** A length told with its difference; null where the pose it is read at is out of reach. */
export function lengthRow(
  key: string,
  label: string,
  read: (figures: FitmentFigures) => number | null,
  words: Words,
  hint?: string,
): FigureRow {
  return {
    key,
    label,
    ...(hint === undefined ? {} : { hint }),
    cell: ({ own, present, isPresent, unit }) => {
      const [value, base] = [read(own), read(present)];
      if (value === null) return NONE;
      const figure = length(value, unit);
      if (isPresent || base === null) return { figure };
      return { figure, below: difference(value - base, unit, words) };
    },
  };
}

export function turnsRow(
  key: string,
  label: string,
  read: (figures: FitmentFigures) => number,
): FigureRow {
  return {
    key,
    label,
    cell: ({ own, present, isPresent }) => {
      const figure = fixed(read(own), 1);
      return isPresent ? { figure } : { figure, below: signed(read(own) - read(present), 1) };
    },
  };
}
