/** What is to be improved: what may move, what is wanted and how much each matters, what must hold. mm, degrees. */

import type { AxleKey } from '../measures/axle.ts';
import type { MeasureKey } from '../measures/keys.ts';

/** A height of the wheel: where the vehicle stands, the ends of travel that the stops leave, or mm of travel. */
export type Height = 'ride' | 'bump' | 'droop' | number;

/** Where the rack is: in its middle, or at the end that steers to that side. */
export type Lock = 'straight' | 'left' | 'right';

/** What may move: dimensions (dimension.ts) by their keys, all by the same amount, the first of them from `from` to `to`. */
export interface Mover {
  readonly inputs: readonly string[];
  readonly from: number;
  readonly to: number;
}

/** How a wish stands to its value. */
export type Aiming = 'exactly' | 'atLeast' | 'atMost';

interface Weighed {
  readonly value: number;
  /** A miss by so much costs 1 before it is weighed: what is near enough. Positive. */
  readonly within: number;
  /** What the cost of this wish is multiplied by. Positive. */
  readonly matters: number;
}

/** Greatest departure of toe from the set pose's over a stretch of travel, rack in its middle: at most `value`, degrees. */
export interface ToeChangeWish extends Weighed {
  readonly of: 'toeChange';
  readonly from: Height;
  readonly to: Height;
}

/** A measure of one pose, or of the axle. */
export interface MeasureWish extends Weighed {
  readonly of: 'measure';
  readonly measure: MeasureKey | AxleKey;
  readonly height: Height;
  readonly lock: Lock;
  readonly aiming: Aiming;
}

/** Change of a measure from the set pose's to a height, rack in its middle. */
export interface ChangeWish extends Weighed {
  readonly of: 'change';
  readonly measure: MeasureKey;
  readonly height: Height;
  readonly aiming: Aiming;
}

/** The least gap of a watched pair, or the least margin of a limit, over travel × rack: at least `value`. */
export interface LeastWish extends Weighed {
  readonly of: 'least';
  /** "tieRod/wheel", "coilover.maxLength". */
  readonly key: string;
}

export type Wish = ToeChangeWish | MeasureWish | ChangeWish | LeastWish;

/** A measure that stays as it is, give or take `within`. */
export interface Stay {
  readonly measure: MeasureKey | AxleKey;
  readonly height: Height;
  readonly lock: Lock;
  readonly within: number;
}

/** What no answer may break. Bounds, and that the corner can be built over its whole range, always hold. */
export interface Holds {
  /** Every limit that the model states keeps a margin of 0 or more. */
  readonly limits: boolean;
  /** Every watched pair keeps the gap it requires. */
  readonly gaps: boolean;
  /** What is broken already gets no worse; else it is only told of. */
  readonly broken: boolean;
  readonly stays: readonly Stay[];
}

export interface Plan {
  readonly movers: readonly Mover[];
  readonly wishes: readonly Wish[];
  readonly holds: Holds;
}

/** How much a wish may matter, in words. Common practice, no source. */
export const MATTERS: readonly (readonly [words: string, weight: number])[] = [
  ['a little', 0.1],
  ['as usual', 1],
  ['much', 10],
  ['above all', 100],
];
