/** One large curve: the only place that knows uPlot. */
import 'uplot/dist/uPlot.min.css';
import type uPlotType from 'uplot';
import { fixed } from '../words/format.ts';
import { type Inks, readInks } from './paper.ts';
import { stepDigits } from './ticks.ts';

export type Values = readonly (number | null)[];

/** Lower and upper edge of the band about the present curve. */
export interface Edges {
  readonly low: Values;
  readonly high: Values;
}

/** How one line of a chart is drawn. */
export interface LineStyle {
  readonly colour: string;
  readonly dashes: readonly number[];
}

export interface LargeCurveOptions {
  readonly place: HTMLElement;
  readonly height: number;
  /** The lines beside the present one, in the order of their values. */
  readonly beside: readonly LineStyle[];
  /** Names of the axes with their units, asked for whenever they are drawn. */
  readonly names: () => readonly [across: string, up: string];
  /** Called with the index under the pointer, or null. */
  readonly onHover: (index: number | null) => void;
  /** Called with the place on the axis that was clicked. */
  readonly onPick: (x: number) => void;
}

export interface LargeCurve {
  /** `beside` has one list for each line beside the present one. */
  write(
    xs: readonly number[],
    present: Values,
    beside: readonly Values[],
    band: Edges | null,
  ): void;
  /** Marks the present place on the axis. */
  mark(x: number): void;
  resize(width: number): void;
  destroy(): void;
}

/** Charts under one name show their cursors together. */
const TOGETHER = 'curves';
const AXIS_WIDTH = 62;

/** Chromium may name a locale that Intl refuses ("en-US@posix"), and uPlot asks Intl as it loads. */
function guardLanguage(): void {
  try {
    new Intl.NumberFormat(navigator.language);
  } catch {
    Object.defineProperty(navigator, 'language', { value: 'en-US', configurable: true });
  }
}

/** Loads the charts' code; call once before `createLargeCurve`. */
export async function loadCharts(): Promise<typeof uPlotType> {
  guardLanguage();
  return (await import('uplot')).default;
}

function figures(_: uPlotType, splits: number[], __: number, ___: number, step: number): string[] {
  return splits.map((value) => fixed(value, stepDigits(step)));
}

function axis(inks: Inks, name: () => string): uPlotType.Axis {
  return {
    label: name,
    labelFont: `600 14px ${inks.font}`,
    labelSize: 20,
    labelGap: 2,
    stroke: inks.inkSoft,
    font: `13px ${inks.font}`,
    grid: { stroke: inks.line, width: 1 },
    ticks: { stroke: inks.line, width: 1, size: 5 },
    values: figures,
  };
}

/** An edge of the band: thin, and without a mark under the pointer. */
function edge(inks: Inks): uPlotType.Series {
  return { stroke: inks.accent, width: 0.75, alpha: 0.6, points: { show: false }, spanGaps: false };
}

function settings(options: LargeCurveOptions, inks: Inks): uPlotType.Options {
  const { place, height, beside, names, onHover } = options;
  return {
    width: Math.max(120, place.clientWidth),
    height,
    legend: { show: false },
    // Whole pixels would turn a gentle slope into stairs.
    pxAlign: 0,
    padding: [8, 12, 0, 0],
    scales: { x: { time: false } },
    cursor: { sync: { key: TOGETHER }, drag: { x: false, y: false }, points: { size: 8 } },
    axes: [
      { ...axis(inks, () => names()[0]), size: 28 },
      { ...axis(inks, () => names()[1]), size: AXIS_WIDTH },
    ],
    series: [
      {},
      ...beside.map(({ colour, dashes }) => ({
        stroke: colour,
        width: 2,
        dash: [...dashes],
        points: { show: false },
        spanGaps: false,
      })),
      { stroke: inks.accent, width: 2.5, points: { show: false }, spanGaps: false },
      edge(inks),
      edge(inks),
    ],
    // The band's edges are the last two series.
    bands: [
      {
        series: [beside.length + 3, beside.length + 2],
        fill: `color-mix(in srgb, ${inks.accent} 16%, transparent)`,
      },
    ],
    hooks: { setCursor: [({ cursor }) => onHover(cursor.idx ?? null)] },
  };
}

/** Puts a chart into its place. */
export function createLargeCurve(Chart: typeof uPlotType, options: LargeCurveOptions): LargeCurve {
  const { place, height, onPick } = options;
  const empty: [number[], ...number[][]] = [[], [], [], [], ...options.beside.map(() => [])];
  const chart = new Chart(settings(options, readInks(place)), empty, place);
  const marker = document.createElement('div');
  marker.className = 'large-curve-mark';
  chart.over.append(marker);
  let marked = 0;
  // The chart settles its scale after the data is written, and again when its size changes.
  function mark(x: number): void {
    marked = x;
    const at = chart.valToPos(x, 'x');
    if (Number.isFinite(at)) marker.style.transform = `translate(${at}px, 0)`;
  }
  chart.hooks.draw = [() => mark(marked)];
  chart.over.addEventListener('click', () => {
    const { left } = chart.cursor;
    if (left !== undefined && left >= 0) onPick(chart.posToVal(left, 'x'));
  });
  return {
    write(xs, present, beside, band) {
      const nothing = present.map(() => null);
      const { low, high } = band ?? { low: nothing, high: nothing };
      const others = beside.map((values) => [...values]);
      chart.setData([[...xs], ...others, [...present], [...low], [...high]]);
    },
    mark,
    resize(width) {
      chart.setSize({ width: Math.max(120, width), height });
    },
    destroy() {
      chart.destroy();
    },
  };
}
