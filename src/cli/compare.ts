/** armscribe compare MODEL MODEL [MODEL MODEL]: every measure of up to four designs side by side. */
import {
  COMPARED_ROWS,
  type ComparedRow,
  comparedCell,
  comparisonCsv,
  differenceWords,
  escaped,
  FILE_UNITS,
  GROUP_TITLES,
  type MeasuredDesign,
  measureDesign,
  STATION_LABELS,
  STATIONS,
  type Station,
  type UnitKind,
  unreachedWords,
} from '../../solver/index.ts';
import { loadModel } from './files.ts';
import { rounded } from './print.ts';
import { BadInput, type Verb } from './refusal.ts';
import { about, sortWords } from './words.ts';

const help = `armscribe compare MODEL MODEL [MODEL MODEL] [--differing] [--csv | --json]

Two to four designs side by side: every measure at ride height, full bump, full droop
(the ends of each model's own travel, rack 0) and at both locks (at ride height), with
what differs from the first model in plain words.
  --differing  only the rows in which a design differs from the first
  --csv        a line for each design at each place, units and signs in the first line,
               unrounded; then the differences from the first model
  --json       one object with unrounded numbers and differences
Where a model lacks a part the cell says so, and so it does where a place is out of
reach. Exit status 1 when a design cannot reach one of its places.
`;

const FEWEST = 2;
const MOST = 4;
const LETTERS = 'ABCD';

/** Digits after the point in the readable table. */
const DIGITS: Readonly<Record<UnitKind, number>> = {
  degree: 3,
  millimetre: 2,
  distance: 0,
  degreePerMm: 5,
  degreePerRackMm: 5,
  ratio: 4,
  perMm: 6,
  percent: 2,
  newton: 1,
  newtonPerMm: 3,
  hertz: 3,
};

interface Design {
  readonly file: string;
  readonly measured: MeasuredDesign;
}

function modelFiles(files: readonly string[]): readonly string[] {
  if (files.length >= FEWEST && files.length <= MOST) return files;
  const found = files.length === 0 ? 'nothing' : `${files.length} words`;
  throw new BadInput(
    `${about('compare', 'MODEL')}: found ${found}, wanted the names of two to four model files`,
  );
}

/** The number as it is shown, so that what reads equal is equal. */
function shown(value: number, { kind }: ComparedRow): number {
  return Number(rounded(value, DIGITS[kind]));
}

/** "A", "B", …: what the table calls a design. */
function letter(index: number): string {
  return LETTERS[index] ?? '';
}

/** What differs, in words; null where nothing does, and no words where only one of the two is a number. */
function wordsOf(row: ComparedRow, base: number | string, value: number | string): string | null {
  if (typeof base !== 'number' || typeof value !== 'number') {
    return typeof base === typeof value ? null : '';
  }
  const digits = DIGITS[row.kind];
  const amount = rounded(Math.abs(value - base), digits);
  if (Number(amount) === 0) return null;
  const unit = FILE_UNITS[row.kind];
  const counted = unit === '1' ? amount : `${amount} ${unit}`;
  return differenceWords(row.key, shown(base, row), shown(value, row), counted);
}

const LABEL_WIDTH = 24;
const UNIT_WIDTH = 7;
const LEAST_WIDTH = 12;

function cellText(cell: number | string, { kind }: ComparedRow): string {
  return typeof cell === 'number' ? rounded(cell, DIGITS[kind]) : cell;
}

/** Width of a design's column: its widest cell. */
function cellWidth(designs: readonly Design[]): number {
  const widths = STATIONS.flatMap((station) =>
    COMPARED_ROWS.flatMap((row) =>
      designs.map(({ measured }) => cellText(comparedCell(measured, station, row), row).length),
    ),
  );
  return 2 + Math.max(LEAST_WIDTH, ...widths);
}

function rowLine(
  row: ComparedRow,
  cells: readonly (number | string)[],
  width: number,
  isBrief: boolean,
): string | null {
  const [base = ''] = cells;
  const words = cells.slice(1).map((cell) => wordsOf(row, base, cell));
  if (isBrief && words.every((each) => each === null)) return null;
  const numbers = cells.map((cell) => cellText(cell, row).padStart(width)).join('');
  const unit = FILE_UNITS[row.kind].replace(/^1$/, '').padEnd(UNIT_WIDTH);
  const said = words
    .map((each, at) => (cells.length === 2 ? each : each && `${letter(at + 1)} ${each}`))
    .filter(Boolean)
    .join('; ');
  return `  ${row.label.padEnd(LABEL_WIDTH)}${unit}${numbers}  ${said}`.trimEnd();
}

function stationLines(
  designs: readonly Design[],
  station: Station,
  width: number,
  isBrief: boolean,
): readonly string[] {
  const notes = designs.flatMap(({ measured }, at) => {
    const words = unreachedWords(measured, station);
    return words === null ? [] : [`  ${letter(at)} ${words}`];
  });
  const groups = new Map<string, string[]>();
  for (const row of COMPARED_ROWS) {
    const cells = designs.map(({ measured }) => comparedCell(measured, station, row));
    // What no design has the parts for is not worth a line.
    if (cells.every((cell) => typeof cell === 'string')) continue;
    const line = rowLine(row, cells, width, isBrief);
    if (line === null) continue;
    const title = GROUP_TITLES[row.group];
    groups.set(title, [...(groups.get(title) ?? []), line]);
  }
  const heads = designs.map((_, at) => letter(at).padStart(width)).join('');
  const title = STATION_LABELS[station].toUpperCase().padEnd(LABEL_WIDTH + UNIT_WIDTH + 2);
  const body = [...groups].flatMap(([name, lines]) => [name, ...lines]);
  return ['', `${title}${heads}`, ...notes, ...(body.length === 0 ? ['  nothing differs'] : body)];
}

function table(designs: readonly Design[], isBrief: boolean): string {
  const names = designs.map(
    ({ file, measured }, at) => `${letter(at)}  ${escaped(measured.model.name)} (${escaped(file)})`,
  );
  const width = cellWidth(designs);
  const stations = STATIONS.flatMap((station) => stationLines(designs, station, width, isBrief));
  return [
    ...names,
    'Differences are from A. Ends of travel and locks are those of each model.',
    ...stations,
    '',
  ].join('\n');
}

function jsonRow(designs: readonly Design[], station: Station, row: ComparedRow) {
  const cells = designs.map(({ measured }) => comparedCell(measured, station, row));
  const [base] = cells;
  return {
    key: row.key,
    unit: FILE_UNITS[row.kind],
    values: cells.map((cell) => (typeof cell === 'number' ? cell + 0 : null)),
    lacking: cells.map((cell) => (typeof cell === 'string' ? cell : null)),
    differences: cells.map((cell) =>
      typeof cell === 'number' && typeof base === 'number' ? cell - base + 0 : null,
    ),
  };
}

/** True when the row says that a design differs from the first, as the table decides it. */
function differs(designs: readonly Design[], station: Station, row: ComparedRow): boolean {
  const [base = '', ...others] = designs.map(({ measured }) =>
    comparedCell(measured, station, row),
  );
  return others.some((cell) => wordsOf(row, base, cell) !== null);
}

function json(designs: readonly Design[], isBrief: boolean): string {
  const answer = {
    designs: designs.map(({ file, measured }) => ({ file, name: measured.model.name })),
    stations: STATIONS.map((station) => ({
      station,
      places: designs.map(({ measured }) => {
        const { place, outcome } = measured.stations[station];
        if (place === null) return null;
        const { travel, rack } = place;
        return outcome === 'reached'
          ? { travel, rack, reached: true }
          : { travel, rack, reached: false, fails: outcome };
      }),
      rows: COMPARED_ROWS.filter((row) => !isBrief || differs(designs, station, row)).map((row) =>
        jsonRow(designs, station, row),
      ),
    })),
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}

/** Names that tell the designs apart in a file, also where two models are called alike. */
function namesFor(designs: readonly Design[]): readonly string[] {
  return designs.map(({ measured }, at) => `${letter(at)} ${measured.model.name}`);
}

function isReached({ measured }: Design): boolean {
  return STATIONS.every((station) => measured.stations[station].outcome === 'reached');
}

export const compare: Verb = {
  name: 'compare',
  summary: 'compare MODEL …    two to four designs side by side, differences in words',
  help,
  run: (words, write) => {
    const { files, flags } = sortWords('compare', words, { differing: {}, csv: {}, json: {} });
    const [isCsv, isJson, isBrief] = [flags.has('csv'), flags.has('json'), flags.has('differing')];
    if (isCsv && isJson) {
      throw new BadInput(`${about('compare', '--csv')}: found --json too, wanted one of the two`);
    }
    if (isCsv && isBrief) {
      throw new BadInput(
        `${about('compare', '--differing')}: found --csv too, wanted one of the two: a CSV holds every measure`,
      );
    }
    const models = modelFiles(files).map((file) => ({ file, model: loadModel(file) }));
    const designs = models.map(({ file, model }) => ({ file, measured: measureDesign(model) }));
    const names = namesFor(designs);
    const named = designs.map(({ measured }, at) => ({ name: names[at] ?? '', measured }));
    if (isCsv) write(comparisonCsv(named, 0));
    else write(isJson ? json(designs, isBrief) : table(designs, isBrief));
    return designs.every(isReached) ? 0 : 1;
  },
};
