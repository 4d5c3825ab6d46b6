/** Where a small curve stands on its paper, and the strokes it is made of. */
import { type FigureStyle, figureNumber, figureSteps } from '../words/figures.ts';
import type { BandEdges } from './band.ts';
import type { Inks } from './paper.ts';

/** Where a curve stands on its paper; refilled, never made anew. */
export interface CurveFrame {
  width: number;
  height: number;
  /** How much larger the page draws it. */
  zoom: number;
  left: number;
  right: number;
  least: number;
  most: number;
  low: number;
  high: number;
}

const EDGE = 5;
/** Room under a curve that is high enough to have its ends named. */
const NAMES = 15;
const NAMED_HEIGHT = 60;
/** Least height of the scale in steps of the shown figure: what reads flat looks flat. */
export const LEAST_STEPS = 6;

export function widen(frame: CurveFrame, column: Float64Array): void {
  for (let i = 0; i < column.length; i += 1) {
    const value = column[i]!;
    if (value < frame.low) frame.low = value;
    if (value > frame.high) frame.high = value;
  }
}

/** Height of the plot: less than the paper's where its ends are named. */
export function plotHeight({ height }: CurveFrame): number {
  return height < NAMED_HEIGHT ? height : height - NAMES;
}

export function yOf(frame: CurveFrame, value: number): number {
  const { low, high } = frame;
  return EDGE + ((high - value) / (high - low)) * (plotHeight(frame) - 2 * EDGE);
}

export function xOf({ left, right, least, most }: CurveFrame, travel: number): number {
  return left + ((travel - least) / (most - least)) * (right - left);
}

export function strokeColumn(
  context: CanvasRenderingContext2D,
  frame: CurveFrame,
  axis: Float64Array,
  column: Float64Array,
): void {
  context.beginPath();
  let isDown = false;
  for (let i = 0; i < column.length; i += 1) {
    const value = column[i]!;
    if (Number.isNaN(value)) {
      isDown = false;
      continue;
    }
    if (isDown) context.lineTo(xOf(frame, axis[i]!), yOf(frame, value));
    else context.moveTo(xOf(frame, axis[i]!), yOf(frame, value));
    isDown = true;
  }
  context.stroke();
}

/** Fills the band and draws its edges thin, cut off at the plot's ends. */
export function fillBand(
  context: CanvasRenderingContext2D,
  frame: CurveFrame,
  axis: Float64Array,
  edges: BandEdges,
  inks: Inks,
): void {
  const { low, high } = edges;
  context.save();
  context.beginPath();
  context.rect(frame.left, 0, frame.right - frame.left, plotHeight(frame));
  context.clip();
  context.beginPath();
  let count = 0;
  for (let i = 0; i < axis.length; i += 1) {
    if (Number.isNaN(high[i]!)) continue;
    context.lineTo(xOf(frame, axis[i]!), yOf(frame, high[i]!));
    count += 1;
  }
  for (let i = axis.length - 1; i >= 0; i -= 1) {
    if (!Number.isNaN(low[i]!)) context.lineTo(xOf(frame, axis[i]!), yOf(frame, low[i]!));
  }
  context.closePath();
  context.fillStyle = inks.accent;
  context.globalAlpha = 0.16;
  if (count > 1) context.fill();
  context.globalAlpha = 0.5;
  context.lineWidth = 1;
  context.strokeStyle = inks.accent;
  strokeColumn(context, frame, axis, low);
  strokeColumn(context, frame, axis, high);
  context.restore();
}

export function strokeLevel(
  context: CanvasRenderingContext2D,
  frame: CurveFrame,
  value: number,
): void {
  const y = Math.round(yOf(frame, value)) + 0.5;
  context.beginPath();
  context.moveTo(frame.left, y);
  context.lineTo(frame.right, y);
  context.stroke();
}

/** Half the height of a line of figures. */
const HALF_LINE = 7;

/** Writes a figure at a height of its middle, where either has changed. */
function writeFigure(at: HTMLElement, text: string, middle: number): void {
  if (at.textContent !== text) at.textContent = text;
  const place = `translate(0, ${Math.round(middle - HALF_LINE)}px)`;
  if (at.style.transform !== place) at.style.transform = place;
}

/** Where the figures of the least and the greatest value are written. */
export interface CurveFigures {
  readonly least: HTMLElement;
  readonly most: HTMLElement;
}

/** Least and greatest of the present curve, in figures at the curve's right. */
export function writeEnds(
  { least, most }: CurveFigures,
  frame: CurveFrame,
  low: number,
  high: number,
  figure: FigureStyle,
): void {
  const sign = figure.unit === '°' ? '°' : '';
  const lowest = figureNumber(figureSteps(low, figure), figure) + sign;
  const highest = figureNumber(figureSteps(high, figure), figure) + sign;
  const isFlat = lowest === highest;
  const bottom = plotHeight(frame);
  const top = isFlat
    ? yOf(frame, high)
    : Math.max(HALF_LINE, Math.min(yOf(frame, high), bottom - 3 * HALF_LINE));
  writeFigure(most, highest, top);
  const under = Math.max(top + 2 * HALF_LINE, Math.min(yOf(frame, low), bottom - HALF_LINE));
  writeFigure(least, isFlat ? '' : lowest, under);
}
