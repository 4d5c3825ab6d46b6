/** The cells of the table as they are read: figures in the unit shown, signs and differences in words. */
import {
  COMPARED_ROWS,
  type ComparedRow,
  comparedCell,
  differenceWords,
  type Station,
} from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { type FigureStyle, figureNumber, figureSteps, figureStyle } from '../../words/figures.ts';
import { gapUnit } from '../../words/format.ts';
import type { Columns } from './columns.ts';

export interface ShownCell {
  /** The figure with its unit, or why there is none. */
  readonly text: string;
  readonly isAbsent: boolean;
  /** The base: what its sign means. Others: what is different. */
  readonly words: string;
}

export interface ShownRow {
  readonly row: ComparedRow;
  readonly cells: readonly ShownCell[];
  /** True when every design reads as the base does. */
  readonly isSame: boolean;
}

function styleOf({ group, kind }: ComparedRow, unit: LengthUnit): FigureStyle {
  return figureStyle(kind, group === 'gaps' ? gapUnit(unit) : unit);
}

/** "top leans in" of a value as it is shown. */
function senseWords({ sense }: ComparedRow, steps: number): string {
  if (sense === undefined) return '';
  if (steps === 0) return sense.none;
  return (steps > 0 ? sense.positive : sense.negative).replace(/ ?\{\} ?/, ' ').trim();
}

function wordsBeside(
  row: ComparedRow,
  base: number | string,
  value: number,
  figure: FigureStyle,
): string {
  const steps = figureSteps(value, figure);
  if (typeof base === 'string') return senseWords(row, steps);
  // The difference is rounded, not the difference of what was rounded: as the readings do it.
  const change = Math.abs(figureSteps(value - base, figure));
  const amount = change === 0 ? null : `${figureNumber(change, figure)}${figure.unit}`;
  // What differs by a step may still read alike: then the words follow the numbers behind it.
  const from = figureSteps(base, figure);
  // And what differs by less may fall on two figures.
  if (change === 0 && from !== steps)
    return `less than ${figureNumber(1, figure)}${figure.unit} apart`;
  const isTie = from === steps && change !== 0;
  return isTie
    ? differenceWords(row.key, base, value, amount)
    : differenceWords(row.key, from, steps, amount);
}

function shownRow(
  row: ComparedRow,
  { columns, base }: Columns,
  station: Station,
  unit: LengthUnit,
) {
  const figure = styleOf(row, unit);
  const values = columns.map(({ measured }) => comparedCell(measured, station, row));
  const from = values[base]!;
  const cells = values.map((value, at): ShownCell => {
    if (typeof value === 'string') return { text: value, isAbsent: true, words: '' };
    const steps = figureSteps(value, figure);
    return {
      text: `${figureNumber(steps, figure)}${figure.unit}`,
      isAbsent: false,
      words: at === base ? senseWords(row, steps) : wordsBeside(row, from, value, figure),
    };
  });
  const isSame = cells.every(
    ({ text, words, isAbsent }, at) =>
      at === base || (isAbsent ? text === cells[base]!.text : words === 'the same'),
  );
  return { row, cells, isSame };
}

/** Every row of a station. */
export function shownRows(
  columns: Columns,
  station: Station,
  unit: LengthUnit,
): readonly ShownRow[] {
  return COMPARED_ROWS.map((row) => shownRow(row, columns, station, unit));
}
