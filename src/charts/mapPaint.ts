/** Draws the still part of the travel–lock map: everything that changes with the model, nothing that moves with the pose. */
import { WORST } from '../../solver/clearance/gapField.ts';
import type { UsableRegion } from '../../solver/index.ts';
import type { LockMap } from '../../solver/map.ts';
import type { ShownMap } from '../state/map.ts';
import type { LengthUnit, Theme } from '../state/view.ts';
import { gapUnit, lengthNumber, lengthUnitName } from '../words/format.ts';
import { createGapScale, type GapScale } from './gapColours.ts';
import { drawAxes, drawPlaces, planLevels } from './mapAxes.ts';
import { LINES_SIZE, type MapFrame, WORDS_SIZE, xOfRack, yOfTravel } from './mapFrame.ts';
import { LabelRoom, labelLines, linesAt, strokeLines, writeWithHalo } from './mapLines.ts';
import { paintGaps } from './mapPixels.ts';
import { drawRegions } from './mapRegions.ts';
import { drawStripCurve } from './mapStrip.ts';
import { drawUsable } from './mapUsable.ts';
import { freshPaper, type Inks } from './paper.ts';
import { reachEdge } from './reach.ts';

/** Everything a drawing of the map needs. */
export interface MapDrawing {
  readonly frame: MapFrame;
  readonly present: ShownMap;
  readonly held: ShownMap | null;
  /** The part that can be used, where it is to be drawn. */
  readonly usable: UsableRegion | null;
  readonly unit: LengthUnit;
  readonly theme: Theme;
  readonly inks: Inks;
}

/** Greatest reached gap of a map, mm; NaN when nothing is reached. */
function greatest({ gap, reached }: LockMap): number {
  let most = Number.NaN;
  for (let i = 0; i < gap.length; i += 1) {
    if (reached[i] === 1 && !(gap[i]! <= most)) most = gap[i]!;
  }
  return most;
}

export function scaleOf({ present, unit, theme }: MapDrawing): GapScale {
  return createGapScale(present.wanted, greatest(present.map), theme, unit);
}

const _picture = { canvas: null as HTMLCanvasElement | null };

function drawGaps(
  context: CanvasRenderingContext2D,
  { frame, present }: MapDrawing,
  scale: GapScale,
  dot: number,
): void {
  const { left, top, plotWidth, plotHeight, sense } = frame;
  _picture.canvas ??= document.createElement('canvas');
  const { canvas } = _picture;
  const width = Math.round(plotWidth * dot);
  const height = Math.round(plotHeight * dot);
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  const own = canvas.getContext('2d');
  if (own === null) return;
  const picture = own.createImageData(width, height);
  paintGaps(present.map, scale, sense, picture, dot);
  own.putImageData(picture, 0, 0);
  context.drawImage(canvas, left, top, plotWidth, plotHeight);
}

function drawContours(
  context: CanvasRenderingContext2D,
  { frame, present, held, unit, inks }: MapDrawing,
  scale: GapScale,
  room: LabelRoom,
): void {
  const { map } = present;
  context.font = `${LINES_SIZE * frame.type}px ${inks.font}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  const name = lengthUnitName(unit);
  const number = (gap: number): string => lengthNumber(gap, gapUnit(unit), gap % 1 === 0 ? 0 : 1);
  if (held !== null) {
    const style = { colour: inks.held, halo: inks.card, width: 2 };
    const touch = linesAt(held.map, 0, frame);
    const wanted = linesAt(held.map, scale.wanted, frame);
    strokeLines(context, touch, { ...style, dash: [] });
    strokeLines(context, wanted, { ...style, width: 1.25, dash: [5, 4] });
    labelLines(context, touch, 'held touches', room, inks.inkSoft, inks.card);
    const words = `held ${number(scale.wanted)} ${name}`;
    labelLines(context, wanted, words, room, inks.inkSoft, inks.card);
  }
  const touch = linesAt(map, 0, frame);
  const wanted = linesAt(map, scale.wanted, frame);
  const bold = { colour: inks.ink, halo: inks.card, width: 1.5 };
  strokeLines(context, wanted, { ...bold, dash: [6, 4] });
  strokeLines(context, touch, { ...bold, width: 2.25, dash: [] });
  labelLines(context, touch, '0 touches', room, inks.ink, inks.card);
  const words = `${number(scale.wanted)} ${name} wanted`;
  labelLines(context, wanted, words, room, inks.ink, inks.card);
  for (const level of scale.lines) {
    const lines = linesAt(map, level, frame);
    strokeLines(context, lines, { colour: 'rgb(255 255 255 / 0.45)', width: 1, dash: [] });
    labelLines(context, lines, number(level), room, inks.ink, inks.card);
  }
}

/** A tile of thin slanted lines for what is out of reach. */
function hatch(context: CanvasRenderingContext2D, inks: Inks): CanvasPattern | string {
  const tile = document.createElement('canvas');
  tile.width = 8;
  tile.height = 8;
  const own = tile.getContext('2d');
  if (own === null) return inks.paperDeep;
  own.fillStyle = inks.paperDeep;
  own.fillRect(0, 0, 8, 8);
  own.strokeStyle = inks.held;
  own.lineWidth = 1;
  own.beginPath();
  for (const shift of [-8, 0, 8]) {
    own.moveTo(shift - 1, 9);
    own.lineTo(shift + 9, -1);
  }
  own.stroke();
  return context.createPattern(tile, 'repeat') ?? inks.paperDeep;
}

/** The reachable part as a path in pixels; null when all is in reach. */
function reachPath({ frame, present }: MapDrawing): Path2D | null {
  const edge = reachEdge(present.map);
  if (edge === null) return null;
  const path = new Path2D();
  if (frame.isLine) {
    const ends = edge.filter((_, i) => i % 2 === 1);
    const low = yOfTravel(frame, Math.min(...ends));
    const high = yOfTravel(frame, Math.max(...ends));
    path.rect(frame.left, high, frame.plotWidth, low - high);
    return path;
  }
  for (let i = 0; i < edge.length; i += 2) {
    path.lineTo(xOfRack(frame, edge[i]!), yOfTravel(frame, edge[i + 1]!));
  }
  path.closePath();
  return path;
}

/** Hatches what is out of reach; false when the words for it found no room. */
function drawOutOfReach(
  context: CanvasRenderingContext2D,
  { frame, present, inks }: MapDrawing,
  reach: Path2D,
  room: LabelRoom,
): boolean {
  const { left, top, plotWidth, plotHeight } = frame;
  const outside = new Path2D();
  outside.rect(left, top, plotWidth, plotHeight);
  outside.addPath(reach);
  context.fillStyle = hatch(context, inks);
  context.fill(outside, 'evenodd');
  context.strokeStyle = inks.ink;
  context.lineWidth = 1.25;
  context.stroke(reach);
  const place = placeForWords(present.map, frame, room, context.measureText(OUT_OF_REACH).width);
  if (place === null) return false;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  writeWithHalo(context, OUT_OF_REACH, place[0], place[1], inks.ink, inks.paperDeep);
  room.take(place[0], place[1], 42, 9);
  return true;
}

const OUT_OF_REACH = 'out of reach';

/** A place for words in the unreached part: the nearest fit to its middle, in the quadrant that has most of it. */
function placeForWords(
  map: LockMap,
  frame: MapFrame,
  room: LabelRoom,
  width: number,
): readonly [number, number] | null {
  const columns = map.racks.length;
  if (frame.isLine) return null;
  const quadrants: [number, number][][] = [[], [], [], []];
  map.reached.forEach((reached, node) => {
    if (reached === 1) return;
    const travel = map.travels[Math.floor(node / columns)]!;
    const rack = map.racks[node % columns]!;
    quadrants[(travel < 0 ? 1 : 0) + (rack < 0 ? 2 : 0)]!.push([
      xOfRack(frame, rack),
      yOfTravel(frame, travel),
    ]);
  });
  const most = quadrants.sort((a, b) => b.length - a.length)[0]!;
  const x = most.reduce((sum, place) => sum + place[0], 0) / most.length;
  const y = most.reduce((sum, place) => sum + place[1], 0) / most.length;
  const far = (place: readonly [number, number]): number => Math.hypot(place[0] - x, place[1] - y);
  const across = (0.6 * frame.plotWidth) / (columns - 1);
  const down = (0.6 * frame.plotHeight) / (map.travels.length - 1);
  const isOut = (px: number, py: number): boolean =>
    most.some((place) => Math.abs(place[0] - px) < across && Math.abs(place[1] - py) < down);
  const half = width / 2 + 4;
  const fits = ([px, py]: readonly [number, number]): boolean =>
    room.isFree(px, py, half, 8) &&
    [-half, 0, half].every((aside) => isOut(px + aside, py - 7) && isOut(px + aside, py + 7));
  return most.sort((a, b) => far(a) - far(b)).find(fits) ?? null;
}

/** A ring at the worst place, and room for its words on the side that has it; answers how to write them. */
function planWorst(
  context: CanvasRenderingContext2D,
  { frame, present, unit, inks }: MapDrawing,
  room: LabelRoom,
): (() => void) | null {
  const { worst } = present;
  if (worst === null) return null;
  const x = xOfRack(frame, worst.rack);
  const y = yOfTravel(frame, worst.travel);
  const font = `600 ${13 * frame.type}px ${inks.font}`;
  context.font = font;
  const text = `least ${lengthNumber(worst.gap, gapUnit(unit))}`;
  const half = context.measureText(text).width / 2;
  const isRight = x + 14 + 2 * half < frame.left + frame.plotWidth;
  const middle = isRight ? x + 12 + half : x - 12 - half;
  const at = Math.min(frame.top + frame.plotHeight - 10, Math.max(frame.top + 10, y));
  room.take(middle, at, half + 3, 9 * frame.type);
  room.take(x, y, 9, 9);
  return () => {
    for (const [colour, width] of [
      [inks.card, 5],
      [inks.ink, 2],
    ] as const) {
      context.beginPath();
      context.arc(x, y, 6, 0, 2 * Math.PI);
      context.strokeStyle = colour;
      context.lineWidth = width;
      context.stroke();
    }
    if (frame.isLine) return;
    context.font = font;
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    writeWithHalo(context, text, middle, at, inks.ink, inks.card);
  };
}

/** What a drawn map leaves to be said beside it. */
export interface DrawnMap {
  readonly scale: GapScale;
  /** False when part of the map is out of reach and had no room for the words. */
  readonly isReachNamed: boolean;
}

/** Draws the whole still map. */
export function drawMap(canvas: HTMLCanvasElement, drawing: MapDrawing): DrawnMap {
  const { frame, inks, present, unit } = drawing;
  const scale = scaleOf(drawing);
  const fresh = freshPaper(canvas, frame.width, frame.height);
  if (fresh === null) return { scale, isReachNamed: true };
  const { context, dot } = fresh;
  const room = new LabelRoom(frame);
  const isEmpty = present.map.gap.some(Number.isNaN);
  if (!isEmpty) drawGaps(context, drawing, scale, dot);
  const reach = reachPath(drawing);
  const writeWorst = planWorst(context, drawing, room);
  context.font = `${WORDS_SIZE * frame.type}px ${inks.font}`;
  const levels = planLevels(context, frame, present.model, present.worst?.rack ?? 0, room);
  context.save();
  context.beginPath();
  context.rect(frame.left, frame.top, frame.plotWidth, frame.plotHeight);
  context.clip();
  context.save();
  if (reach !== null) context.clip(reach);
  if (!frame.isLine && !isEmpty) {
    if (present.pair === WORST) drawRegions(context, drawing, room);
    drawContours(context, drawing, scale, room);
  }
  context.restore();
  context.font = `${WORDS_SIZE * frame.type}px ${inks.font}`;
  const isReachNamed = reach === null || drawOutOfReach(context, drawing, reach, room);
  if (drawing.usable !== null && !frame.isLine)
    drawUsable(context, drawing.usable, frame, room, inks);
  drawPlaces(context, frame, levels, inks);
  context.restore();
  drawAxes(context, frame, unit, inks);
  writeWorst?.();
  if (frame.isLine && !isEmpty) drawStripCurve(context, drawing, scale);
  return { scale, isReachNamed };
}
