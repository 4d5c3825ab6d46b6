/** Draws the still picture: bands, contours, marks and axes. */
import { freshPaper } from '../../charts/paper.ts';
import { bandColours } from './bands.ts';
import { drawAxes } from './paintAxes.ts';
import { bandPixels } from './paintBands.ts';
import { drawContours } from './paintContours.ts';
import { drawBests, drawIdeal, drawPresent, drawReach } from './paintMarks.ts';
import type { PaperFrame } from './paperFrame.ts';
import type { Pen, PlaceDrawing } from './placeDrawing.ts';

/** Runs a drawing inside the plot alone. */
function within(pen: Pen, { left, top, size }: PaperFrame, draw: () => void): void {
  pen.save();
  pen.beginPath();
  pen.rect(left, top, size, size);
  pen.clip();
  draw();
  pen.restore();
}

function bands(pen: Pen, drawing: PlaceDrawing, dot: number): void {
  const { frame, picture, limit, theme } = drawing;
  const { left, top, size } = frame;
  const pixels = Math.round(size * dot);
  const colours = bandColours(theme);
  const isDark = theme === 'dark';
  const image = bandPixels({ picture, limit, colours, isDark, sense: frame.sense, dot }, pixels);
  // Whole pixels of the screen: drawn at the pixel that the plot's corner falls on.
  pen.putImageData(image, Math.round(left * dot), Math.round(top * dot));
}

/** Draws everything that stands still; the probe lies over it. */
export function drawPlaces(canvas: HTMLCanvasElement, drawing: PlaceDrawing): void {
  const { frame } = drawing;
  const paper = freshPaper(canvas, frame.width, frame.height);
  if (paper === null) return;
  const { context: pen, dot } = paper;
  bands(pen, drawing, dot);
  within(pen, frame, () => {
    drawReach(pen, drawing);
    drawContours(pen, drawing);
    drawIdeal(pen, drawing);
    drawBests(pen, drawing);
    drawPresent(pen, drawing);
  });
  drawAxes(pen, drawing);
}
