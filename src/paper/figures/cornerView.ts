/** A small view of the posed corner, to a round scale, with a scale bar. */
import type { Vector3 } from '../../../solver/index.ts';
import { MM_PER_INCH } from '../../../solver/units.ts';
import type { LengthUnit } from '../../words/lengthUnit.ts';
import { type Markup, markup } from '../markup.ts';
import type { CornerLine, CornerOutline, NamedPoint } from './outline.ts';

export type Seen = 'front' | 'side' | 'above';

type Spot = readonly [number, number];

/** To the right and upward on paper: from the front the left wheel is at the right; from the left side the front is at the left. */
const AXES: Readonly<Record<Seen, (point: Vector3) => Spot>> = {
  front: ([, y, z]) => [y, z],
  side: ([x, , z]) => [-x, z],
  above: ([x, y]) => [-y, x],
};

const TITLES: Readonly<Record<Seen, string>> = {
  front: 'From the front',
  side: 'From the left side, front at the left',
  above: 'From above, front at the top',
};

const WIDTHS: Readonly<Record<CornerLine['kind'], number>> = {
  arm: 0.7,
  knuckle: 0.7,
  rod: 0.5,
  thin: 0.25,
};

const SCALES = [1, 2, 5, 10, 15, 20, 25, 50, 100, 200, 500];
/** Taken by the title above and the scale bar below. */
const TITLE = 5;
const FOOT = 8;

/** Convex hull (Andrew's monotone chain). */
export function hull(spots: readonly Spot[]): Spot[] {
  const sorted = [...spots].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Spot[]): Spot[] => {
    const out: Spot[] = [];
    for (const spot of list) {
      while (out.length > 1) {
        const [a, b] = [out.at(-2)!, out.at(-1)!];
        const turn = (b[0] - a[0]) * (spot[1] - a[1]) - (b[1] - a[1]) * (spot[0] - a[0]);
        if (turn > 0) break;
        out.pop();
      }
      out.push(spot);
    }
    return out.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

interface Fit {
  readonly scale: number;
  readonly place: (spot: Spot) => string;
  readonly x: (across: number) => number;
  readonly y: (up: number) => number;
}

/** The smallest round scale at which all spots fit, and where they come to lie, mm on paper. */
function fitOf(spots: readonly Spot[], width: number, height: number): Fit {
  const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const room = height - TITLE - FOOT;
  const needed = Math.max((right - left) / (width - 2), (high - low) / room);
  const scale = SCALES.find((one) => one >= needed) ?? Math.ceil(needed / 100) * 100;
  const x = (across: number): number => (across - (left + right) / 2) / scale + width / 2;
  const y = (up: number): number => TITLE + room / 2 - (up - (low + high) / 2) / scale;
  return { scale, x, y, place: ([a, b]) => `${x(a).toFixed(2)},${y(b).toFixed(2)}` };
}

function bar(scale: number, unit: LengthUnit, width: number, height: number): Markup {
  const one = unit === 'mm' ? 100 : 4 * MM_PER_INCH;
  const count = Math.max(1, Math.floor((0.5 * width * scale) / one));
  const times = [1, 2, 5, 10, 20, 50].filter((each) => each <= count).at(-1) ?? 1;
  const long = (times * one) / scale;
  const text = unit === 'mm' ? `${times * 100} mm` : `${times * 4} in`;
  const y = height - 3;
  return markup`<path d="M1 ${y - 1.2}v2.4M1 ${y}h${long.toFixed(3)}M${(1 + long).toFixed(3)} ${y - 1.2}v2.4" data-bar="${(times * one).toFixed(2)}" stroke="#000" stroke-width="0.3" fill="none"/><text x="${(long + 2.5).toFixed(2)}" y="${y + 1}" font-size="2.9">${text}, scale 1:${scale}</text>`;
}

/** Lines apart that names stand, mm, and how far from the paper's edge. */
const NAME_STEP = 4.2;
const NAMES_WIDTH = 46;

/** The points' names at the right, from the top down, each with a line to its point. */
function names(
  points: readonly NamedPoint[],
  across: (point: Vector3) => Spot,
  fit: Fit,
  width: number,
): readonly Markup[] {
  const x = width - NAMES_WIDTH;
  let last = Number.NEGATIVE_INFINITY;
  return points
    .map(({ name, at }) => ({ name, x: fit.x(across(at)[0]), y: fit.y(across(at)[1]) }))
    .sort((a, b) => a.y - b.y)
    .map((point) => {
      const y = Math.max(point.y, last + NAME_STEP);
      last = y;
      return markup`<path d="M${(point.x + 1).toFixed(2)} ${point.y.toFixed(2)}L${x - 1} ${y.toFixed(2)}" fill="none" stroke="#555" stroke-width="0.12"/><text x="${x}" y="${(y + 1).toFixed(2)}" font-size="2.9">${point.name}</text>`;
    });
}

/** The view as SVG of `width` × `height` mm; `isNamed` names the points at its right side. */
export function cornerView(
  outline: CornerOutline,
  seen: Seen,
  unit: LengthUnit,
  width: number,
  height: number,
  isNamed = false,
): Markup {
  const across = AXES[seen];
  const tyre = hull(outline.tyre.flat().map(across));
  const lines = outline.lines.map(({ kind, points }) => ({ kind, spots: points.map(across) }));
  const spots = [...tyre, ...lines.flatMap((line) => line.spots)];
  const fit = fitOf(spots, width, height);
  const path = (list: readonly Spot[]): string => `M${list.map(fit.place).join('L')}`;
  const ground = fit.y(outline.ground).toFixed(2);
  return markup`<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" aria-label="${TITLES[seen]}, scale 1 to ${fit.scale}" data-scale="${fit.scale}">
<text x="1" y="3" font-size="3.1">${TITLES[seen]}</text>
${seen === 'above' ? [] : markup`<path d="M0 ${ground}H${width}" stroke="#000" stroke-width="0.35" stroke-dasharray="4 1"/>`}
<path d="${path(tyre)}Z" fill="none" stroke="#000" stroke-width="0.4"/>
${outline.rim.map((ring) => markup`<path d="${path(ring.map(across))}" fill="none" stroke="#555" stroke-width="0.2" stroke-dasharray="1.2 0.8"/>`)}
${lines.map(({ kind, spots: list }) => markup`<path d="${path(list)}" fill="none" stroke="#000" stroke-width="${WIDTHS[kind]}" stroke-linejoin="round"/>`)}
${outline.points.map(({ at }) => markup`<circle cx="${fit.x(across(at)[0]).toFixed(2)}" cy="${fit.y(across(at)[1]).toFixed(2)}" r="0.9" fill="#fff" stroke="#000" stroke-width="0.3"/>`)}
${isNamed ? names(outline.points, across, fit, width) : []}
${bar(fit.scale, unit, width, height)}
</svg>`;
}
