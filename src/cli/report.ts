/** armscribe report MODEL: the papers for the shop, as files in a folder. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  assemble,
  createMargins,
  cycleGrid,
  escaped,
  type Model,
  quoted,
} from '../../solver/index.ts';
import { cutListCsv, cutListTable, drawingsOf } from '../paper/drawing/drawings.ts';
import { drawingDxf } from '../paper/drawing/dxf.ts';
import { drawingSvg } from '../paper/drawing/svg.ts';
import { tiledDocument } from '../paper/drawing/tiles.ts';
import { paperDocument } from '../paper/page.ts';
import { PAPER_SIZES, type PaperSize } from '../paper/paperSize.ts';
import { sheetsOf, tablesOf } from '../paper/sheets.ts';
import type { PaperSettings } from '../paper/source.ts';
import type { LengthUnit } from '../words/lengthUnit.ts';
import { loadModel } from './files.ts';
import { loadMeshes } from './meshes.ts';
import { unreachedLine } from './print.ts';
import { BadInput, type Verb } from './refusal.ts';
import { about, oneFile, sortWords, type Words } from './words.ts';

const help = `armscribe report MODEL --out DIR [--paper P] [--unit U] [--date D]

Writes the papers for the shop into a folder, which is made where there is none: set-up
sheet, alignment sheet (filled, and blank to fill by hand), cycle sheet, inspector's note
and curves as HTML that any browser prints, the curves and the cut list (nothing deducted)
as CSV, and drawings of arms and tie rod for both hands: full size over pages as HTML, and
as SVG and DXF.
  --out DIR    the folder; files of the same names in it are replaced
  --paper P    a4 (default) or letter
  --unit U     mm (default), inch or sixteenth (inches to the nearest 1/16)
  --date D     the date on the papers, YYYY-MM-DD (default today)
Prints the name of each file written. Exit status 1 when the corner cannot be assembled;
2 when the folder or a file in it cannot be written.
`;

const OPTIONS = {
  out: { value: 'a folder' },
  paper: { value: 'a4 or letter' },
  unit: { value: 'mm, inch or sixteenth' },
  date: { value: 'YYYY-MM-DD' },
} as const;

const PAPER_NAMES = Object.keys(PAPER_SIZES) as readonly PaperSize[];
const UNIT_NAMES: readonly LengthUnit[] = ['mm', 'inch', 'sixteenth'];

function oneOf<T extends string>(words: Words, name: string, wanted: readonly T[]): T {
  const text = words.values.get(name);
  if (text === undefined) return wanted[0]!;
  const found = wanted.find((each) => each === text);
  if (found !== undefined) return found;
  throw new BadInput(
    `${about('report', `--${name}`)}: found ${quoted(text)}, wanted ${OPTIONS[name as 'paper' | 'unit'].value}`,
  );
}

/** Today where the person is, as ISO 8601 writes a date. */
function today(): string {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function dateOf({ values }: Words): string {
  const text = values.get('date');
  if (text === undefined) return today();
  const time = /^\d{4}-\d\d-\d\d$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  const isDay = !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
  if (isDay) return text;
  throw new BadInput(
    `${about('report', '--date')}: found ${quoted(text)}, wanted a day as YYYY-MM-DD`,
  );
}

function folderOf({ values }: Words): string {
  const out = values.get('out');
  if (out !== undefined) return out;
  throw new BadInput(`${about('report', '--out')}: found nothing, wanted a folder to write into`);
}

/** What stands in the way of writing, by the system's code. */
const OBSTRUCTIONS: Readonly<Record<string, string>> = {
  EACCES: 'a place that may not be written to',
  EPERM: 'a place that may not be written to',
  EROFS: 'a file system that may only be read',
  ENOSPC: 'no room left',
  EEXIST: 'a file that is no folder',
  ENOTDIR: 'a path through something that is no folder',
  EISDIR: 'a folder of that name',
  ENAMETOOLONG: 'a name too long for a file',
};

function writing(path: string, wanted: string, write: () => void): void {
  try {
    write();
  } catch (thrown) {
    const code = (thrown as NodeJS.ErrnoException).code ?? '';
    const found = OBSTRUCTIONS[code] ?? `what cannot be written (${code || 'unknown'})`;
    throw new BadInput(
      `${about('report', '--out')}: ${quoted(path)}: found ${found}, wanted ${wanted}`,
    );
  }
}

interface FileText {
  readonly name: string;
  readonly text: string;
}

/** Full-size drawings of both hands, tiled for the paper and as SVG and DXF; the cut list, nothing deducted. */
function drawingFiles(model: Model, { paper, unit: shown, date }: PaperSettings): FileText[] {
  const unit = shown === 'mm' ? 'mm' : 'inch';
  const drawings = (['left', 'right'] as const).flatMap((hand) =>
    drawingsOf(model, { unit, hand, date }),
  );
  return [
    ...drawings.flatMap((drawing) => [
      { name: `${drawing.key}.svg`, text: drawingSvg(drawing) },
      { name: `${drawing.key}.dxf`, text: drawingDxf(drawing) },
      { name: `${drawing.key}-full-size.html`, text: tiledDocument(drawing, paper) },
    ]),
    { name: 'cut-list.csv', text: cutListCsv(cutListTable(model, unit)) },
  ];
}

function filesOf(model: Model, file: string, settings: PaperSettings): FileText[] {
  const margins = createMargins(assemble(model), { meshes: loadMeshes(model, file) });
  const cycle = cycleGrid(margins);
  const name = model.name === '' ? 'Without a name' : model.name;
  return [
    ...sheetsOf(model, cycle, settings).map((sheet) => ({
      name: `${sheet.key}.html`,
      text: paperDocument(`${sheet.title}: ${name}`, [sheet], settings),
    })),
    ...tablesOf(model, cycle, settings).map(({ key, csv }) => ({ name: `${key}.csv`, text: csv })),
    ...drawingFiles(model, settings),
  ];
}

export const report: Verb = {
  name: 'report',
  summary: 'report MODEL     papers for the shop, written into a folder',
  help,
  run: (words, write) => {
    const sorted = sortWords('report', words, OPTIONS);
    const file = oneFile('report', sorted);
    const folder = folderOf(sorted);
    const settings: PaperSettings = {
      paper: oneOf(sorted, 'paper', PAPER_NAMES),
      unit: oneOf(sorted, 'unit', UNIT_NAMES),
      date: dateOf(sorted),
    };
    const model = loadModel(file);
    const { broken } = assemble(model).linkage;
    if (broken !== null) {
      write(`${unreachedLine({ fails: broken, lastTravel: 0, lastRack: 0 })}\n`);
      return 1;
    }
    const files = filesOf(model, file, settings);
    writing(folder, 'a folder that can be written to', () =>
      mkdirSync(folder, { recursive: true }),
    );
    for (const { name, text } of files) {
      const path = join(folder, name);
      writing(path, 'a file that can be written', () => writeFileSync(path, text));
      write(`${escaped(path)}\n`);
    }
    return 0;
  },
};
