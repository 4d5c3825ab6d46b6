/** A small plot of one measure: its axes ticked in the unit shown, what its sign means at its ends. */
import type { UnitKind } from '../../../solver/index.ts';
import type { Sense } from '../../../solver/measures/rows/row.ts';
import { lengthTicks, ticksOf } from '../../charts/ticks.ts';
import { figureStyle } from '../../words/figures.ts';
import { lengthUnitName } from '../../words/format.ts';
import type { LengthUnit } from '../../words/lengthUnit.ts';
import { type Markup, markup } from '../markup.ts';

export interface Plotted {
  readonly label: string;
  readonly kind: UnitKind;
  readonly sense?: Sense | undefined;
  readonly along: 'travel' | 'rack';
  readonly xs: ArrayLike<number>;
  readonly ys: ArrayLike<number>;
  /** A place marked by an upright line: ride height. */
  readonly mark: number;
}

const LEFT = 15;
const RIGHT = 2;
const TOP = 8.5;
const BOTTOM = 9;
/** Least span of the upright axis, in shown units: flatter curves are not blown up to noise. */
const LEAST_SPAN = 0.1;
/** Share of the span left free above and below together. */
const AIR = 0.12;

function spanOf(ys: ArrayLike<number>): [number, number] | null {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < ys.length; i += 1) {
    const y = ys[i]!;
    if (!Number.isFinite(y)) continue;
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  if (!(high >= low)) return null;
  const room = Math.max(LEAST_SPAN - (high - low), AIR * (high - low)) / 2;
  return [low - room, high + room];
}

function bare(words: string): string {
  return words.replace(/ ?\{\}/, '').trim();
}

function signs({ sense }: Plotted): string {
  return sense === undefined ? '' : `+ ${bare(sense.positive)}, − ${bare(sense.negative)}`;
}

interface Axes {
  readonly x: (mm: number) => number;
  readonly y: (shown: number) => number;
  readonly width: number;
  readonly height: number;
}

function line(path: string, width: number, colour = '#000'): Markup {
  return markup`<path d="${path}" fill="none" stroke="${colour}" stroke-width="${width}"/>`;
}

function grid(
  { x, y, width, height }: Axes,
  [least, most]: readonly [number, number],
  [low, high]: readonly [number, number],
  unit: LengthUnit,
): Markup {
  const upright = lengthTicks(least, most, 5, unit);
  const level = ticksOf(low, high, 5);
  return markup`${upright.map(({ at }) => line(`M${x(at).toFixed(2)} ${TOP}V${height - BOTTOM}`, 0.1, '#999'))}${level.map(({ at }) => line(`M${LEFT} ${y(at).toFixed(2)}H${width - RIGHT}`, at === 0 ? 0.3 : 0.1, at === 0 ? '#000' : '#999'))}${upright.map(({ at, text }) => markup`<text x="${x(at).toFixed(2)}" y="${height - BOTTOM + 3.2}" font-size="2.6" text-anchor="middle">${text}</text>`)}${level.map(({ at, text }) => markup`<text x="${LEFT - 1}" y="${(y(at) + 0.9).toFixed(2)}" font-size="2.6" text-anchor="end">${text}</text>`)}`;
}

function curve({ xs, ys }: Plotted, { x, y }: Axes, scale: number): string {
  let [path, isDown] = ['', false];
  for (let i = 0; i < xs.length; i += 1) {
    const value = ys[i]! * scale;
    if (!Number.isFinite(value)) {
      isDown = false;
      continue;
    }
    path += `${isDown ? 'L' : 'M'}${x(xs[i]!).toFixed(2)} ${y(value).toFixed(2)}`;
    isDown = true;
  }
  return path;
}

/** The plot as SVG of `width` × `height` mm; null where there is nothing to draw. */
export function plot(
  plotted: Plotted,
  unit: LengthUnit,
  width: number,
  height: number,
): Markup | null {
  const counted = unit === 'sixteenth' ? 'inch' : unit;
  const { scale, unit: name } = figureStyle(plotted.kind, counted);
  const shown = Float64Array.from(plotted.ys, (value) => value * scale);
  const span = spanOf(shown);
  const { xs, mark, along } = plotted;
  const [least, most] = [xs[0] ?? 0, xs[xs.length - 1] ?? 0];
  if (span === null || !(most > least)) return null;
  const [low, high] = span;
  const inner = width - LEFT - RIGHT;
  const axes: Axes = {
    x: (mm) => LEFT + (inner * (mm - least)) / (most - least),
    y: (value) => height - BOTTOM - ((height - TOP - BOTTOM) * (value - low)) / (high - low),
    width,
    height,
  };
  const unitName = name.trim();
  const title = unitName === '' ? plotted.label : `${plotted.label}, ${unitName}`;
  const at = axes.x(mark).toFixed(2);
  return markup`<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" aria-label="${title} along ${along}">
<text x="0" y="3" font-size="3.1" font-weight="bold">${title}</text><text x="0" y="6.4" font-size="2.5">${signs(plotted)}</text>
${grid(axes, [least, most], span, counted)}
<path d="M${LEFT} ${TOP}H${width - RIGHT}V${height - BOTTOM}H${LEFT}Z" fill="none" stroke="#000" stroke-width="0.2"/>
<path d="M${at} ${TOP}V${height - BOTTOM}" stroke="#000" stroke-width="0.25" stroke-dasharray="1 0.8"/>
<path d="${curve(plotted, axes, scale)}" fill="none" stroke="#000" stroke-width="0.5" stroke-linejoin="round"/>
<text x="${LEFT + inner / 2}" y="${height - 1.6}" font-size="2.6" text-anchor="middle">${along}, ${lengthUnitName(unit)}; ${along === 'travel' ? '+ wheel up, − wheel down' : '+ to the left, − to the right'}</text>
</svg>`;
}
