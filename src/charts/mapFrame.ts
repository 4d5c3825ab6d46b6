/** Where travel and rack stand on the map's paper, CSS pixels. */
import type { Range } from '../../solver/map.ts';

export interface MapFrame {
  /** The whole canvas. */
  readonly width: number;
  readonly height: number;
  /** The plot inside it. */
  readonly left: number;
  readonly top: number;
  readonly plotWidth: number;
  readonly plotHeight: number;
  readonly travel: Range;
  readonly rack: Range;
  /** +1 when rack grows to the right of the paper, −1 when to the left: left lock stands on the left. */
  readonly sense: 1 | -1;
  /** True when there is one column only: no steering limit is stated. */
  readonly isLine: boolean;
  /** Size of the type: larger on a large map. */
  readonly type: number;
}

/** Room about the plot for ticks and words, at type 1. */
const MARGIN = { left: 60, right: 10, top: 8, bottom: 37 };
/** Sizes of the type, px, at type 1: about the plot, and along its lines. */
export const WORDS_SIZE = 13.5;
export const LINES_SIZE = 12.5;
/** From this width on, px, the map is read from farther away. */
const LARGE = 640;
const LARGE_TYPE = 1.25;
/** Width of the one column of a map without steering. */
export const STRIP = 40;

export function createMapFrame(
  width: number,
  height: number,
  travel: Range,
  rack: Range,
  sense: 1 | -1,
): MapFrame {
  const isLine = rack[0] === rack[1];
  const type = width < LARGE ? 1 : LARGE_TYPE;
  const left = MARGIN.left * type;
  const room = Math.max(20, width - left - MARGIN.right);
  return {
    width,
    height,
    type,
    left,
    top: MARGIN.top,
    plotWidth: isLine ? Math.min(STRIP, room) : room,
    plotHeight: Math.max(20, height - MARGIN.top - MARGIN.bottom * type),
    travel,
    rack,
    sense,
    isLine,
  };
}

/** Pixels from the canvas's left edge. */
export function xOfRack({ left, plotWidth, rack, sense, isLine }: MapFrame, at: number): number {
  if (isLine) return left + plotWidth / 2;
  const share = (at - rack[0]) / (rack[1] - rack[0]);
  return left + plotWidth * (sense === 1 ? share : 1 - share);
}

/** Pixels from the canvas's top edge: bump is up. */
export function yOfTravel({ top, plotHeight, travel }: MapFrame, at: number): number {
  return top + (plotHeight * (travel[1] - at)) / (travel[1] - travel[0]);
}

/** Inverse of `xOfRack`, not clamped. */
export function rackAt({ left, plotWidth, rack, sense, isLine }: MapFrame, x: number): number {
  if (isLine) return rack[0];
  const share = (x - left) / plotWidth;
  return rack[0] + (sense === 1 ? share : 1 - share) * (rack[1] - rack[0]);
}

/** Inverse of `yOfTravel`, not clamped. */
export function travelAt({ top, plotHeight, travel }: MapFrame, y: number): number {
  return travel[1] - ((y - top) / plotHeight) * (travel[1] - travel[0]);
}
