/** The axes about the plot: ticks in the unit shown, and the ways in vehicle words. */
import { PLANE_AXES } from '../../../solver/index.ts';
import { lengthTicks } from '../../charts/ticks.ts';
import { gapUnit, lengthUnitName } from '../../words/format.ts';
import { type PaperFrame, xOf, yOf } from './paperFrame.ts';
import type { Pen, PlaceDrawing } from './placeDrawing.ts';
import { WAYS } from './words.ts';

/** Numbers along both axes. */
function ticks(pen: Pen, { frame, inks, unit }: PlaceDrawing): void {
  const { left, top, size, least, scale } = frame;
  const span = size / scale;
  const most = size > 460 ? 8 : 5;
  pen.font = `400 13px ${inks.font}`;
  pen.fillStyle = inks.inkSoft;
  pen.textAlign = 'center';
  pen.textBaseline = 'top';
  for (const { at, text } of lengthTicks(least[0], least[0] + span, most, gapUnit(unit))) {
    const x = xOf(frame, at);
    pen.fillRect(x - 0.5, top + size, 1, 4);
    pen.fillText(text, Math.min(left + size - 8, Math.max(left + 8, x)), top + size + 6);
  }
  pen.textAlign = 'right';
  pen.textBaseline = 'middle';
  for (const { at, text } of lengthTicks(least[1], least[1] + span, most, gapUnit(unit))) {
    const y = yOf(frame, at);
    pen.fillRect(left - 4, y - 0.5, 4, 1);
    pen.fillText(text, left - 7, Math.min(top + size - 6, Math.max(top + 6, y)));
  }
}

/** Draws the plot's frame, its ticks, and where each axis leads. */
export function drawAxes(pen: Pen, drawing: PlaceDrawing): void {
  const { frame, inks, unit } = drawing;
  const { left, top, size, plane, sense, height } = frame;
  const [i, j] = PLANE_AXES[plane];
  pen.strokeStyle = inks.line;
  pen.lineWidth = 1;
  pen.strokeRect(left + 0.5, top + 0.5, size - 1, size - 1);
  ticks(pen, drawing);
  pen.font = `600 13px ${inks.font}`;
  pen.fillStyle = inks.ink;
  pen.textBaseline = 'alphabetic';
  const [less, more] = WAYS[i]!;
  const name = lengthUnitName(gapUnit(unit));
  const base = height - 6;
  pen.textAlign = 'left';
  pen.fillText(`← ${sense === 1 ? less : more}`, left, base);
  pen.textAlign = 'right';
  pen.fillText(`${sense === 1 ? more : less} →`, left + size, base);
  pen.textAlign = 'center';
  pen.fillText(`${'xyz'[i]}, ${name}`, left + size / 2, base);
  upWords(pen, frame, WAYS[j]!, `${'xyz'[j]}, ${name}`);
}

/** Words along the upright axis, turned. */
function upWords(
  pen: Pen,
  { top, size }: PaperFrame,
  [less, more]: readonly [string, string],
  name: string,
): void {
  pen.save();
  pen.translate(12, top + size / 2);
  pen.rotate(-Math.PI / 2);
  pen.textBaseline = 'middle';
  pen.textAlign = 'left';
  pen.fillText(`← ${less}`, -size / 2, 0);
  pen.textAlign = 'right';
  pen.fillText(`${more} →`, size / 2, 0);
  pen.textAlign = 'center';
  pen.fillText(name, 0, 0);
  pen.restore();
}
