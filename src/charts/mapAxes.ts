/** Axes, lock and bump words, ride height, stops and the design pose on the map's paper. */
import type { Model } from '../../solver/index.ts';
import { rideTravel } from '../../solver/model/defaults.ts';
import type { LengthUnit } from '../state/view.ts';
import { lengthUnitName } from '../words/format.ts';
import { type MapFrame, WORDS_SIZE, xOfRack, yOfTravel } from './mapFrame.ts';
import { type LabelRoom, writeWithHalo } from './mapLines.ts';
import type { Inks } from './paper.ts';
import { lengthTicks } from './ticks.ts';

function drawTicks(
  context: CanvasRenderingContext2D,
  frame: MapFrame,
  unit: LengthUnit,
  inks: Inks,
): void {
  const { left, top, plotWidth, plotHeight, travel, rack, isLine, type } = frame;
  context.fillStyle = inks.inkSoft;
  context.strokeStyle = inks.inkSoft;
  context.lineWidth = 1;
  context.textAlign = 'right';
  context.textBaseline = 'middle';
  for (const { at, text } of lengthTicks(travel[0], travel[1], plotHeight / (30 * type), unit)) {
    const y = Math.round(yOfTravel(frame, at)) + 0.5;
    context.beginPath();
    context.moveTo(left - 4, y);
    context.lineTo(left, y);
    context.stroke();
    context.fillText(text, left - 6, y);
  }
  if (isLine) return;
  context.textAlign = 'center';
  context.textBaseline = 'top';
  const bottom = top + plotHeight;
  for (const { at, text } of lengthTicks(rack[0], rack[1], plotWidth / (44 * type), unit)) {
    const x = Math.round(xOfRack(frame, at)) + 0.5;
    context.beginPath();
    context.moveTo(x, bottom);
    context.lineTo(x, bottom + 4);
    context.stroke();
    context.fillText(text, x, bottom + 5);
  }
}

function drawWords(
  context: CanvasRenderingContext2D,
  frame: MapFrame,
  unit: LengthUnit,
  inks: Inks,
): void {
  const { left, top, plotWidth, plotHeight, isLine, type } = frame;
  const bottom = top + plotHeight;
  const soft = inks.inkSoft;
  const upright = (text: string, y: number, align: CanvasTextAlign, colour: string): void => {
    context.save();
    context.translate(8 * type, y);
    context.rotate(-Math.PI / 2);
    context.textAlign = align;
    context.textBaseline = 'middle';
    context.fillStyle = colour;
    context.fillText(text, 0, 0);
    context.restore();
  };
  upright('bump', top, 'right', inks.ink);
  const name = lengthUnitName(unit);
  const words = plotHeight > 142 * type ? `travel, ${name}` : name;
  if (plotHeight > 96 * type) upright(words, top + plotHeight / 2, 'center', soft);
  upright('droop', bottom, 'left', inks.ink);
  if (isLine) return;
  context.textBaseline = 'top';
  context.fillStyle = inks.ink;
  context.textAlign = 'left';
  context.fillText('left lock', left, bottom + 21 * type);
  context.textAlign = 'right';
  context.fillText('right lock', left + plotWidth, bottom + 21 * type);
  context.textAlign = 'center';
  context.fillStyle = soft;
  context.fillText(`rack, ${lengthUnitName(unit)}`, left + plotWidth / 2, bottom + 21 * type);
}

/** A level line across the plot, and where its word stands: null where there is no room. */
interface Level {
  readonly travel: number;
  readonly word: string;
  readonly dash: readonly number[];
  readonly place: readonly [number, number] | null;
}

/** Finds room for a level's word: at the plot's end that is wanted first, below the line or above. */
function placeOfWord(
  context: CanvasRenderingContext2D,
  frame: MapFrame,
  travel: number,
  word: string,
  isRightFirst: boolean,
  room: LabelRoom,
): readonly [number, number] | null {
  const { left, plotWidth, isLine, type } = frame;
  if (isLine) return null;
  const half = context.measureText(word).width / 2;
  const y = yOfTravel(frame, travel);
  const ends = [left + half + 7, left + plotWidth - half - 7];
  if (isRightFirst) ends.reverse();
  for (const x of ends) {
    for (const up of [10 * type, -10 * type]) {
      if (!room.isFree(x, y + up, half + 3, 7 * type)) continue;
      room.take(x, y + up, half + 3, 7 * type);
      return [x, y + up];
    }
  }
  return null;
}

/** The levels to draw, their words placed away from the worst place before anything else takes the room. */
export function planLevels(
  context: CanvasRenderingContext2D,
  frame: MapFrame,
  model: Model,
  worstRack: number,
  room: LabelRoom,
): readonly Level[] {
  const { bump, droop } = model.stops ?? {};
  const [least, most] = frame.travel;
  const middle = frame.left + frame.plotWidth / 2;
  const isRightFirst = xOfRack(frame, worstRack) < middle;
  const level = (travel: number, word: string, dash: readonly number[]): Level => {
    const place = placeOfWord(context, frame, travel, word, isRightFirst, room);
    return { travel, word, dash, place };
  };
  return [
    level(rideTravel(model.travel), 'ride height', []),
    ...(bump !== undefined && bump < most ? [level(bump, 'bump stop', [2, 3])] : []),
    ...(droop !== undefined && -droop > least ? [level(-droop, 'droop stop', [2, 3])] : []),
  ];
}

function drawLevel(
  context: CanvasRenderingContext2D,
  frame: MapFrame,
  { travel, word, dash, place }: Level,
  inks: Inks,
): void {
  const { left, plotWidth } = frame;
  const y = Math.round(yOfTravel(frame, travel)) + 0.5;
  context.setLineDash([...dash]);
  context.beginPath();
  context.moveTo(left, y);
  context.lineTo(left + plotWidth, y);
  context.strokeStyle = inks.card;
  context.lineWidth = 2.5;
  context.stroke();
  context.strokeStyle = inks.ink;
  context.lineWidth = 1;
  context.stroke();
  context.setLineDash([]);
  if (place === null) return;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  writeWithHalo(context, word, place[0], place[1], inks.ink, inks.card);
}

function drawDesign(context: CanvasRenderingContext2D, frame: MapFrame, inks: Inks): void {
  const x = Math.round(xOfRack(frame, 0)) + 0.5;
  const y = Math.round(yOfTravel(frame, 0)) + 0.5;
  for (const [colour, width] of [
    [inks.card, 4],
    [inks.ink, 1.5],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.beginPath();
    context.moveTo(x - 6, y);
    context.lineTo(x + 6, y);
    context.moveTo(x, y - 6);
    context.lineTo(x, y + 6);
    context.stroke();
  }
}

/** Lines and marks inside the plot: stops, ride height, design pose. */
export function drawPlaces(
  context: CanvasRenderingContext2D,
  frame: MapFrame,
  levels: readonly Level[],
  inks: Inks,
): void {
  for (const level of levels) drawLevel(context, frame, level, inks);
  drawDesign(context, frame, inks);
}

/** Ticks and words about the plot, and its frame; the steering limits are its heavy sides. */
export function drawAxes(
  context: CanvasRenderingContext2D,
  frame: MapFrame,
  unit: LengthUnit,
  inks: Inks,
): void {
  const { left, top, plotWidth, plotHeight } = frame;
  context.font = `${WORDS_SIZE * frame.type}px ${inks.font}`;
  drawTicks(context, frame, unit, inks);
  drawWords(context, frame, unit, inks);
  context.strokeStyle = inks.ink;
  context.lineWidth = 1;
  context.strokeRect(left - 0.5, top - 0.5, plotWidth + 1, plotHeight + 1);
  if (frame.isLine) return;
  context.fillStyle = inks.ink;
  context.fillRect(left - 2, top - 1, 2, plotHeight + 2);
  context.fillRect(left + plotWidth, top - 1, 2, plotHeight + 2);
}
