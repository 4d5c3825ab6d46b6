/** The map's legend: its bands side by side with their edges in figures, and what they mean in words. */
import type { LengthUnit, Theme } from '../state/view.ts';
import { lengthNumber, lengthUnitName } from '../words/format.ts';
import type { GapScale, Rgb } from './gapColours.ts';
import { freshPaper, type Inks } from './paper.ts';

/** Height of the bar, px. */
const BAR = 17;
const css = ([red, green, blue]: Rgb): string => `rgb(${red} ${green} ${blue})`;

interface Part {
  readonly word: string;
  /** First band, and the one after the last. */
  readonly from: number;
  readonly to: number;
  /** Width as a share of the legend. */
  readonly share: number;
  readonly pattern: 'hatch' | 'dots' | null;
  readonly ink: string;
}

function partsOf(scale: GapScale, theme: Theme): readonly Part[] {
  const zero = scale.edges.findIndex((edge) => edge >= 0);
  const wanted = scale.edges.findIndex((edge) => edge >= scale.wanted);
  const last = scale.colours.length;
  const dark = '#182126';
  const parts: Part[] = [
    { word: 'touching', from: 0, to: zero, share: 0.22, pattern: 'hatch', ink: '#ffffff' },
    { word: 'under wanted', from: zero, to: wanted, share: 0.28, pattern: 'dots', ink: dark },
    {
      word: 'clear',
      from: wanted,
      to: last,
      share: 0.5,
      pattern: null,
      ink: theme === 'light' ? dark : '#ffffff',
    },
  ];
  return parts.filter(({ from, to }) => to > from);
}

function drawPattern(
  context: CanvasRenderingContext2D,
  pattern: Part['pattern'],
  x: number,
  width: number,
): void {
  context.save();
  context.beginPath();
  context.rect(x, 0, width, BAR);
  context.clip();
  if (pattern === 'hatch') {
    context.strokeStyle = 'rgb(255 255 255 / 0.6)';
    context.lineWidth = 1.4;
    context.beginPath();
    for (let at = x - BAR; at < x + width; at += 6) {
      context.moveTo(at, BAR);
      context.lineTo(at + BAR, 0);
    }
    context.stroke();
  } else if (pattern === 'dots') {
    context.fillStyle = 'rgb(90 60 10 / 0.8)';
    for (let row = 0; 3 + 7 * row < BAR; row += 1) {
      for (let at = x + 2 + (row % 2) * 3.5; at < x + width; at += 7) {
        context.fillRect(at, 3 + 7 * row, 1.6, 1.6);
      }
    }
  }
  context.restore();
}

interface Mark {
  readonly x: number;
  readonly text: string;
}

/** One part's bands, pattern and word. */
function drawPart(
  context: CanvasRenderingContext2D,
  { word, from, to, pattern, ink }: Part,
  scale: GapScale,
  left: number,
  width: number,
  inks: Inks,
): void {
  const step = width / (to - from);
  for (let band = from; band < to; band += 1) {
    context.fillStyle = css(scale.colours[band]!);
    context.fillRect(left + (band - from) * step, 0, step + 0.5, BAR);
  }
  drawPattern(context, pattern, left, width);
  context.font = `600 13px ${inks.font}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.lineWidth = 3.5;
  context.lineJoin = 'round';
  context.strokeStyle = css(scale.colours[pattern === 'hatch' ? to - 1 : from]!);
  context.fillStyle = ink;
  const half = context.measureText(word).width / 2;
  const at = pattern === null ? left + half + 8 : left + width / 2;
  context.strokeText(word, at, BAR / 2 + 0.5);
  context.fillText(word, at, BAR / 2 + 0.5);
}

/** The edges that are worth a figure: 0, the wanted gap and all above it. */
function marksOf(
  part: Part,
  scale: GapScale,
  left: number,
  width: number,
  unit: LengthUnit,
): Mark[] {
  const marks: Mark[] = [];
  for (let band = Math.max(1, part.from); band < part.to; band += 1) {
    const edge = scale.edges[band]!;
    if (edge !== 0 && edge < scale.wanted) continue;
    const number = lengthNumber(edge, unit, Number.isInteger(edge) ? 0 : 1);
    const isNamed = edge === 0 || edge === scale.wanted;
    const x = left + ((band - part.from) / (part.to - part.from)) * width;
    marks.push({ x, text: isNamed ? `${number} ${lengthUnitName(unit)}` : number });
  }
  return marks;
}

/** Draws the legend over the width of its canvas. */
export function drawLegend(
  canvas: HTMLCanvasElement,
  width: number,
  height: number,
  scale: GapScale,
  theme: Theme,
  unit: LengthUnit,
  inks: Inks,
): void {
  const fresh = freshPaper(canvas, width, height);
  if (fresh === null) return;
  const { context } = fresh;
  let left = 0;
  const marks: Mark[] = [];
  for (const part of partsOf(scale, theme)) {
    const wide = part.share * width;
    drawPart(context, part, scale, left, wide, inks);
    marks.push(...marksOf(part, scale, left, wide, unit));
    left += wide;
  }
  context.font = `13px ${inks.font}`;
  context.fillStyle = inks.inkSoft;
  context.textAlign = 'center';
  context.textBaseline = 'top';
  let end = -1;
  for (const { x, text } of marks) {
    const half = context.measureText(text).width / 2;
    if (x - half < end + 4) continue;
    end = x + half;
    context.fillText(text, Math.min(x, width - half), BAR + 3);
  }
}
