/** Where places of the plane stand on the picture's paper: to scale, alike along both axes, turned as the bench sees them. */
import type { Plane } from '../../../solver/index.ts';

export interface PaperFrame {
  /** The whole canvas, CSS pixels. */
  readonly width: number;
  readonly height: number;
  /** The square plot in it. */
  readonly left: number;
  readonly top: number;
  readonly size: number;
  /** Which of the plane's two axes runs across (0 first, 1 second), and which way: +1 grows to the right, −1 to the left. */
  readonly sense: 1 | -1;
  /** Least coordinates of both axes, mm, and pixels per mm. */
  readonly least: readonly [number, number];
  readonly scale: number;
  readonly plane: Plane;
}

/** Room for ticks and words about the plot. */
const MARGIN = { left: 54, right: 10, top: 8, bottom: 40 };

/** As the bench's own views have it: outboard right from the front; forward left from the side; outboard left from above. */
const SENSE: Readonly<Record<Plane, 1 | -1>> = { front: 1, side: -1, above: -1 };

/** The frame of a picture `half` mm about a middle; a canvas as wide as `width`. */
export function paperFrame(
  width: number,
  plane: Plane,
  middle: readonly [number, number],
  half: number,
): PaperFrame {
  const size = Math.max(40, width - MARGIN.left - MARGIN.right);
  return {
    width,
    height: size + MARGIN.top + MARGIN.bottom,
    left: MARGIN.left,
    top: MARGIN.top,
    size,
    sense: SENSE[plane],
    least: [middle[0] - half, middle[1] - half],
    scale: size / (2 * half),
    plane,
  };
}

export function xOf({ left, size, sense, least, scale }: PaperFrame, first: number): number {
  const way = (first - least[0]) * scale;
  return sense === 1 ? left + way : left + size - way;
}

export function yOf({ top, size, least, scale }: PaperFrame, second: number): number {
  return top + size - (second - least[1]) * scale;
}

/** The place under a point of the paper, inside the plot. */
export function placeAt(frame: PaperFrame, x: number, y: number): readonly [number, number] {
  const { left, top, size, sense, least, scale } = frame;
  const across = Math.min(size, Math.max(0, x - left)) / scale;
  const up = Math.min(size, Math.max(0, top + size - y)) / scale;
  return [least[0] + (sense === 1 ? across : size / scale - across), least[1] + up];
}
