/** Where a small curve stands on its paper, and the strokes it is made of. */
import { type FigureStyle, figureNumber, figureSteps } from '../words/figures.ts';
import type { Inks } from './paper.ts';

/** Where a curve stands on its paper; refilled, never made anew. */
export interface CurveFrame {
  width: number;
  height: number;
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
  edges: readonly [Float64Array, Float64Array],
  inks: Inks,
): void {
  const [low, high] = edges;
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

/** Least and greatest of the present curve, in figures at the curve's right. */
export function writeEnds(
  context: CanvasRenderingContext2D,
  frame: CurveFrame,
  low: number,
  high: number,
  figure: FigureStyle,
  inks: Inks,
): void {
  context.font = `12px ${inks.font}`;
  context.fillStyle = inks.inkSoft;
  context.textAlign = 'right';
  const least = figureNumber(figureSteps(low, figure), figure);
  const most = figureNumber(figureSteps(high, figure), figure);
  const sign = figure.unit === '°' ? '°' : '';
  if (least === most) {
    context.textBaseline = 'middle';
    context.fillText(most + sign, frame.width, yOf(frame, high));
    return;
  }
  context.textBaseline = 'middle';
  const bottom = plotHeight(frame);
  const top = Math.max(7, Math.min(yOf(frame, high), bottom - 21));
  context.fillText(most + sign, frame.width, top);
  context.fillText(
    least + sign,
    frame.width,
    Math.max(top + 14, Math.min(yOf(frame, low), bottom - 7)),
  );
}

/** What the two ends of the axis are; where the plot is narrow the right one reaches into the figures' margin. */
export function nameEnds(context: CanvasRenderingContext2D, frame: CurveFrame, inks: Inks): void {
  if (plotHeight(frame) === frame.height) return;
  context.font = `12px ${inks.font}`;
  context.fillStyle = inks.inkSoft;
  context.textAlign = 'left';
  context.textBaseline = 'alphabetic';
  const y = frame.height - 3;
  const after = frame.left + context.measureText('droop').width + 8;
  context.fillText('droop', frame.left, y);
  context.fillText('bump', Math.max(after, frame.right - context.measureText('bump').width), y);
}
