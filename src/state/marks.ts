/** What tells one compared design from another: a letter, the shape around it, dashes and a colour that colour-blind eyes keep apart. */

/** Places of the designs that are kept beside the present one; yesterday's takes one of the three when it is held. */
export const PLACES = ['B', 'C', 'D'] as const;

export type Place = (typeof PLACES)[number];

export interface Mark {
  readonly letter: string;
  readonly shape: 'disc' | 'ring' | 'square' | 'triangle' | 'diamond';
  /** Lengths of dash and gap, px, by turns; empty for an unbroken line. */
  readonly dashes: readonly number[];
  /** Name of the page's colour, without its dashes: a token of styles.css, the same of paper.ts and palette.ts. */
  readonly colour: 'accent' | 'held' | 'designB' | 'designC' | 'designD';
}

export const PRESENT_MARK: Mark = { letter: 'A', shape: 'disc', dashes: [], colour: 'accent' };

export const YESTERDAY_MARK: Mark = { letter: 'Y', shape: 'ring', dashes: [], colour: 'held' };

/** Purple, green and ochre: apart from each other and from the blue of the present design, from amber and from vermilion. */
export const PLACE_MARKS: Readonly<Record<Place, Mark>> = {
  B: { letter: 'B', shape: 'square', dashes: [9, 4], colour: 'designB' },
  C: { letter: 'C', shape: 'triangle', dashes: [2.5, 3.5], colour: 'designC' },
  D: { letter: 'D', shape: 'diamond', dashes: [11, 3, 2.5, 3], colour: 'designD' },
};
