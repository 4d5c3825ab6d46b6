/** armscribe uncertainty MODEL: how well every answer is known, and what spoils it most. */
import {
  type AnswerKey,
  assemble,
  createSensitivities,
  type DrawnAnswer,
  decimalsKnown,
  escaped,
  FILE_UNITS,
  GRADES,
  inputSigma,
  inputSigmas,
  type Knowledge,
  type KnownAnswer,
  type KnownKey,
  knowledgeAt,
  type Model,
  type MonteCarlo,
  measureAgain,
  measureRow,
  monteCarlo,
  poseReport,
  quoted,
  withGrade,
} from '../../solver/index.ts';
import { rideTravel } from '../../solver/model/defaults.ts';
import type { Answer } from './columns.ts';
import { loadModel } from './files.ts';
import { rounded, unreachedLine } from './print.ts';
import { parseMillimetres } from './range.ts';
import { BadInput, type Verb } from './refusal.ts';
import { about, oneFile, sortWords, type Words } from './words.ts';

const GRADE_NAMES = GRADES.map(({ name }) => name).join(', ');

const help = `armscribe uncertainty MODEL [--travel T] [--rack R] [--grade GRADE] [--draws N] [--json]

How well every measure of a pose is known from what the model states in tolerance, and
which points spoil it most. Uncertainties are combined as in JCGM 100 (the Guide to the
expression of uncertainty in measurement): exact derivatives, inputs independent of each
other. The table gives two standard uncertainties, which hold in about 95 of 100 cases.
  --travel T     wheel travel from the design pose, mm (default the ride height)
  --rack R       rack displacement, mm (default 0)
  --grade GRADE  takes for what is not stated how well a coordinate or an angle is
                 measured by one of ${GRADE_NAMES}
                 (common practice, no source)
  --draws N      checks it with N corners drawn at random (JCGM 101): the interval that
                 holds 95 of 100 of them, and whether the value ± agrees with it
  --json         one object with unrounded numbers; standard uncertainties
What is not stated is taken as exact. Exit status 1 when the pose cannot be reached.
`;

const OPTIONS = {
  travel: { value: 'a number of mm' },
  rack: { value: 'a number of mm' },
  grade: { value: `one of ${GRADE_NAMES}` },
  draws: { value: 'a whole number' },
  json: {},
} as const;

const TOE_LABELS: Readonly<Record<Exclude<KnownKey, AnswerKey>, string>> = {
  toeToBump: 'toe change to bump',
  toeToDroop: 'toe change to droop',
  toeChange: 'toe change over travel',
};

function labelOf(key: KnownKey): { readonly label: string; readonly unit: string } {
  if (key in TOE_LABELS) return { label: TOE_LABELS[key as 'toeChange'], unit: 'deg' };
  const { label, kind } = measureRow(key as AnswerKey);
  return { label, unit: FILE_UNITS[kind].replace(/^1$/, '') };
}

const LEAST_DRAWS = 100;
const MOST_DRAWS = 1_000_000;

function drawsOf({ values }: Words): number | null {
  const given = values.get('draws');
  if (given === undefined) return null;
  const draws = Number(given);
  if (/^\d+$/.test(given) && draws >= LEAST_DRAWS && draws <= MOST_DRAWS) return draws;
  throw new BadInput(
    `${about('uncertainty', '--draws')}: found ${quoted(given)}, wanted a whole number from ${LEAST_DRAWS} to ${MOST_DRAWS}`,
  );
}

function graded(model: Model, { values }: Words): Model {
  const given = values.get('grade');
  if (given === undefined) return model;
  const grade = GRADES.find(({ name }) => name === given);
  if (grade !== undefined) return withGrade(model, grade);
  throw new BadInput(
    `${about('uncertainty', '--grade')}: found ${quoted(given)}, wanted one of ${GRADE_NAMES}`,
  );
}

const LABEL_WIDTH = 24;
const NUMBER_WIDTH = 11;
const SPOILERS = 2;
/** Most digits after the point that a table shows. */
const MOST_DIGITS = 6;

/** What of the variance the first points are to blame for: "Tie rod, inner joint 40 %". */
function blame(knowledge: Knowledge, answer: KnownAnswer): string {
  if (!(answer.uncertainty > 0)) return '';
  return measureAgain(knowledge, answer)
    .points.slice(0, SPOILERS)
    .map(({ label, share }) => `${label} ${rounded(100 * share, 0)} %`)
    .join('; ');
}

/** Digits after the point: two significant ones of the ±; of a number known exactly, five of its own. */
function digitsOf({ value, uncertainty }: KnownAnswer): number {
  const least = uncertainty > 0 ? 2 * uncertainty : Math.max(1e-3 * Math.abs(value), 1e-6);
  return Math.min(MOST_DIGITS, Math.max(0, decimalsKnown(least, 2)));
}

/** Two standard uncertainties; in a word where nothing uncertain moves the number, or no derivative tells. */
function plusMinus(uncertainty: number, number: (value: number) => string): string {
  if (Number.isNaN(uncertainty)) return 'not known';
  return uncertainty === 0 ? 'exact' : number(2 * uncertainty);
}

const VERDICT_WIDTH = 8;

/** The interval that was drawn, and whether value and ± agree with it; blank where an answer was not drawn. */
function drawnCells(drawn: DrawnAnswer | undefined, number: (value: number) => string): string {
  if (drawn === undefined) return ' '.repeat(2 * NUMBER_WIDTH + 1 + VERDICT_WIDTH);
  const verdict = drawn.isLinearGood ? 'agrees' : 'differs';
  return `${number(drawn.low)}${number(drawn.high)} ${verdict.padEnd(VERDICT_WIDTH)}`;
}

function line(
  knowledge: Knowledge,
  key: KnownKey,
  answer: KnownAnswer,
  drawn: ReadonlyMap<KnownKey, DrawnAnswer> | null,
): string {
  const { label, unit } = labelOf(key);
  const { value, uncertainty } = answer;
  const digits = digitsOf(answer);
  const number = (each: number): string => rounded(each, digits).padStart(NUMBER_WIDTH);
  const known = plusMinus(uncertainty, number).padStart(NUMBER_WIDTH);
  const check = drawn === null ? '' : drawnCells(drawn.get(key), number);
  return `  ${label.padEnd(LABEL_WIDTH)}${number(value)}${known} ${unit.padEnd(7)}${check}${blame(knowledge, answer)}`.trimEnd();
}

/** What the numbers rest on, so that nobody takes an input for measured that is not. */
function basis(model: Model, { inputs }: Knowledge): string {
  const silent = inputs.filter((input) => inputSigma(model, input) === null);
  if (silent.length === inputs.length) {
    return `The model states no uncertainty: every number counts as exact. --grade takes one of ${GRADE_NAMES}.`;
  }
  if (silent.length === 0) return 'Every input has its uncertainty stated.';
  return `Not stated, taken as exact: ${silent.map(({ label }) => escaped(label)).join('; ')}.`;
}

function drawnWords({ draws, unbuilt }: MonteCarlo): string {
  const left = unbuilt === 0 ? '' : `; ${unbuilt} of them make no corner that reaches the pose`;
  return `Checked with ${draws} corners drawn at random${left}.\n`;
}

function table(model: Model, knowledge: Knowledge, drawn: MonteCarlo | null): string {
  const found = drawn && new Map(drawn.answers.map((answer) => [answer.key, answer]));
  const head = ['value', '±'].map((word) => word.padStart(NUMBER_WIDTH)).join('');
  const between = drawn === null ? '' : '95 of 100 drawn'.padStart(2 * NUMBER_WIDTH + 8);
  const lines = (Object.entries(knowledge.answers ?? {}) as [KnownKey, KnownAnswer][]).map(
    ([key, answer]) => line(knowledge, key, answer, found),
  );
  return [
    `${escaped(model.name)}: travel ${knowledge.travel} mm, rack ${knowledge.rack} mm`,
    '± is two standard uncertainties: it holds in about 95 of 100 cases',
    '',
    `  ${' '.repeat(LABEL_WIDTH)}${head}${between}`,
    ...lines,
    '',
    `${drawn === null ? '' : drawnWords(drawn)}${basis(model, knowledge)}`,
    '',
  ].join('\n');
}

function json(knowledge: Knowledge, drawn: MonteCarlo | null): string {
  const { travel, rack, inputs, sigmas } = knowledge;
  const answers = Object.entries(knowledge.answers ?? {}).map(([key, answer]) => {
    const { value, uncertainty, slopes } = answer;
    const unit = labelOf(key as KnownKey).unit || '1';
    // A slope that does not exist is null in JSON.
    return [key, { unit, value, uncertainty, slopes: [...slopes] }];
  });
  return `${JSON.stringify(
    {
      travel,
      rack,
      inputs: inputs.map(({ key, unit, label }, i) => ({ key, unit, label, sigma: sigmas[i] })),
      answers: Object.fromEntries(answers),
      ...(drawn === null ? {} : { drawn }),
    },
    null,
    2,
  )}\n`;
}

export const uncertainty: Verb = {
  name: 'uncertainty',
  summary: 'uncertainty MODEL  how well each measure is known, and which points spoil it',
  help,
  run: (words, write) => {
    const sorted = sortWords('uncertainty', words, OPTIONS);
    const file = oneFile('uncertainty', sorted);
    const draws = drawsOf(sorted);
    const read = (name: 'travel' | 'rack'): number | undefined => {
      const given = sorted.values.get(name);
      return given === undefined
        ? undefined
        : parseMillimetres(given, about('uncertainty', `--${name}`));
    };
    const [stated, rack] = [read('travel'), read('rack') ?? 0];
    const model = graded(loadModel(file), sorted);
    const travel = stated ?? rideTravel(model.travel);
    const corner = assemble(model);
    const made = createSensitivities(corner);
    const knowledge = knowledgeAt(made, inputSigmas(model, made.inputs), travel, rack);
    const isJson = sorted.flags.has('json');
    if (knowledge.answers === null) {
      const answer: Answer = { ...poseReport(corner, travel, rack) };
      write(isJson ? `${JSON.stringify(answer, null, 2)}\n` : `${unreachedLine(answer)}\n`);
      return 1;
    }
    const drawn = draws === null ? null : monteCarlo(model, { draws, travel, rack });
    write(isJson ? json(knowledge, drawn) : table(model, knowledge, drawn));
    return 0;
  },
};
