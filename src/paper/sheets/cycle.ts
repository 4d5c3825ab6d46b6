/** The cycle sheet: five heights by three locks with angles and clearances, and a blank column for the tape. */
import {
  type CycleCell,
  type CycleGrid,
  type CycleHeight,
  type Margin,
  type MeasureKey,
  measureRow,
  missingParts,
} from '../../../solver/index.ts';
import { signedLength } from '../../words/format.ts';
import { marginWords } from '../../words/margins.ts';
import { BLANK, type Block, type Cell, heading, paragraph, tableBlocks } from '../block.ts';
import { figureText, smallText } from '../figureWords.ts';
import { markup } from '../markup.ts';
import { roomOf, type Sheet, sheetPages } from '../page.ts';
import { type PaperSource, readingAt } from '../source.ts';
import { setByWords, standing } from '../standing.ts';

const LOCKS = { left: 'Left lock', straight: 'Straight', right: 'Right lock' } as const;
const STANDINGS = { pass: 'pass', near: 'near', contact: 'CONTACT' } as const;

/** Angles and lengths that are read with the clearances. */
const READ: readonly MeasureKey[] = [
  'steerAngle',
  'camber',
  'caster',
  'toe',
  'damperLength',
  'outerAngle',
  'innerAngle',
  'plunge',
  'lowerBallJoint',
  'upperBallJoint',
  'tieRodOuter',
  'tieRodInner',
];

/** The measures of every cell that the model has the parts for. */
export function readKeys({ model }: Pick<PaperSource, 'model'>): readonly MeasureKey[] {
  return READ.filter((key) => missingParts(model, measureRow(key)).length === 0);
}

export function cellOf(grid: CycleGrid, height: string, lock: string): CycleCell | undefined {
  return grid.cells.find((cell) => cell.height === height && cell.lock === lock);
}

function placeText({ travel }: CycleHeight, source: PaperSource): string {
  return signedLength(travel, source.settings.unit, 0);
}

function cap(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function summaryCell(source: PaperSource, cell: CycleCell | undefined): Cell {
  if (cell === undefined) return 'no steering limit';
  const { worst, standing: stands, isReached } = cell;
  const isWorst = cell === source.cycle.worst;
  const mark = isWorst
    ? markup`<strong>${STANDINGS[stands]}, worst</strong>`
    : markup`${STANDINGS[stands]}`;
  if (!isReached) return markup`${mark}: out of reach`;
  if (worst === null) return mark;
  return markup`${mark}: ${worst.margin.label}, ${marginWords(worst.margin, worst.value, source.settings.unit)}`;
}

function summaryBlocks(source: PaperSource): Block[] {
  const { cycle, settings } = source;
  const rows = cycle.heights.flatMap((height): Cell[][] => [
    [
      `${cap(height.label)}, travel ${placeText(height, source)}`,
      ...cycle.racks.map(({ lock }) => summaryCell(source, cellOf(cycle, height.height, lock))),
    ],
    ['found', BLANK, BLANK, BLANK],
  ]);
  const heads = cycle.racks.map(({ lock, rack }) =>
    rack === null ? LOCKS[lock] : `${LOCKS[lock]}, rack ${signedLength(rack, settings.unit, 0)}`,
  );
  return [
    heading('The 15 cells: the worst of each'),
    ...tableBlocks(
      {
        caption: 'The 15 cells',
        heads: ['Height', ...heads],
        rows,
        widths: [0.25, 0.25, 0.25, 0.25],
        words: [1, 2, 3],
      },
      roomOf(settings.paper),
    ),
    heading('What each height is'),
    ...tableBlocks(
      {
        caption: 'Heights',
        heads: ['Height', 'Travel', 'Set by'],
        rows: cycle.heights.map((height): Cell[] => [
          cap(height.label),
          placeText(height, source),
          setByWords(height.because),
        ]),
        widths: [0.25, 0.15, 0.6],
        words: [2],
      },
      roomOf(settings.paper),
    ),
  ];
}

type Told = (cell: CycleCell) => string;

function row(source: PaperSource, { height }: CycleHeight, label: string, told: Told): Cell[] {
  const { cycle } = source;
  return [
    label,
    ...cycle.racks.flatMap(({ lock }): Cell[] => {
      const cell = cellOf(cycle, height, lock);
      if (cell === undefined) return ['', ''];
      return [cell.isReached ? told(cell) : 'out of reach', BLANK];
    }),
  ];
}

/** A joint's row tells its angle: the limits below have rows of the same joints. */
function angleName(label: string): string {
  return label.endsWith('angle') ? label : `${label}, angle`;
}

function measureRows(source: PaperSource, height: CycleHeight): Cell[][] {
  const { corner, settings } = source;
  return readKeys(source).map((key) => {
    const measure = measureRow(key);
    const label =
      measure.group === 'joints' || key.endsWith('Angle')
        ? angleName(measure.label)
        : measure.label;
    return row(source, height, cap(label), ({ travel, rack }) => {
      const value = readingAt(corner, travel, rack)?.at(key) ?? Number.NaN;
      return measure.kind === 'millimetre'
        ? smallText(value, settings.unit)
        : figureText(measure.kind, value, settings.unit);
    });
  });
}

/** A margin's value, marked where less is left than is wanted. */
function marginText({ key }: Margin, source: PaperSource): Told {
  return ({ margins }) => {
    const found = margins.find(({ margin }) => margin.key === key);
    if (found === undefined) return '';
    const words = marginWords(found.margin, found.value, source.settings.unit);
    if (found.standing === 'meant') return `${words} (meant)`;
    return found.standing === 'pass' ? words : `${words}, ${STANDINGS[found.standing]}`;
  };
}

/** Every margin that any cell tells, pairs of parts after limits. */
function marginsTold({ cells }: CycleGrid): readonly Margin[] {
  const told = cells.find(({ isReached }) => isReached)?.margins ?? [];
  const all = told.map(({ margin }) => margin);
  return [...all.filter(({ pair }) => pair === null), ...all.filter(({ pair }) => pair !== null)];
}

function heightBlocks(source: PaperSource, height: CycleHeight): Block[] {
  const { cycle, settings } = source;
  const margins = marginsTold(cycle).map((margin) =>
    row(source, height, cap(margin.label), marginText(margin, source)),
  );
  return [
    heading(
      `${cap(height.label)}: travel ${placeText(height, source)} (${setByWords(height.because)})`,
    ),
    ...tableBlocks(
      {
        caption: `Readings at ${height.label}`,
        heads: ['Reading', ...cycle.racks.flatMap(({ lock }) => [LOCKS[lock], 'tape'])],
        rows: [...measureRows(source, height), ...margins],
        widths: [0.22, 0.17, 0.09, 0.17, 0.09, 0.17, 0.09],
        isDense: true,
      },
      roomOf(settings.paper) - 10,
    ),
  ];
}

export function cycleSheet(source: PaperSource): Sheet {
  return sheetPages('cycle', 'Cycle sheet', source, [
    paragraph(
      'Springs out, the corner moved by hand through every cell: write what the tape finds beside what is worked out. Near: less left than is wanted; contact: none. “Meant” is a limit this height is at by what it is.',
    ),
    ...summaryBlocks(source),
    ...source.cycle.heights.flatMap((height) => heightBlocks(source, height)),
    ...standing(source),
  ]);
}
