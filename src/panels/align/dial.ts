/** What a dial turns, and how a hand, a key and a typed text turn it. Values are the source's own: degrees, or turns. */
import type { Entered } from '../../words/entry.ts';

export interface DialSource {
  readonly label: string;
  readonly read: () => number;
  readonly write: (value: number) => void;
  readonly least: number;
  readonly most: number;
  /** Value of one whole turn of the dial's hand. */
  readonly perTurn: number;
  /** Marks or flats on the face in one turn; null where it has none. */
  readonly divisions: number | null;
  /** Where there are no divisions: step of a key; the fine step is also what a free hand is rounded to. */
  readonly step: number;
  readonly fine: number;
  readonly coarse: number;
  /** What stops it at either end; none where nothing does. */
  readonly stops: string;
  /** What stands in the field; `unit` stands behind it. */
  readonly figure: (value: number) => string;
  readonly unit: string;
  /** "3 marks outboard". */
  readonly words: (value: number) => string;
  /** What it does: "pivot 4.9 mm outboard". */
  readonly effect: (value: number) => string;
  readonly enter: (text: string) => Entered;
}

export function clamped(value: number, { least, most }: DialSource): number {
  // Never a minus zero.
  return Math.min(most, Math.max(least, value)) + 0;
}

function rounded(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(6));
}

/** Share of a division within which a hand is drawn onto its mark. */
const CATCH = 0.24;

/** Where a hand that stands at `value` lets the dial stand: on a mark nearby, unless it asks to be left alone. */
export function caught(value: number, source: DialSource, isFree: boolean): number {
  const { divisions, perTurn, fine } = source;
  if (divisions !== null && !isFree) {
    const division = perTurn / divisions;
    const mark = Math.round(value / division) * division;
    if (Math.abs(value - mark) < CATCH * division) return clamped(rounded(mark, 1e-6), source);
  }
  return clamped(rounded(value, fine), source);
}

/** The next place in a sense (+1 or −1): the next mark, or a step on; Shift goes far, Alt goes finely. */
export function stepped(
  source: DialSource,
  sense: number,
  { shiftKey, altKey }: { readonly shiftKey: boolean; readonly altKey: boolean },
): number {
  const { divisions, perTurn, step, fine, coarse } = source;
  const value = source.read();
  if (shiftKey) return clamped(rounded(value + sense * coarse, 1e-6), source);
  if (altKey) return clamped(rounded(value + sense * fine, 1e-6), source);
  const size = divisions === null ? step : perTurn / divisions;
  // From between two marks to the nearer one of the two in that sense.
  const count =
    sense > 0 ? Math.floor(value / size + 1e-6) + 1 : Math.ceil(value / size - 1e-6) - 1;
  return clamped(rounded(count * size, 1e-6), source);
}

/** Angle of the pointer about the dial's middle, degrees, 0 at the top, clockwise. */
export function pointerAngle(box: DOMRect, x: number, y: number): number {
  const across = x - (box.left + box.width / 2);
  const down = y - (box.top + box.height / 2);
  return (Math.atan2(across, -down) * 180) / Math.PI;
}

/** A difference of angles the short way round, −180 to 180. */
export function shortWay(degrees: number): number {
  return degrees - 360 * Math.round(degrees / 360);
}
