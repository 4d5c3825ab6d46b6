/** Beside the one column of a map without steering: the gap over travel, travel on the same upright axis. */
import { lengthNumber, lengthUnitName } from '../words/format.ts';
import type { GapScale } from './gapColours.ts';
import { WORDS_SIZE, yOfTravel } from './mapFrame.ts';
import { writeWithHalo } from './mapLines.ts';
import type { MapDrawing } from './mapPaint.ts';
import { lengthTicks } from './ticks.ts';

/** Room between the strip and the curve's plot, px. */
const GUTTER = 14;

/** Draws the curve, its scale, the lines at 0 and at the wanted gap, and the held design's curve. */
export function drawStripCurve(
  context: CanvasRenderingContext2D,
  { frame, present, held, unit, inks }: MapDrawing,
  scale: GapScale,
): void {
  const left = frame.left + frame.plotWidth + GUTTER;
  const width = frame.width - left - 10;
  const { top, plotHeight } = frame;
  if (width < 40) return;
  const gaps = [present, held].flatMap((shown) => (shown === null ? [] : [...shown.map.gap]));
  const least = Math.min(0, ...gaps);
  const most = Math.max(scale.wanted, ...gaps) * 1.05;
  const xOf = (gap: number): number => left + (width * (gap - least)) / (most - least);
  const bottom = top + plotHeight;
  context.font = `${WORDS_SIZE * frame.type}px ${inks.font}`;
  context.lineWidth = 1;
  context.strokeStyle = inks.line;
  context.strokeRect(left - 0.5, top - 0.5, width + 1, plotHeight + 1);
  context.fillStyle = inks.inkSoft;
  context.textAlign = 'center';
  context.textBaseline = 'top';
  for (const { at, text } of lengthTicks(least, most, width / 50, unit)) {
    context.fillText(text, xOf(at), bottom + 5);
  }
  context.fillText(`gap, ${lengthUnitName(unit)}`, left + width / 2, bottom + 21 * frame.type);
  const upright = (gap: number, dash: number[], word: string, y: number): void => {
    const x = Math.round(xOf(gap)) + 0.5;
    context.setLineDash(dash);
    context.strokeStyle = inks.ink;
    context.beginPath();
    context.moveTo(x, top);
    context.lineTo(x, bottom);
    context.stroke();
    context.setLineDash([]);
    context.textAlign = 'left';
    context.textBaseline = 'middle';
    writeWithHalo(context, word, x + 4, y, inks.ink, inks.card);
  };
  const wanted = lengthNumber(scale.wanted, unit, Number.isInteger(scale.wanted) ? 0 : 1);
  upright(scale.wanted, [6, 4], `${wanted} ${lengthUnitName(unit)} wanted`, bottom - 10);
  upright(0, [], 'touches', top + 10);
  for (const [shown, colour, thick] of [
    [held, inks.held, 2],
    [present, inks.accent, 2.5],
  ] as const) {
    if (shown === null) continue;
    const { map } = shown;
    context.strokeStyle = colour;
    context.lineWidth = thick;
    context.beginPath();
    let isDown = false;
    for (let row = 0; row < map.travels.length; row += 1) {
      if (map.reached[row] !== 1) {
        isDown = false;
        continue;
      }
      const x = xOf(map.gap[row]!);
      const y = yOfTravel(frame, map.travels[row]!);
      if (isDown) context.lineTo(x, y);
      else context.moveTo(x, y);
      isDown = true;
    }
    context.stroke();
  }
}
