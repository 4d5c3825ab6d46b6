/** The drawings of a model: each arm and the tie rod, and the cut list as a table. */
import {
  type Allowances,
  armFigure,
  csvText,
  cutList,
  type Model,
  NO_ALLOWANCES,
  type PieceName,
  rodFigure,
} from '../../../solver/index.ts';
import { armNotes, armViews } from './armDrawing.ts';
import { angleFigure, type DrawingUnit, lengthFigure } from './figures.ts';
import type { Drawing } from './marks.ts';
import { rodNotes, rodViews } from './rodDrawing.ts';
import { drawingSheet, type Title } from './sheet.ts';

export interface DrawingOptions {
  readonly unit: DrawingUnit;
  readonly hand: 'left' | 'right';
  /** As it is to be printed. */
  readonly date: string;
}

const ARMS = [
  ['upperArm', 'Upper arm', 'upper-arm'],
  ['lowerArm', 'Lower arm', 'lower-arm'],
] as const;

/** Full-size drawings of both arms and the tie rod of a sound model. */
export function drawingsOf(model: Model, { unit, hand, date }: DrawingOptions): Drawing[] {
  const title = (key: string, part: string): Title => ({
    key: `${key}-${hand}`,
    part,
    model: model.name,
    hand,
    unit: unit === 'mm' ? 'mm' : 'inches',
    date,
  });
  const sense = hand === 'left' ? 1 : -1;
  const arms = ARMS.map(([name, part, key]) => {
    const figure = armFigure(model, name);
    return drawingSheet(
      armViews(figure, unit, sense),
      armNotes(figure, unit, sense),
      title(key, part),
    );
  });
  const rod = rodFigure(model);
  return [
    ...arms,
    drawingSheet(
      rodViews(rod, unit, sense),
      rodNotes(rod, unit, sense),
      title('tie-rod', 'Tie rod'),
    ),
  ];
}

const PIECES: Readonly<Record<PieceName, string>> = {
  lowerFront: 'lower arm, front tube',
  lowerRear: 'lower arm, rear tube',
  upperFront: 'upper arm, front tube',
  upperRear: 'upper arm, rear tube',
  tieRod: 'tie rod',
  strap: 'limit strap',
};

export interface CutTable {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A cut list as CSV, with the minus that spreadsheets read. */
export function cutListCsv({ heads, rows }: CutTable): string {
  return csvText([heads, ...rows].map((line) => line.map((cell) => cell.replace(/−/g, '-'))));
}

/** The cut list as a table: heads with their units, then rows, all as text. Pieces a side. */
export function cutListTable(
  model: Model,
  unit: DrawingUnit,
  allowances: Allowances = NO_ALLOWANCES,
): CutTable {
  const said = unit === 'mm' ? 'mm' : 'in';
  const length = (mm: number): string => lengthFigure(mm, unit).replace('"', '');
  const heads = [
    'piece',
    `centre to centre [${said}]`,
    `cut length [${said}]`,
    `diameter [${said}]`,
    'to the pivots’ line [deg]',
    'ends turned [deg]',
    `bends: angle at distance [deg at ${said}]`,
  ];
  const rows = cutList(model, allowances).map((piece) => [
    PIECES[piece.name],
    length(piece.centres),
    length(piece.cut),
    piece.diameter === null ? '' : length(piece.diameter),
    piece.innerAngle === null ? '' : angleFigure(piece.innerAngle).replace('°', ''),
    piece.rotation === null ? '' : angleFigure(piece.rotation).replace('°', ''),
    piece.bends
      .map(({ angle, at, rotation }) => {
        const turn = rotation === null ? '' : ` turned ${angleFigure(rotation)}`;
        return `${angleFigure(angle)} at ${length(at)}${turn}`;
      })
      .join('; '),
  ]);
  return { heads, rows };
}
