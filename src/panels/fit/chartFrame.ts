/** Where a fit's curve, its bands and its readings stand on their paper. */
import type { FitCurve } from '../../../solver/fit/answers.ts';
import type { Fit, FitReading } from '../../../solver/fit/fit.ts';
import { BAND_REACH } from '../../charts/band.ts';

export interface ChartFrame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Ends of both axes, mm of travel, and degrees or mm. */
  readonly travels: readonly [number, number];
  readonly values: readonly [number, number];
  readonly x: (travel: number) => number;
  readonly y: (value: number) => number;
}

export interface ChartReading {
  readonly fitted: FitReading;
  readonly isSuspect: boolean;
}

/** The readings that lie on a curve: of its quantity, straight ahead. */
export function readingsOn(fit: Fit, { quantity }: FitCurve): readonly ChartReading[] {
  return fit.readings.flatMap((fitted, index) => {
    const { reading } = fitted;
    const isOn = reading.quantity === quantity && reading.rack === 0;
    return isOn ? [{ fitted, isSuspect: fit.suspects.includes(index) }] : [];
  });
}

/** Room above and below what must be seen, as a share of it; and the least height of the paper, degrees or mm. */
const ROOM = 0.08;
const LEAST_RUN = 0.1;

/** Everything is seen but the band before the fit, which may be far wider than all that matters. */
function valuesOf(curve: FitCurve, on: readonly ChartReading[]): readonly [number, number] {
  const seen = curve.points.flatMap(({ at }) =>
    at === null
      ? []
      : [
          at.before,
          at.after - BAND_REACH * at.plusMinusAfter,
          at.after + BAND_REACH * at.plusMinusAfter,
        ],
  );
  const read = on.flatMap(({ fitted: { reading, plusMinus } }) => [
    reading.value - plusMinus,
    reading.value + plusMinus,
  ]);
  const least = Math.min(...seen, ...read);
  const most = Math.max(...seen, ...read);
  const run = Math.max(most - least, LEAST_RUN);
  const middle = (most + least) / 2;
  return [middle - run * (0.5 + ROOM), middle + run * (0.5 + ROOM)];
}

export function chartFrame(
  curve: FitCurve,
  on: readonly ChartReading[],
  width: number,
  height: number,
): ChartFrame {
  const [left, right, top, bottom] = [52, width - 10, 8, height - 40];
  const travels = [curve.points[0]!.travel, curve.points.at(-1)!.travel] as const;
  const values = valuesOf(curve, on);
  const across = (right - left) / (travels[1] - travels[0]);
  const up = (bottom - top) / (values[1] - values[0]);
  return {
    width,
    height,
    left,
    right,
    top,
    bottom,
    travels,
    values,
    x: (travel) => left + (travel - travels[0]) * across,
    y: (value) => bottom - (value - values[0]) * up,
  };
}

type Which = 'before' | 'after';

/** The line as an SVG path; a pose out of reach breaks it. */
export function linePath(curve: FitCurve, which: Which, { x, y }: ChartFrame): string {
  let isDown = false;
  const steps = curve.points.map(({ travel, at }) => {
    if (at === null) {
      isDown = false;
      return '';
    }
    const step = `${isDown ? 'L' : 'M'}${x(travel).toFixed(1)} ${y(at[which]).toFixed(1)}`;
    isDown = true;
    return step;
  });
  return steps.join('');
}

/** The band about the line, as wide as every curve's, as a closed SVG path over the stretch that is in reach. */
export function bandPath(curve: FitCurve, which: Which, { x, y }: ChartFrame): string {
  const key = which === 'before' ? 'plusMinusBefore' : 'plusMinusAfter';
  const there = curve.points.flatMap(({ travel, at }) => (at === null ? [] : [{ travel, at }]));
  const edge = (side: number) =>
    there.map(
      ({ travel, at }) =>
        `${x(travel).toFixed(1)} ${y(at[which] + side * BAND_REACH * at[key]).toFixed(1)}`,
    );
  return there.length < 2 ? '' : `M${[...edge(1), ...edge(-1).reverse()].join('L')}Z`;
}
