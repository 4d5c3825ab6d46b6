/** Answers as a person reads them: aligned, rounded, with units, and signs in plain words. */
import { escaped } from '../../solver/index.ts';
import { type Answer, valueAt } from './columns.ts';
import { INPUT_ROWS, MEASURE_ROWS, type Row } from './rows.ts';

const LABEL_WIDTH = 24;
const NUMBER_WIDTH = 12;
const UNIT_WIDTH = 7;

/** A number to so many digits; what rounds to zero has no sign. */
export function rounded(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** What the value's sign means; nothing for a value that reads as zero. */
function meaning(row: Row, value: number): string {
  if (!row.words) return '';
  const shown = Number(value.toFixed(row.digits));
  if (shown === 0) return '';
  return shown > 0 ? row.words[0] : row.words[1];
}

function line(row: Row, value: unknown): string {
  const label = row.label.padEnd(LABEL_WIDTH);
  if (value === null) return `  ${label}${'none'.padStart(NUMBER_WIDTH)}`;
  const numbers = (Array.isArray(value) ? value : [value]) as readonly number[];
  const shown = numbers
    .map((number) => rounded(number, row.digits).padStart(NUMBER_WIDTH))
    .join('');
  const words = numbers.length === 1 ? meaning(row, numbers[0] ?? 0) : '';
  const unit = row.unit === '1' ? '' : row.unit;
  return `  ${label}${shown} ${unit.padEnd(UNIT_WIDTH)} ${words}`.trimEnd();
}

function linesOf(row: Row, answer: Answer): readonly string[] {
  const value = valueAt(answer, row.key);
  if (value === undefined) return [];
  if (row.shape !== 'points') return [line(row, value)];
  return (value as readonly unknown[]).map((point, index) =>
    line({ ...row, label: `${row.label} ${index + 1}` }, point),
  );
}

/** "travel 50 mm, rack -12 mm". */
export function inputs(answer: Answer): string {
  return INPUT_ROWS.map(({ key, label, unit }) => `${label} ${valueAt(answer, key)} ${unit}`).join(
    ', ',
  );
}

/** A pose that cannot be reached, in words. */
export function unreachedLine(answer: Answer): string {
  const [travel, rack] = [answer['lastTravel'], answer['lastRack']].map((last) =>
    rounded(Number(last), 2),
  );
  return `Not reached: ${answer['fails']} cannot be kept; the last reachable pose on the way is travel ${travel} mm, rack ${rack} mm.`;
}

/** A reached pose as a table in groups. */
export function poseTable(name: string, answer: Answer): string {
  const groups = new Map<string, string[]>();
  for (const row of [...INPUT_ROWS, ...MEASURE_ROWS]) {
    const lines = linesOf(row, answer);
    if (lines.length === 0) continue;
    groups.set(row.group, [...(groups.get(row.group) ?? []), ...lines]);
  }
  const outside = answer['outside'] as readonly string[];
  const limits = outside.length === 0 ? 'none' : outside.join(', ');
  return [
    escaped(name),
    ...[...groups].map(([group, lines]) => `\n${group}\n${lines.join('\n')}`),
    `\nOutside of its limits: ${limits}\n`,
  ].join('\n');
}
