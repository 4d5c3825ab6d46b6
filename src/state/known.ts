/** What is known of each reading: found out behind the page, written here late, read in every frame. */
import type { FigureStyle } from '../words/figures.ts';
import { requestFrame } from './frame.ts';

export interface Known {
  /** The reading's figure, cut to the digits that are known. */
  readonly figure: FigureStyle;
  /** "±0.6", in the figure's unit: one standard uncertainty; '' where it is smaller than the figure's last digit. */
  readonly spread: string;
}

export type KnownTable = Readonly<Partial<Record<string, Known>>>;

const NOTHING: KnownTable = {};
let table = NOTHING;

/** What is known of a reading by its measure's key; undefined where nothing is, or where nobody wants to see it. */
export function knownOf(key: string): Known | undefined {
  return table[key];
}

/** Whether ± are shown at all. */
export function isKnown(): boolean {
  return table !== NOTHING;
}

/** Changes whenever anything known does. */
export function allKnown(): KnownTable {
  return table;
}

/** Readings take it over in the next frame; null: they go back to all their digits. */
export function tellKnown(known: KnownTable | null): void {
  table = known ?? NOTHING;
  requestFrame();
}
