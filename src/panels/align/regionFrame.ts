/** The frame of the chart of camber and caster: a degree is as long both ways. Camber to the right, caster upwards. */

import type { AnglePoint } from '../../../solver/index.ts';

export const CHART_WIDTH = 400;
const LEFT = 44;
const RIGHT = 10;
const TOP = 10;
const BOTTOM = 40;
const MOST_HEIGHT = 330;
const LEAST_HEIGHT = 190;
/** Least span of an axis, degrees, and room around what is drawn, as a share of it. */
const LEAST_SPAN = 0.5;
const ROOM = 0.12;

export interface RegionFrame {
  /** Of the whole chart, and of the plot in it: left, top, right, bottom. */
  readonly height: number;
  readonly plot: readonly [number, number, number, number];
  readonly camber: readonly [number, number];
  readonly caster: readonly [number, number];
  /** Units of the chart in a degree. */
  readonly scale: number;
}

function spanOf(values: readonly number[]): { middle: number; span: number } {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return {
    middle: (least + most) / 2,
    span: Math.max(LEAST_SPAN, (most - least) * (1 + 2 * ROOM)),
  };
}

/** The frame that shows all of these. */
export function frameOf(points: readonly AnglePoint[]): RegionFrame {
  const camber = spanOf(points.map((point) => point.camber));
  const caster = spanOf(points.map((point) => point.caster));
  const width = CHART_WIDTH - LEFT - RIGHT;
  const scale = Math.min(width / camber.span, MOST_HEIGHT / caster.span);
  const height = Math.max(LEAST_HEIGHT, caster.span * scale);
  const [across, up] = [width / scale / 2, height / scale / 2];
  return {
    height: height + TOP + BOTTOM,
    plot: [LEFT, TOP, LEFT + width, TOP + height],
    camber: [camber.middle - across, camber.middle + across],
    caster: [caster.middle - up, caster.middle + up],
    scale,
  };
}

export function placeX({ plot, camber, scale }: RegionFrame, value: number): number {
  return plot[0] + (value - camber[0]) * scale;
}

export function placeY({ plot, caster, scale }: RegionFrame, value: number): number {
  return plot[3] - (value - caster[0]) * scale;
}

/** What a place of the chart asks for, kept inside the plot. */
export function pointAt(frame: RegionFrame, x: number, y: number): AnglePoint {
  const { plot, camber, caster, scale } = frame;
  const inside = (value: number, least: number, most: number) =>
    Math.min(most, Math.max(least, value));
  return {
    camber: camber[0] + (inside(x, plot[0], plot[2]) - plot[0]) / scale,
    caster: caster[0] + (plot[3] - inside(y, plot[1], plot[3])) / scale,
  };
}

/** A line as SVG draws it. */
export function lineOf(frame: RegionFrame, points: readonly AnglePoint[], isClosed: boolean) {
  const places = points.map(
    ({ camber, caster }) =>
      `${placeX(frame, camber).toFixed(1)} ${placeY(frame, caster).toFixed(1)}`,
  );
  return places.length === 0 ? '' : `M${places.join('L')}${isClosed ? 'Z' : ''}`;
}
