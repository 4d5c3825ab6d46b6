/** Writes one reading to the page: only what changed since it was last written, and no React on the way. */
import {
  type Corner,
  inWords,
  isOutside,
  type Limit,
  limitsOf,
  type MeasureRow,
  missingParts,
} from '../../solver/index.ts';
import { posed } from '../state/bench.ts';
import { allKnown, isKnown, type KnownTable, knownOf } from '../state/known.ts';
import { type FigureStyle, figureDifference, figureNumber, figureSteps } from '../words/figures.ts';
import { limitLine, roomLeft } from './limitWords.ts';
import { isAssumedCentred, readingBefore, readingNow } from './readings.ts';

/** Where the parts of a reading are written. */
export interface ReadingParts {
  readonly root: HTMLElement;
  readonly number: HTMLElement;
  readonly unit: HTMLElement;
  readonly spread: HTMLElement;
  readonly words: HTMLElement;
  readonly change: HTMLElement;
  readonly limit: HTMLElement | null;
}

/** What stands around a difference. */
export interface ChangeWords {
  readonly before: string;
  readonly after: string;
  /** Left out where the figure's own unit stands right above. */
  readonly hasUnit: boolean;
}

export const ABSENT = '–';

function set(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

function absentWords(corner: Corner, row: MeasureRow): string {
  const missing = missingParts(corner.model, row);
  return missing.length > 0
    ? `needs ${missing.join(' and ')}`
    : (row.absent ?? 'none in this pose');
}

function changeText(count: number, style: FigureStyle, words: ChangeWords): string {
  if (Number.isNaN(count)) return '';
  const unit = words.hasUnit ? style.unit : '';
  return `${words.before}${figureDifference(count, style)}${unit}${words.after}`;
}

/** Makes the frame callback that keeps a reading up to date. */
export function createReading(
  parts: ReadingParts,
  row: MeasureRow,
  style: FigureStyle,
  change: ChangeWords,
): () => void {
  let corner: Corner | null = null;
  let limits: readonly Limit[] = [];
  let figure = style;
  let spread = '';
  let known: KnownTable | null = null;
  let shown: number | undefined;
  let shownChange: number | undefined;
  let shownLeft: number | undefined;
  let note = '';

  /** Another model: its parts and limits are looked up once. */
  function meet(next: Corner): void {
    corner = next;
    limits = parts.limit === null ? [] : limitsOf(next.model).filter(({ of }) => of === row.key);
    note = isAssumedCentred(row.key) ? 'assumed centred as measured' : '';
    shown = undefined;
    shownLeft = undefined;
  }

  /** More or less is known: the digits and the ± are others. Differences keep all digits, being known better. */
  function learn(): void {
    known = allKnown();
    const now = knownOf(row.key);
    figure = now?.figure ?? style;
    spread = now?.spread ?? '';
    parts.root.toggleAttribute('data-known', isKnown());
    shown = undefined;
  }

  function writeValue(next: Corner, count: number): void {
    const isAbsent = Number.isNaN(count);
    set(parts.number, isAbsent ? ABSENT : figureNumber(count, figure));
    set(parts.unit, isAbsent ? '' : figure.unit);
    set(parts.spread, isAbsent ? '' : spread);
    parts.root.toggleAttribute('data-spread', !isAbsent && spread !== '');
    set(parts.words, isAbsent ? absentWords(next, row) : (inWords(row, count) ?? ''));
    parts.root.toggleAttribute('data-absent', isAbsent);
  }

  function writeLimit(limit: HTMLElement, value: number): void {
    set(limit, [limitLine(limits, value, style), note].filter(Boolean).join('; '));
    parts.root.toggleAttribute(
      'data-outside',
      limits.some((one) => isOutside(one, value)),
    );
  }

  return () => {
    const next = posed.current().corner;
    if (next !== corner) meet(next);
    if (allKnown() !== known) learn();
    const value = readingNow(row.key);
    const count = figureSteps(value, figure);
    if (!Object.is(count, shown)) {
      shown = count;
      writeValue(next, count);
    }
    const changed = figureSteps(value - readingBefore(row.key), style);
    if (!Object.is(changed, shownChange)) {
      shownChange = changed;
      set(parts.change, changeText(changed, style, change));
    }
    if (parts.limit === null) return;
    const left = roomLeft(limits, value);
    const leftSteps = left < 0 ? Math.min(-1, figureSteps(left, style)) : figureSteps(left, style);
    if (Object.is(leftSteps, shownLeft)) return;
    shownLeft = leftSteps;
    writeLimit(parts.limit, value);
  };
}
