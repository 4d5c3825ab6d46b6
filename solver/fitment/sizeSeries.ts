/**
 * The series tyre sizes are made in, so that a number off it is noticed. Steps and ranges: ISO 4000-1 and ETRTO for metric
 * sizes, the yearbooks of the American tyre and rim makers for flotation sizes, from memory. A size of the series need not be on
 * sale: no catalogue is kept here.
 */
import type { TyreSize } from '../model/tyre.ts';

/** One number of a size: where it may lie, and the values it is made in. */
export interface Series {
  readonly low: number;
  readonly high: number;
  /** The value of the series nearest to `value`; the lower of two as near. */
  readonly nearest: (value: number) => number;
  /** What the series is, in words that follow "made in". */
  readonly words: string;
}

function stepped(first: number, step: number, last: number, words: string): Series {
  return {
    low: first,
    high: last,
    words,
    nearest: (value) => {
      const count = Math.ceil((value - first) / step - 0.5);
      return Math.min(last, Math.max(first, first + step * count));
    },
  };
}

const RIM_CODES = [
  10, 12, 13, 14, 15, 16, 16.5, 17, 17.5, 18, 19, 19.5, 20, 21, 22, 22.5, 23, 24, 24.5, 26, 28, 30,
];

const RIM: Series = {
  low: 10,
  high: 30,
  words: 'rim codes 10 to 30, whole but for 16.5, 17.5, 19.5, 22.5 and 24.5',
  nearest: (value) =>
    RIM_CODES.reduce((best, code) =>
      Math.abs(code - value) < Math.abs(best - value) ? code : best,
    ),
};

/** The numbers of a metric size in the order they are written. */
export const METRIC_SERIES: readonly [Series, Series, Series] = [
  stepped(125, 10, 395, 'section widths that end in 5, from 125 to 395 mm'),
  stepped(25, 5, 90, 'aspects in fives, from 25 to 90'),
  RIM,
];

/** The numbers of a flotation size in the order they are written. */
export const FLOTATION_SERIES: readonly [Series, Series, Series] = [
  stepped(22, 0.5, 54, 'diameters in halves of an inch, from 22 to 54'),
  stepped(6, 0.5, 19.5, 'widths in halves of an inch, from 6.00 to 19.50'),
  RIM,
];

/** The three numbers of a size in the order they are written. */
export function sizeNumbers(size: TyreSize): readonly [number, number, number] {
  const { width, rimDiameterCode } = size;
  return size.form === 'metric'
    ? [width, size.aspect, rimDiameterCode]
    : [size.overallDiameter, width, rimDiameterCode];
}

/** What is off the series in a size, in words for a message; empty where all of it is on the series. */
export function offSeries(size: TyreSize): readonly string[] {
  const series = size.form === 'metric' ? METRIC_SERIES : FLOTATION_SERIES;
  const reasons = sizeNumbers(size).flatMap((number, index) =>
    series[index]!.nearest(number) === number ? [] : [`tyres are made in ${series[index]!.words}`],
  );
  if (size.form === 'flotation' && size.overallDiameter < size.rimDiameterCode + 4) {
    return [...reasons, 'the tyre is taller than its rim by 4 in at least'];
  }
  return reasons;
}

/** A size as it is usually written: LT285/75R16, 35x12.50R17LT. */
export function writtenSize(size: TyreSize): string {
  const { service, width, rimDiameterCode: code } = size;
  return size.form === 'metric'
    ? `${service}${width}/${size.aspect}R${code}`
    : `${size.overallDiameter}x${width.toFixed(2)}R${code}${service}`;
}
