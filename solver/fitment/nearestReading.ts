/** A tyre size as it was typed: a size, or the size that was most likely meant and why it was not taken as it stands. */
import { parseTyreSize, type TyreSize } from '../model/tyre.ts';
import {
  FLOTATION_SERIES,
  METRIC_SERIES,
  offSeries,
  type Series,
  writtenSize,
} from './sizeSeries.ts';
import { type SizeTokens, sizeTokens, tidySize } from './sizeTokens.ts';

export type SizeReading =
  /** A size of the series, as written. */
  | { readonly kind: 'size'; readonly size: TyreSize }
  /** No such size as written: the nearest one. `asWritten` is there where the text is still a size by its grammar. */
  | {
      readonly kind: 'near';
      readonly size: TyreSize;
      readonly text: string;
      readonly why: string;
      readonly asWritten: boolean;
    }
  /** Nothing it could mean. */
  | { readonly kind: 'none'; readonly why: string };

type Form = TyreSize['form'];
type Numbers = readonly [number, number, number];

/** One way to take the three numbers. */
interface Guess {
  readonly form: Form;
  readonly numbers: Numbers;
  /** How much had to be changed; the least is the nearest reading. */
  readonly cost: number;
  readonly isReordered: boolean;
  readonly isScaled: boolean;
  /** Series a number had to be moved to. */
  readonly moved: readonly Series[];
}

/** Orders of three numbers with the cost of each: neighbours changed cost least. */
const ORDERS: readonly (readonly [readonly [number, number, number], number])[] = [
  [[0, 1, 2], 0],
  [[1, 0, 2], 2],
  [[0, 2, 1], 2],
  [[1, 2, 0], 3],
  [[2, 0, 1], 3],
  [[2, 1, 0], 4],
];

/** A point left out or a nought too few: what it costs to think so. */
const SCALES: readonly (readonly [number, number])[] = [
  [1, 0],
  [0.01, 2],
  [0.1, 3],
  [10, 3],
];
/** The other form than the one its marks speak for. */
const OTHER_FORM = 3;
const OFF_SERIES = 1;
/** Off the series by this part of the number, it is more likely another number. */
const FAR = 0.1;

interface Placed {
  readonly value: number;
  readonly cost: number;
  readonly isScaled: boolean;
  readonly moved: Series | null;
}

/** The number in its place of the size, scaled where it must be; null where it cannot stand there. */
function placed(number: number, series: Series): Placed | null {
  for (const [scale, cost] of SCALES) {
    const scaled = Math.round(number * scale * 1e6) / 1e6;
    const value = series.nearest(scaled);
    if (Math.abs(value - scaled) > FAR * value) continue;
    const isMoved = value !== scaled;
    return {
      value,
      cost: cost + (isMoved ? OFF_SERIES : 0),
      isScaled: scale !== 1,
      moved: isMoved ? series : null,
    };
  }
  return null;
}

function guess(form: Form, given: Numbers, order: (typeof ORDERS)[number]): Guess | null {
  const series = form === 'metric' ? METRIC_SERIES : FLOTATION_SERIES;
  const [places, orderCost] = order;
  const found = places.map((place, index) => placed(given[place]!, series[index]!));
  const [first, second, rim] = found;
  if (!first || !second || !rim) return null;
  if (form === 'flotation' && first.value < rim.value + 4) return null;
  const all = [first, second, rim];
  return {
    form,
    numbers: [first.value, second.value, rim.value],
    cost: orderCost + all.reduce((sum, { cost }) => sum + cost, 0),
    isReordered: orderCost > 0,
    isScaled: all.some(({ isScaled }) => isScaled),
    moved: all.flatMap(({ moved }) => (moved === null ? [] : [moved])),
  };
}

/** The form its marks speak for: a stroke is metric, a cross is flotation; without either a three-figure number is metric. */
function likelyForm(tidy: string, numbers: readonly number[]): Form {
  if (tidy.includes('/') && !tidy.includes('X')) return 'metric';
  if (tidy.includes('X') && !tidy.includes('/')) return 'flotation';
  return numbers.some((number) => number >= 125 && number < 600) ? 'metric' : 'flotation';
}

function bestGuess(likely: Form, given: Numbers): Guess | null {
  let best: Guess | null = null;
  for (const form of ['metric', 'flotation'] as const) {
    for (const order of ORDERS) {
      const found = guess(form, given, order);
      if (found === null) continue;
      const cost = found.cost + (form === likely ? 0 : OTHER_FORM);
      if (best === null || cost < best.cost) best = { ...found, cost };
    }
  }
  return best;
}

function sizeOf({ form, numbers: [first, second, code] }: Guess, service: SizeTokens['service']) {
  const rimDiameterCode = code;
  const size: TyreSize =
    form === 'metric'
      ? { form, service, width: first, aspect: second, rimDiameterCode }
      : {
          form,
          service: service === 'P' ? '' : service,
          overallDiameter: first,
          width: second,
          rimDiameterCode,
        };
  return size;
}

function orderWords(form: Form): string {
  return form === 'metric'
    ? 'the order is width in mm, aspect, rim code'
    : 'the order is diameter, width, rim code, all in inches';
}

function usualForm(text: string, form: Form): string {
  if (text.includes(',')) return 'its decimals follow a point, not a comma';
  return form === 'metric'
    ? 'a metric size is written width/aspect R rim'
    : 'a flotation size is written diameter x width R rim';
}

/** Why the text is not the size it was read as. */
function reasons(text: string, tokens: SizeTokens, found: Guess, addedRim: boolean): string[] {
  const words: string[] = [];
  if (addedRim) words.push(`the rim’s code is missing; the wheel’s is ${found.numbers[2]}`);
  if (found.isReordered) words.push(orderWords(found.form));
  if (tokens.isParted) words.push('its numbers run together');
  else if (found.isScaled) words.push('one of its numbers is ten or a hundred times off');
  words.push(...found.moved.map((series) => `tyres are made in ${series.words}`));
  const hasRadial = /\d\s*Z?R\s*\d/.test(text);
  if (!hasRadial && !addedRim && words.length === 0) {
    words.push('R stands before the rim’s code');
  }
  if (tokens.hasMore) words.push('what follows the rim’s code is no part of the size');
  if (words.length === 0) words.push(usualForm(text, found.form));
  return words;
}

function sentence(text: string, words: readonly string[]): string {
  return `There is no size written “${text.trim()}”: ${words.join('; ')}.`;
}

/** Two numbers that lack the rim's code, completed by the wheel's; null where it is another number that is missing. */
function withRim(numbers: readonly number[], likely: Form, rimCode: number | undefined) {
  const [first, second] = numbers;
  if (numbers.length !== 2 || rimCode === undefined) return null;
  if (first === undefined || second === undefined) return null;
  // A second number of 14 or more in whole inches is a rim's code: it is the width that is missing.
  if (likely === 'flotation' && second >= 14 && second % 1 === 0 && second < 100) return null;
  if (likely === 'metric' && second < 25) return null;
  return [first, second, rimCode] as const;
}

function none(text: string, count: number): SizeReading {
  const shapes =
    'width/aspect R rim such as 265/70R17, or diameter x width R rim such as 35x12.50R17';
  if (count === 0) return { kind: 'none', why: `A tyre size is written ${shapes}.` };
  if (count < 3) {
    return { kind: 'none', why: `“${text.trim()}” lacks a number: a size is written ${shapes}.` };
  }
  return { kind: 'none', why: `“${text.trim()}” is near no size: a size is written ${shapes}.` };
}

/** Longer texts are no sizes and are not searched. */
const LONGEST = 60;

/**
 * Reads a tyre size as typed. What is a size of the series is taken as it stands; what is not is answered with the nearest
 * reading and why. `rimCode` is the wheel's, for a text that leaves it out.
 */
export function nearestReading(text: string, rimCode?: number): SizeReading {
  if (text.length > LONGEST) return none(`${text.slice(0, LONGEST)}…`, 3);
  const parsed = parseTyreSize(text);
  if (parsed.ok && offSeries(parsed.size).length === 0) return { kind: 'size', size: parsed.size };
  const tidy = tidySize(text);
  const tokens = sizeTokens(tidy);
  const numbers = tokens.numbers.map(Number);
  const likely = likelyForm(tidy, numbers);
  const completed = withRim(numbers, likely, rimCode);
  const [first, second, third] = completed ?? numbers;
  if (first === undefined || second === undefined || third === undefined) {
    return none(text, numbers.length);
  }
  const found = bestGuess(likely, [first, second, third]);
  if (found === null) return none(text, 3);
  const size = sizeOf(found, tokens.service);
  return {
    kind: 'near',
    size,
    text: writtenSize(size),
    why: sentence(text, reasons(text.toUpperCase(), tokens, found, completed !== null)),
    asWritten: parsed.ok,
  };
}
