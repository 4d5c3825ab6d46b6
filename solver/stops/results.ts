/** What stops the wheel, as answers: first stops along a line, the usable region, the cycle grid, worst places. Lengths mm, angles degrees. */
import type { Failure } from '../linkage/linkage.ts';
import type { Margin, MarginUnit, Standing } from './margin.ts';
import type { QuantityKey } from './quantity.ts';

/** Which way the wheel goes. */
export type Way = 'bump' | 'droop' | 'left' | 'right';

/** Bump or droop from the set pose's travel with the rack held, or a lock from rack 0 with the travel held. */
export interface Ray {
  readonly way: Way;
  /** The rack of a bump or droop ray, the travel of a lock ray. */
  readonly held: number;
}

/** One limit met along a ray. */
export interface Stop {
  readonly margin: Margin;
  /** Travel or rack at which the margin first is 0, to 1e-6; the ray's start where it is outside from there. */
  readonly at: number;
  /** True when the start is outside already. */
  readonly isOutsideAtStart: boolean;
  /** Where the margin is positive again, if it is so before the ray's end. */
  readonly until: number | null;
  /** True beyond the range that the model states for its travel or its rack. */
  readonly isBeyondRange: boolean;
  /** What fails, where the linkage itself can go no further. */
  readonly fails: Failure | null;
}

/** Every limit met along a ray, in the order in which it is met. */
export interface RayStops {
  readonly ray: Ray;
  readonly start: number;
  /** End of the model's own range this way: its travel, or its steering limit; null where it states no steering limit. */
  readonly rangeEnd: number | null;
  /** How far was looked: an overshoot of the range, or the linkage's reach. */
  readonly lookedTo: number;
  readonly stops: readonly Stop[];
  /** The first stop met after the start, not one that is outside from there; null: nothing within what was looked at. */
  readonly first: Stop | null;
  /**
   * Up to here it is proven that no limit is met before its stop, however shortly; beyond, next to the end of the
   * linkage's reach, that rests on samples no farther apart than 0.25 mm. `lookedTo` where all of it is proven.
   */
  readonly provenTo: number;
}

/** First stops in bump and in droop at one rack. Limits that the set pose is outside of are left out. */
export interface StopColumn {
  readonly rack: number;
  /** null where nothing stops the wheel within the model's travel. */
  readonly bump: Stop | null;
  readonly droop: Stop | null;
}

/** A piece of the usable region's edge along which one limit ends it. */
export interface RegionPiece {
  /** A margin's key, or "range" where only the model's own range ends the region. */
  readonly key: string;
  /** null for "range". */
  readonly margin: Margin | null;
  /** rack, travel, rack, travel, …: as map contours have x and y. */
  readonly points: Float64Array;
}

/**
 * The part of travel × rack that can really be used: no limit passed, connected with the set pose. Limits that the set pose
 * is outside of already are left out, and named.
 */
export interface UsableRegion {
  readonly travels: Float64Array;
  readonly racks: Float64Array;
  /** 1 where the node (row · columns + column) belongs to the region. */
  readonly usable: Uint8Array;
  /** The least margin over its `near`, per node: negative outside; NaN out of reach. */
  readonly least: Float64Array;
  /** Which margin that is, an index into `margins`; −1 out of reach. */
  readonly which: Int16Array;
  readonly margins: readonly Margin[];
  /** The edge in pieces, one limit each. Empty when the set pose is out of the linkage's reach. */
  readonly edge: readonly RegionPiece[];
  /** Limits the set pose is outside of: left out of all the rest. */
  readonly outsideAtSet: readonly Margin[];
}

export type Height = 'fullBump' | 'bumpStop' | 'ride' | 'midDroop' | 'fullDroop';
export type Lock = 'left' | 'straight' | 'right';

/** One of the five heights: its travel and what says so. */
export interface CycleHeight {
  readonly height: Height;
  readonly travel: number;
  /** "full bump", "bump stop touches", … */
  readonly label: string;
  /** Why it is there: "coilover fully short", "travel.bump", "common practice, no source: over the last 20 % of travel". */
  readonly because: string;
  /** The limits that are met or passed at this height by what it is: their standing says nothing. */
  readonly meant: readonly string[];
}

export interface CycleRack {
  readonly lock: Lock;
  /** null where the model states no steering limit. */
  readonly rack: number | null;
  /** The limit that is met at this lock by what it is. */
  readonly meant: readonly string[];
}

export interface CycleMargin {
  readonly margin: Margin;
  readonly value: number;
  /** "meant" for a limit that this height is at by what it is. */
  readonly standing: Standing | 'meant';
}

/** One of the 15 cells. */
export interface CycleCell {
  readonly height: Height;
  readonly lock: Lock;
  readonly travel: number;
  readonly rack: number;
  /** False where the linkage does not reach; then no margin is told but `fails`. */
  readonly isReached: boolean;
  readonly fails: Failure | null;
  readonly lastTravel: number;
  readonly lastRack: number;
  readonly margins: readonly CycleMargin[];
  /** The margin with the least left in comparison with what is wanted; null where none is told. */
  readonly worst: CycleMargin | null;
  /** The cell's own standing: that of its worst margin; "contact" out of reach. */
  readonly standing: Standing;
}

export interface CycleGrid {
  readonly heights: readonly CycleHeight[];
  readonly racks: readonly CycleRack[];
  /** Row by row, heights from full bump to full droop, locks left, straight, right; columns without a rack have none. */
  readonly cells: readonly CycleCell[];
  /** The worst cell of all; null where no cell is told. */
  readonly worst: CycleCell | null;
}

/** The least and the greatest of one quantity anywhere in travel × rack. */
export interface Extreme {
  /** "outerAngle", "innerAngle", "plunge", "damperLength", "strapLength", "lowerBallJoint", … as measures have them. */
  readonly key: QuantityKey;
  readonly unit: MarginUnit;
  readonly least: ExtremePlace;
  readonly greatest: ExtremePlace;
}

export interface ExtremePlace {
  readonly value: number;
  readonly travel: number;
  readonly rack: number;
  /** No reachable pose of the range lies beyond this, by proof; equal to the value within 1e-3 where `isProven`. */
  readonly bound: number;
  readonly isProven: boolean;
}
