/**
 * What has no closed bound of its own is bounded by how fast it moves: over a cell a gap cannot shrink by more than the
 * parts' points move against each other.
 */
import type { Section } from '../clearance/section.ts';
import { Slot } from '../linkage/slots.ts';
import type { Cell } from './cells.ts';
import { type Bounder, type Swings, stretches, swingsOf } from './element.ts';
import { type BodyMotion, carriedPoint, carriedVector } from './motion.ts';
import { POINT } from './separation.ts';
import { midLength, scaled, slopeA, slopeB, sum, tripleAt } from './taylor.ts';

const REST = 9;

/** How far a point of a track can come from its middle. */
export function swingAt(track: Float64Array, at: number): number {
  return (
    Math.hypot(track[at + 3]!, track[at + 4]!, track[at + 5]!) +
    Math.hypot(track[at + 6]!, track[at + 7]!, track[at + 8]!) +
    track[at + REST]!
  );
}

/** How far points of the sections move in a cell: along α, along β, and what is left. */
export interface RingSwings extends Swings {
  readonly rest: number;
}

/** Bounds how far any point of sections of revolution about the hub axis moves against the ground. */
export function ringSwings(cell: Cell, sections: readonly Section[]): RingSwings | null {
  if (cell.motion === null) return null;
  const { knuckle } = cell.motion;
  let travel = 0;
  let rack = 0;
  let rest = 0;
  for (const { line } of sections) {
    for (let at = 0; at < line.length; at += 2) {
      const ring = ringSwing(cell.pose, knuckle, line[at]!, line[at + 1]!);
      travel = Math.max(travel, ring.travel);
      rack = Math.max(rack, ring.rack);
      rest = Math.max(rest, ring.rest);
    }
  }
  return { travel, rack, rest };
}

/** The circle of one vertex (s, ρ): its centre moves as given, its points turn about that at arm's length ρ. */
function ringSwing(pose: Float64Array, knuckle: BodyMotion, s: number, radius: number): RingSwings {
  const centre = carriedPoint(knuckle, tripleAt(pose, Slot.centre));
  const axis = carriedVector(knuckle, tripleAt(pose, Slot.hubAxis));
  const middle = sum(centre, scaled(s, axis));
  return {
    travel: midLength(slopeA(middle)) + radius * midLength(knuckle.spinA),
    rack: midLength(slopeB(middle)) + radius * midLength(knuckle.spinB),
    rest: middle.rest + radius * knuckle.rest,
  };
}

/** Bounds a pair by its gap at the cell's centre less all that its points move. */
export function wholeBounder(
  gapAt: (cell: Cell) => number,
  swings: (cell: Cell) => RingSwings | null,
  rounding: number,
): Bounder {
  return {
    elements: stretches(1, 1),
    isCoarse: () => false,
    swings: (cell) => swings(cell) ?? { travel: 1, rack: 1 },
    bound: (cell) => {
      const moved = swings(cell);
      if (moved === null) return Number.NEGATIVE_INFINITY;
      return gapAt(cell) - moved.travel - moved.rack - moved.rest - rounding;
    },
  };
}

/** How far the points of a chain move at most. */
export function trackSwings(track: Float64Array | null): RingSwings | null {
  if (track === null) return null;
  let rest = 0;
  for (let at = REST; at < track.length; at += POINT) rest = Math.max(rest, track[at]!);
  return { ...swingsOf(track), rest };
}
