/** How well the answers of a pose are known, as a table; what their labels and units are. */
import {
  type AnswerKey,
  type DrawnAnswer,
  decimalsKnown,
  escaped,
  FILE_UNITS,
  GRADES,
  inputSigma,
  type Knowledge,
  type KnownAnswer,
  type KnownKey,
  type Model,
  type MonteCarlo,
  measureAgain,
  measureRow,
} from '../../solver/index.ts';
import { rounded } from './print.ts';

/** What a grade may be called. */
export const GRADE_NAMES: string = GRADES.map(({ name }) => name).join(', ');

const TOE_LABELS: Readonly<Record<Exclude<KnownKey, AnswerKey>, string>> = {
  toeToBump: 'toe change to bump',
  toeToDroop: 'toe change to droop',
  toeChange: 'toe change over travel',
};

/** Label and unit of an answer. */
export function labelOf(key: KnownKey): { readonly label: string; readonly unit: string } {
  if (key in TOE_LABELS) return { label: TOE_LABELS[key as 'toeChange'], unit: 'deg' };
  const { label, kind } = measureRow(key as AnswerKey);
  return { label, unit: FILE_UNITS[kind].replace(/^1$/, '') };
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
  const least = uncertainty > 0 ? uncertainty : Math.max(1e-3 * Math.abs(value), 1e-6);
  return Math.min(MOST_DIGITS, Math.max(0, decimalsKnown(least, 2)));
}

/** One standard uncertainty, as on the page; in a word where nothing uncertain moves the number, or no derivative tells. */
function plusMinus(uncertainty: number, number: (value: number) => string): string {
  if (Number.isNaN(uncertainty)) return 'not known';
  return uncertainty === 0 ? 'exact' : number(uncertainty);
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

/** The answers line by line, with what spoils them; beside them what was drawn. */
export function uncertaintyTable(
  model: Model,
  knowledge: Knowledge,
  drawn: MonteCarlo | null,
): string {
  const found = drawn && new Map(drawn.answers.map((answer) => [answer.key, answer]));
  const head = ['value', '±'].map((word) => word.padStart(NUMBER_WIDTH)).join('');
  const between = drawn === null ? '' : '95 of 100 drawn'.padStart(2 * NUMBER_WIDTH + 8);
  const lines = (Object.entries(knowledge.answers ?? {}) as [KnownKey, KnownAnswer][]).map(
    ([key, answer]) => line(knowledge, key, answer, found),
  );
  return [
    `${escaped(model.name)}: travel ${knowledge.travel} mm, rack ${knowledge.rack} mm`,
    '± is one standard uncertainty: it holds in about two of three cases, twice as much in 95 of 100',
    '',
    `  ${' '.repeat(LABEL_WIDTH)}${head}${between}`,
    ...lines,
    '',
    `${drawn === null ? '' : drawnWords(drawn)}${basis(model, knowledge)}`,
    '',
  ].join('\n');
}
