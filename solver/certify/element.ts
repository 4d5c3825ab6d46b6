/**
 * A pair of parts taken to pieces: an element is one piece of the one against one piece of the other, and the pair's gap
 * is the least of its elements' gaps.
 */
import type { Cell } from './cells.ts';
import { POINT } from './separation.ts';

/** A piece of the first part, or the stretch `from`–`to` of its length, against a piece of the second. */
export interface Element {
  readonly first: number;
  readonly second: number;
  readonly from: number;
  readonly to: number;
}

/** The break points of a chain over a cell, as separation.ts has points; null where that cannot be told. */
export type Track = (cell: Cell) => Float64Array | null;

/** A chain's pieces over a cell: half the diameter of each, mm, and which break point of the track it starts from. */
export interface Pieces {
  readonly track: Track;
  readonly radii: Float64Array;
  readonly starts: readonly number[];
}

/** Bounds the gaps of a pair's elements over cells. */
export interface Bounder {
  readonly elements: readonly Element[];
  /**
   * A lower bound of the element's gap over the cell, −∞ where none can be told; `enough` spares the search for a
   * better one.
   */
  readonly bound: (cell: Cell, element: Element, enough: number) => number;
  /** True when the last bound would gain more from halving the element than from halving the cell. */
  readonly isCoarse: () => boolean;
  /** How far the pair's points move against each other along the cell's travel and along its rack, mm. */
  readonly swings: (cell: Cell) => Swings;
}

export interface Swings {
  readonly travel: number;
  readonly rack: number;
}

/** The greatest slopes of a track's points. */
export function swingsOf(track: Float64Array | null): Swings {
  let travel = 0;
  let rack = 0;
  for (let at = 0; track !== null && at < track.length; at += POINT) {
    travel = Math.max(travel, Math.hypot(track[at + 3]!, track[at + 4]!, track[at + 5]!));
    rack = Math.max(rack, Math.hypot(track[at + 6]!, track[at + 7]!, track[at + 8]!));
  }
  return { travel, rack };
}

/** What two sets of points may move against each other at most. */
export function swingsOfBoth(first: Float64Array | null, second: Float64Array | null): Swings {
  const a = swingsOf(first);
  const b = swingsOf(second);
  return { travel: a.travel + b.travel, rack: a.rack + b.rack };
}

/** Every piece of a chain of `first` pieces against every one of `second`. */
export function stretches(first: number, second: number): Element[] {
  return Array.from({ length: first * second }, (_, n) => ({
    first: Math.floor(n / second),
    second: n % second,
    from: 0,
    to: 1,
  }));
}

/** Both halves of an element. */
export function halvesOf(element: Element): readonly [Element, Element] {
  const middle = (element.from + element.to) / 2;
  return [
    { ...element, to: middle },
    { ...element, from: middle },
  ];
}
