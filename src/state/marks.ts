/**
 * What tells one compared design from another: a letter, the shape around it, dashes, and a colour. The colours are
 * reddish purple, bluish green and yellow of the set that Okabe and Ito published for colour-blind readers (2008),
 * darkened on light ground; blue is the present design's, orange and vermilion mean near and touch.
 */
import type { Theme } from './view.ts';

/** Places of the designs that are kept beside the present one; yesterday's takes one of the three when it is held. */
export const PLACES = ['B', 'C', 'D'] as const;

export type Place = (typeof PLACES)[number];

/** Colours only the kept designs have. */
export type DesignTone = `design${Place}`;

export interface Mark {
  readonly letter: string;
  readonly shape: 'disc' | 'ring' | 'square' | 'triangle' | 'diamond';
  /** Lengths of dash and gap, px, by turns; empty for an unbroken line. */
  readonly dashes: readonly number[];
  readonly tone: 'accent' | 'held' | DesignTone;
}

export const PRESENT_MARK: Mark = { letter: 'A', shape: 'disc', dashes: [], tone: 'accent' };

export const YESTERDAY_MARK: Mark = { letter: 'Y', shape: 'ring', dashes: [], tone: 'held' };

export const PLACE_MARKS: Readonly<Record<Place, Mark>> = {
  B: { letter: 'B', shape: 'square', dashes: [9, 4], tone: 'designB' },
  C: { letter: 'C', shape: 'triangle', dashes: [2.5, 3.5], tone: 'designC' },
  D: { letter: 'D', shape: 'diamond', dashes: [11, 3, 2.5, 3], tone: 'designD' },
};

export const DESIGN_COLOURS: Readonly<Record<Theme, Readonly<Record<DesignTone, string>>>> = {
  light: { designB: '#a0387a', designC: '#007557', designD: '#776d00' },
  dark: { designB: '#e6a0cb', designC: '#3dcf9f', designD: '#f0e442' },
};

/** The colour of a mark as a style may hold it. */
export function markColour({ tone }: Mark, theme: Theme): string {
  return tone === 'accent' || tone === 'held' ? `var(--${tone})` : DESIGN_COLOURS[theme][tone];
}
