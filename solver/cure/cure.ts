/** The smallest single changes that cure what fails, as answers. Lengths mm, angles degrees. */

import type { Model } from '../model/model.ts';
import type { MarginUnit } from '../stops/margin.ts';

/** What is changed, one thing at a time. */
export type CureKind =
  | 'rackLimit'
  | 'bumpStop'
  | 'droopStop'
  | 'spacer'
  | 'wheelOffset'
  | 'rodBend'
  | 'rodDiameter'
  | 'innerEnd'
  | 'outerEnd'
  | 'coiloverTop'
  | 'coiloverBottom';

export const CURE_KINDS: readonly CureKind[] = [
  'rackLimit',
  'bumpStop',
  'droopStop',
  'spacer',
  'wheelOffset',
  'rodBend',
  'rodDiameter',
  'innerEnd',
  'outerEnd',
  'coiloverTop',
  'coiloverBottom',
];

/** A number that a change sets or moves; `before` is null where there was none. */
export interface Moved {
  readonly label: string;
  readonly before: number | null;
  readonly after: number;
  readonly unit: MarginUnit;
}

/** Another pair's gap, or another limit's margin, that is worse for it. */
export interface Worsened extends Moved {
  readonly before: number;
  /** "tight", "touch" or "met" where the change has brought it to that; null where it only has less left. */
  readonly turned: 'tight' | 'touch' | 'met' | null;
}

/** The smallest change of one kind. */
export interface Cure {
  readonly kind: CureKind;
  /** What stands before and after the amount in words: "spacer", "thicker". */
  readonly says: readonly [string, string];
  /** How much is changed, mm, never negative; the greatest that was tried where it does not reach. */
  readonly amount: number;
  /** The numbers of the model that it sets. */
  readonly settings: readonly Moved[];
  readonly model: Model;
  /** False where even the greatest change that is tried does not bring it to what is wanted. */
  readonly reaches: boolean;
  /** The least gap, or the limit's least margin, with it; of the best that is reached where it does not reach. */
  readonly least: number;
  /** True when it is proven over the whole range that no less is left than wanted. */
  readonly isProven: boolean;
  /** Alignment, lock and track that it moves: of the set pose, and of the travel at rack 0. */
  readonly moves: readonly Moved[];
  /** Other pairs and limits that are worse for it, what has least to spare first. */
  readonly worsened: readonly Worsened[];
}

/** All that was found for one pair or limit. */
export interface Cures {
  /** The pair's or the limit's key. */
  readonly key: string;
  /** The least gap or margin of the model as it is, and what is wanted. */
  readonly least: number;
  readonly wanted: number;
  readonly unit: MarginUnit;
  /** Those that reach first; within them in the order of `CURE_KINDS`. */
  readonly cures: readonly Cure[];
}

/** "spacer 4.2 mm thicker": a cure in words, its amount as the caller writes lengths. */
export function cureWords({ says, amount }: Cure, lengthText: (mm: number) => string): string {
  return `${says[0]} ${lengthText(amount)} ${says[1]}`;
}
