/** The moving part of a small curve: drawn when the sweep changes, its cursor moved when the pose does. */
import { Measure, type MeasureKey } from '../../solver/index.ts';
import { inputs, posed, view } from '../state/bench.ts';
import { curves } from '../state/charted.ts';
import { CURVE_POSES } from '../state/curves.ts';
import { onFrame, requestFrame } from '../state/frame.ts';
import { spreads } from '../state/trusted.ts';
import { type FigureStyle, figureStyle } from '../words/figures.ts';
import { type BandEdges, bandEdgesInto, createBandEdges } from './band.ts';
import {
  type CurveFigures,
  type CurveFrame,
  fillBand,
  LEAST_STEPS,
  plotHeight,
  strokeColumn,
  strokeLevel,
  widen,
  writeEnds,
  xOf,
  yOf,
} from './curveFrame.ts';
import { freshPaper, type Inks, inkOf, readInks } from './paper.ts';
import { sweepRow } from './sweepRows.ts';
import { leaveTurns, takeTurn } from './turns.ts';
import { zoomOf } from './zoom.ts';

export interface CurveElements extends CurveFigures {
  readonly root: HTMLElement;
  readonly canvas: HTMLCanvasElement;
  readonly cursor: HTMLElement;
  readonly dot: HTMLElement;
}

export function createCurve(elements: CurveElements, key: MeasureKey): () => void {
  const { root, canvas, cursor, dot } = elements;
  const { kind } = sweepRow(key);
  const frame: CurveFrame = {
    width: 0,
    height: 0,
    zoom: 1,
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
  const room = createBandEdges(CURVE_POSES);
  let edges: BandEdges | null = null;
  /** Read again in the frame after the theme changed, when the page wears it. */
  let inks: Inks | null = null;

  function spoil(): void {
    isStale = true;
    requestFrame();
  }

  /** The band's edges about the present curve; null where none is shown or known. */
  function findEdges(): BandEdges | null {
    const band = spreads.getState().travel;
    if (band === null) return null;
    const { present } = curves.current();
    bandEdgesInto(room, band, band.uncertainties[key], present.axis, present.columns[key]);
    return room;
  }

  /** Makes room for the band, up to as much again either way: a wide one is cut, the curve keeps its shape. */
  function fitBand({ low, high }: BandEdges): void {
    const [least, most] = [frame.low, frame.high];
    widen(frame, low);
    widen(frame, high);
    frame.low = Math.max(frame.low, least - (most - least));
    frame.high = Math.min(frame.high, most + (most - least));
  }

  /** Fits the scale to all curves; false where there is nothing to draw. */
  function fitScale(figure: FigureStyle): boolean {
    const { present, beside } = curves.current();
    frame.left = 1;
    frame.right = frame.width - 46;
    frame.least = present.axis[0]!;
    frame.most = present.axis[present.axis.length - 1]!;
    frame.low = Number.POSITIVE_INFINITY;
    frame.high = Number.NEGATIVE_INFINITY;
    widen(frame, present.columns[key]);
    for (const { sweep } of beside) widen(frame, sweep.columns[key]);
    if (!(frame.high >= frame.low)) return false;
    const short = LEAST_STEPS / (figure.steps * figure.scale) - (frame.high - frame.low);
    if (short > 0) {
      frame.low -= short / 2;
      frame.high += short / 2;
    }
    if (edges !== null) fitBand(edges);
    return frame.right > frame.left;
  }

  function draw(): void {
    edges = findEdges();
    const figure = figureStyle(kind, view.getState().unit);
    const isThere = fitScale(figure);
    root.classList.toggle('curve-empty', !isThere);
    root.classList.toggle('curve-named', plotHeight(frame) < frame.height);
    const fresh = freshPaper(canvas, frame.width, frame.height, frame.zoom);
    if (fresh === null || !isThere) return;
    const { context } = fresh;
    const { present, beside } = curves.current();
    inks ??= readInks(root);
    context.lineWidth = 1;
    context.strokeStyle = inks.line;
    if (frame.low < 0 && frame.high > 0) strokeLevel(context, frame, 0);
    const x = Math.round(xOf(frame, 0)) + 0.5;
    context.beginPath();
    context.moveTo(x, 0);
    context.lineTo(x, plotHeight(frame));
    context.stroke();
    if (edges !== null) fillBand(context, frame, present.axis, edges, inks);
    context.lineJoin = 'round';
    context.lineWidth = 1.75;
    for (const { design, sweep } of beside) {
      context.strokeStyle = inkOf(design.mark, inks, view.getState().theme);
      context.setLineDash([...design.mark.dashes]);
      strokeColumn(context, frame, sweep.axis, sweep.columns[key]);
    }
    context.setLineDash([]);
    root.dataset['curves'] = ['A', ...beside.map(({ design }) => design.mark.letter)].join(' ');
    context.strokeStyle = inks.accent;
    context.lineWidth = 2.25;
    strokeColumn(context, frame, present.axis, present.columns[key]);
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const value of present.columns[key]) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
    if (high >= low) writeEnds(elements, frame, low, high, figure);
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
    frame.zoom = zoomOf(root);
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
    spreads.subscribe((now, before) => {
      if (now.travel !== before.travel) spoil();
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
