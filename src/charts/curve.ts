/** The moving part of a small curve: drawn when the sweep changes, its cursor moved when the pose does. */
import { Measure, type MeasureKey } from '../../solver/index.ts';
import { inputs, posed, view } from '../state/bench.ts';
import { curves } from '../state/charted.ts';
import { onFrame, requestFrame } from '../state/frame.ts';
import { type FigureStyle, figureNumber, figureSteps, figureStyle } from '../words/figures.ts';
import { freshPaper, type Inks, readInks } from './paper.ts';
import { sweepRow } from './sweepRows.ts';
import { leaveTurns, takeTurn } from './turns.ts';

export interface CurveElements {
  readonly root: HTMLElement;
  readonly canvas: HTMLCanvasElement;
  readonly cursor: HTMLElement;
  readonly dot: HTMLElement;
}

/** Where a curve stands on its paper; refilled, never made anew. */
interface CurveFrame {
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
const LEAST_STEPS = 6;

function widen(frame: CurveFrame, column: Float64Array): void {
  for (let i = 0; i < column.length; i += 1) {
    const value = column[i]!;
    if (value < frame.low) frame.low = value;
    if (value > frame.high) frame.high = value;
  }
}

/** Height of the plot: less than the paper's where its ends are named. */
function plotHeight({ height }: CurveFrame): number {
  return height < NAMED_HEIGHT ? height : height - NAMES;
}

function yOf(frame: CurveFrame, value: number): number {
  const { low, high } = frame;
  return EDGE + ((high - value) / (high - low)) * (plotHeight(frame) - 2 * EDGE);
}

function xOf({ left, right, least, most }: CurveFrame, travel: number): number {
  return left + ((travel - least) / (most - least)) * (right - left);
}

function strokeColumn(
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

function strokeLevel(context: CanvasRenderingContext2D, frame: CurveFrame, value: number): void {
  const y = Math.round(yOf(frame, value)) + 0.5;
  context.beginPath();
  context.moveTo(frame.left, y);
  context.lineTo(frame.right, y);
  context.stroke();
}

/** Least and greatest of the present curve, in figures at the curve's right. */
function writeEnds(
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
function nameEnds(context: CanvasRenderingContext2D, frame: CurveFrame, inks: Inks): void {
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

export function createCurve(elements: CurveElements, key: MeasureKey): () => void {
  const { root, canvas, cursor, dot } = elements;
  const { kind } = sweepRow(key);
  const frame: CurveFrame = {
    width: 0,
    height: 0,
    left: 0,
    right: 0,
    least: 0,
    most: 0,
    low: 0,
    high: 0,
  };
  let isStale = true;
  let isSeen = true;
  let drawn = -1;
  let followed = -1;
  /** Read again in the frame after the theme changed, when the page wears it. */
  let inks: Inks | null = null;

  function spoil(): void {
    isStale = true;
    requestFrame();
  }

  /** Fits the scale to both curves; false where there is nothing to draw. */
  function fitScale(figure: FigureStyle): boolean {
    const { present, held } = curves.current();
    frame.left = 1;
    frame.right = frame.width - 46;
    frame.least = present.axis[0]!;
    frame.most = present.axis[present.axis.length - 1]!;
    frame.low = Number.POSITIVE_INFINITY;
    frame.high = Number.NEGATIVE_INFINITY;
    widen(frame, present.columns[key]);
    if (held !== null) widen(frame, held.columns[key]);
    if (!(frame.high >= frame.low)) return false;
    const short = LEAST_STEPS / (figure.steps * figure.scale) - (frame.high - frame.low);
    if (short > 0) {
      frame.low -= short / 2;
      frame.high += short / 2;
    }
    return frame.right > frame.left;
  }

  function draw(): void {
    const figure = figureStyle(kind, view.getState().unit);
    const isThere = fitScale(figure);
    root.classList.toggle('curve-empty', !isThere);
    root.classList.toggle('curve-named', plotHeight(frame) < frame.height);
    const fresh = freshPaper(canvas, frame.width, frame.height);
    if (fresh === null || !isThere) return;
    const { context } = fresh;
    const { present, held } = curves.current();
    inks ??= readInks(root);
    context.lineWidth = 1;
    context.strokeStyle = inks.line;
    if (frame.low < 0 && frame.high > 0) strokeLevel(context, frame, 0);
    const x = Math.round(xOf(frame, 0)) + 0.5;
    context.beginPath();
    context.moveTo(x, 0);
    context.lineTo(x, plotHeight(frame));
    context.stroke();
    nameEnds(context, frame, inks);
    context.lineJoin = 'round';
    if (held !== null) {
      context.strokeStyle = inks.held;
      context.lineWidth = 1.75;
      strokeColumn(context, frame, held.axis, held.columns[key]);
    }
    context.strokeStyle = inks.accent;
    context.lineWidth = 2.25;
    strokeColumn(context, frame, present.axis, present.columns[key]);
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const value of present.columns[key]) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
    if (high >= low) writeEnds(context, frame, low, high, figure, inks);
  }

  function follow(): void {
    const { pose, measures } = posed.current();
    const x = xOf(frame, inputs.getState().travel);
    cursor.style.transform = `translate(${x}px, 0)`;
    const value = measures[Measure[key]]!;
    const isThere = pose.outcome === 'reached' && value >= frame.low && value <= frame.high;
    dot.style.visibility = isThere ? 'visible' : 'hidden';
    if (isThere) dot.style.transform = `translate(0, ${yOf(frame, value)}px)`;
  }

  function onEveryFrame(): void {
    if (!isSeen) return;
    curves.current();
    const isNew = curves.version() !== drawn;
    if (!isStale && !isNew && posed.version() === followed) return;
    if (isStale || (isNew && takeTurn(frame))) {
      draw();
      leaveTurns(frame);
      isStale = false;
      drawn = curves.version();
    } else if (isNew) requestFrame();
    followed = posed.version();
    follow();
  }

  // Measured here and never in a frame, where asking would make the browser lay the page out anew. Drawn before the new
  // size is painted, or the old picture would be seen stretched.
  const size = new ResizeObserver(() => {
    frame.width = root.clientWidth;
    frame.height = root.clientHeight;
    isStale = true;
    onEveryFrame();
  });
  size.observe(root);
  const sight = new IntersectionObserver(([entry]) => {
    isSeen = entry?.isIntersecting ?? true;
    if (isSeen) spoil();
  });
  sight.observe(root);
  let isGone = false;
  void document.fonts?.ready.then(() => {
    if (!isGone) spoil();
  });
  const exits = [
    view.subscribe((now, before) => {
      if (now.theme === before.theme && now.unit === before.unit) return;
      inks = null;
      spoil();
    }),
    onFrame(onEveryFrame),
  ];
  return () => {
    isGone = true;
    leaveTurns(frame);
    size.disconnect();
    sight.disconnect();
    for (const exit of exits) exit();
  };
}
