/** armscribe sweep MODEL: a table of poses, travel outer, rack inner. */
import { assemble, escaped, type Model, poseReport } from '../../solver/index.ts';
import {
  type Answer,
  csvField,
  isReached,
  measureColumns,
  OUTSIDE_COLUMN,
  POSE_COLUMNS,
  valueAt,
} from './columns.ts';
import { loadModel } from './files.ts';
import { rounded } from './print.ts';
import { MOST_POSES, parseRange, stepped } from './range.ts';
import { BadInput, type Verb, type Write } from './refusal.ts';
import { INPUT_ROWS, MEASURE_ROWS } from './rows.ts';
import { about, oneFile, sortWords, type Words } from './words.ts';

const help = `armscribe sweep MODEL [--travel A:B:STEP] [--rack A:B:STEP] [--csv | --json]

A table of poses, travel in the outer loop and rack in the inner, both ends included.
  --travel A:B:STEP   wheel travel, mm (default: the model's whole travel in steps of 10)
  --rack A:B:STEP     rack displacement, mm (default 0)
  --csv               every measure, names and units in the first line, unrounded
  --json              a list of the objects of "pose --json"
A single number is a range of one. The last step is shorter where STEP does not
divide the range; its sign is ignored. Exit status 1 when a pose cannot be reached.
`;

const RANGE = { value: 'A:B:STEP (mm)' };
const OPTIONS = { travel: RANGE, rack: RANGE, csv: {}, json: {} } as const;

/** Step of the default sweep over the model's whole travel, mm. */
const DEFAULT_STEP = 10;

/** Prints the poses of one sweep in one of the three forms. */
interface Printer {
  readonly begin: string;
  readonly between: string;
  readonly end: string;
  readonly line: (answer: Answer) => string;
}

function csvPrinter(design: Answer): Printer {
  const measures = isReached(design) ? [...measureColumns(design), OUTSIDE_COLUMN] : [];
  const columns = [...POSE_COLUMNS, ...measures];
  return {
    begin: `${columns.map(({ header }) => csvField(header)).join(',')}\n`,
    between: '\n',
    end: '\n',
    line: (answer) => columns.map(({ read }) => csvField(read(answer))).join(','),
  };
}

const JSON_PRINTER: Printer = {
  begin: '[\n',
  between: ',\n',
  end: '\n]\n',
  line: (answer) => JSON.stringify(answer),
};

const READABLE_KEYS = [
  'travel',
  'rack',
  'camber',
  'toe',
  'caster',
  'steerAngle',
  'scrubRadius',
  'halfTrack',
  'bumpSteer',
  'rollCentreHeight',
  'motionRatio',
];

function readablePrinter(model: Model, design: Answer): Printer {
  const rows = [...INPUT_ROWS, ...MEASURE_ROWS].filter(
    ({ key }) =>
      READABLE_KEYS.includes(key) &&
      (valueAt(design, key) !== undefined || key === 'travel' || key === 'rack'),
  );
  const width = (label: string) => Math.max(label.length, 9) + 2;
  const cells = (texts: readonly string[]) =>
    texts.map((text, index) => text.padStart(width(rows[index]?.label ?? ''))).join('');
  const line = (answer: Answer): string => {
    const shown = rows.map(({ key, digits }) => {
      const value = valueAt(answer, key);
      return typeof value === 'number' ? rounded(value, digits) : '';
    });
    if (isReached(answer)) return cells(shown);
    return `${cells(shown.slice(0, INPUT_ROWS.length))}  not reached: ${answer['fails']} cannot be kept`;
  };
  const labels = cells(rows.map(({ label }) => label));
  const units = cells(rows.map(({ unit }) => unit));
  return {
    begin: `${escaped(model.name)}\n\n${labels}\n${units}\n`,
    between: '\n',
    end: '\n',
    line,
  };
}

function printer({ flags }: Words, model: Model, design: Answer): Printer {
  if (flags.has('json')) return JSON_PRINTER;
  return flags.has('csv') ? csvPrinter(design) : readablePrinter(model, design);
}

function ranges({ values }: Words): {
  travels: readonly number[] | undefined;
  racks: readonly number[];
} {
  const read = (name: 'travel' | 'rack') => {
    const text = values.get(name);
    return text === undefined ? undefined : parseRange(text, about('sweep', `--${name}`));
  };
  return { travels: read('travel'), racks: read('rack') ?? [0] };
}

function refuseTooMany(poses: number): void {
  if (poses <= MOST_POSES) return;
  throw new BadInput(
    `${about('sweep', '--travel, --rack')}: found ${poses} poses, wanted at most ${MOST_POSES}`,
  );
}

/** Writes the poses; answers whether all were reached. */
function printAll(
  answers: Iterable<Answer>,
  { begin, between, end, line }: Printer,
  write: Write,
): boolean {
  write(begin);
  let isAllReached = true;
  let before = '';
  for (const answer of answers) {
    write(before + line(answer));
    before = between;
    isAllReached &&= isReached(answer);
  }
  write(end);
  return isAllReached;
}

export const sweep: Verb = {
  name: 'sweep',
  summary: 'sweep MODEL        a table of poses over travel and rack',
  help,
  run: (words, write) => {
    const sorted = sortWords('sweep', words, OPTIONS);
    const file = oneFile('sweep', sorted);
    if (sorted.flags.size === 2) {
      throw new BadInput(`${about('sweep', '--csv')}: found --json too, wanted one of the two`);
    }
    const { travels: stated, racks } = ranges(sorted);
    refuseTooMany((stated?.length ?? 1) * racks.length);
    const model = loadModel(file);
    const { bump, droop } = model.travel;
    const travels = stated ?? stepped(-droop, bump, DEFAULT_STEP) ?? [];
    refuseTooMany(travels.length * racks.length);
    const linkage = assemble(model);
    const answerAt = (travel: number, rack: number): Answer => {
      return { travel, rack, ...poseReport(linkage, travel, rack) };
    };
    function* answers(): Generator<Answer> {
      for (const travel of travels) for (const rack of racks) yield answerAt(travel, rack);
    }
    const form = printer(sorted, model, answerAt(0, 0));
    return printAll(answers(), form, write) ? 0 : 1;
  },
};
