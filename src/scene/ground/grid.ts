/** The scale grid on the ground: whole steps from the vehicle's axes, fading outwards. Pure numbers, vehicle axes, mm. */
import { MM_PER_INCH } from '../../../solver/units.ts';
import type { LengthUnit } from '../../state/view.ts';

/** Spacing of the fine and of the bold lines, mm: 100 and 500 mm, or 4 and 20 inches. */
export function gridSteps(unit: LengthUnit): readonly [fine: number, bold: number] {
  return unit === 'mm' ? [100, 500] : [4 * MM_PER_INCH, 20 * MM_PER_INCH];
}

export interface Grid {
  /** Ends of line pieces, three numbers each, z = 0. */
  readonly positions: Float32Array;
  /** Colour and opacity of each end, four numbers. */
  readonly colours: Float32Array;
}

export type Rgb = readonly [number, number, number];

/** Opacity at a distance from the middle: full inside a third of the reach, none at its end. */
function fade(distance: number, reach: number): number {
  const t = Math.min(1, Math.max(0, (distance / reach - 0.35) / 0.65));
  return 1 - t * t * (3 - 2 * t);
}

/** Lines within `reach` of (x, y), in pieces one fine step long, each end with its own opacity. */
export function gridLines(
  unit: LengthUnit,
  middle: readonly [number, number],
  reach: number,
  fineColour: Rgb,
  boldColour: Rgb,
): Grid {
  const [fine, bold] = gridSteps(unit);
  const perBold = Math.round(bold / fine);
  const positions: number[] = [];
  const colours: number[] = [];
  const least = middle.map((at) => Math.ceil((at - reach) / fine));
  const most = middle.map((at) => Math.floor((at + reach) / fine));
  const push = (x: number, y: number, isBold: boolean): void => {
    const opacity = fade(Math.hypot(x - middle[0], y - middle[1]), reach);
    positions.push(x, y, 0);
    colours.push(...(isBold ? boldColour : fineColour), opacity);
  };
  for (const axis of [0, 1] as const) {
    const other = axis === 0 ? 1 : 0;
    for (let line = least[axis]!; line <= most[axis]!; line += 1) {
      const isBold = line % perBold === 0;
      for (let piece = least[other]!; piece < most[other]!; piece += 1) {
        for (const end of [piece, piece + 1]) {
          if (axis === 0) push(line * fine, end * fine, isBold);
          else push(end * fine, line * fine, isBold);
        }
      }
    }
  }
  return { positions: Float32Array.from(positions), colours: Float32Array.from(colours) };
}
