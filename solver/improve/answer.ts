/** Better designs, as answers: what moves, what every wish makes of it, and what holds. mm, degrees. */
import type { Moved } from '../cure/cure.ts';
import type { Model } from '../model/model.ts';
import type { MarginUnit } from '../stops/margin.ts';
import type { Wish } from './plan.ts';

/** How well it is known that something holds: by proof over the whole range, by what was found, or it does not. */
export type Holding = 'proven' | 'found' | 'broken';

/** A wish before and after. */
export interface WishAnswer {
  readonly wish: Wish;
  readonly before: { readonly figure: number; readonly cost: number };
  readonly after: { readonly figure: number; readonly cost: number };
  /** Of a least gap or margin: what is proven over the whole range, −∞ where nothing is; null for all other wishes. */
  readonly provenAtLeast: number | null;
}

/** A gap or a limit's margin that had to hold. */
export interface FloorAnswer {
  readonly key: string;
  readonly label: string;
  readonly unit: MarginUnit;
  readonly wanted: number;
  readonly before: number;
  readonly after: number;
  /** True where the present design has less than it should: then it was to get no worse. */
  readonly wasBroken: boolean;
  readonly holding: Holding;
}

export interface Answer {
  readonly model: Model;
  /** The value of each mover's first input. */
  readonly values: readonly number[];
  /** The inputs that move. */
  readonly moves: readonly Moved[];
  readonly wishes: readonly WishAnswer[];
  /** Sum of the costs of all wishes. */
  readonly cost: { readonly before: number; readonly after: number };
  readonly floors: readonly FloorAnswer[];
  /** Measures that were to stay. */
  readonly stays: readonly {
    readonly before: number;
    readonly after: number;
    readonly isKept: boolean;
  }[];
  /** True when all that must hold does. */
  readonly holds: boolean;
  /** Alignment, lock and track that move with it. */
  readonly effects: readonly Moved[];
  /** Gaps and margins that are not held and are worse for it, what has least to spare first. */
  readonly worsened: readonly (Moved & { readonly turned: 'tight' | 'touch' | 'met' | null })[];
}

/** All that a search found. */
export interface Answers {
  /** The best first; none where nothing inside the bounds is better. */
  readonly answers: readonly Answer[];
  /** The present design's cost. */
  readonly cost: number;
  /**
   * By wish: its present figure (NaN where there is none) and cost, whether anything that may move changes it, and the
   * standard uncertainty of the figure from points as measured (null where nothing is stated, and for gaps and margins).
   */
  readonly wishes: readonly {
    readonly figure: number;
    readonly cost: number;
    readonly isMoved: boolean;
    readonly knownTo: number | null;
  }[];
  /** Starts that were searched from, and those of them where no corner could be built. */
  readonly starts: number;
  readonly unbuilt: number;
  /** Gaps and limits that the present design breaks and that were asked to hold, but not to get no worse: none is held. */
  readonly setAside: readonly string[];
  /** Better places that were dropped since they broke what must hold, or were no sound design. */
  readonly dropped: number;
}
