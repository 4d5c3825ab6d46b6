/** What a margin is: how far a pose is from one limit, positive inside. */

/** What a margin is counted in. */
export type MarginUnit = 'mm' | 'degree';

/** What kind of thing is held: how a margin is drawn and what would cure it follow from it. */
export type MarginKind =
  | 'length'
  | 'stop'
  | 'angle'
  | 'plunge'
  | 'steering'
  | 'dropLink'
  | 'gap'
  | 'linkage';

/** One limit of a corner. The number that goes with it is its margin: 0 at the limit, positive inside. */
export interface Margin {
  /** The limit's key in the model ("coilover.minLength", "antiRollBar.link"), the end of the rack ("steering.least", "steering.most"), a pair ("tieRod/wheel"), or "linkage". Unique in a corner. */
  readonly key: string;
  readonly kind: MarginKind;
  readonly unit: MarginUnit;
  /** What is held, in plain words: "coilover, shortest". */
  readonly label: string;
  /** What has happened where the margin is 0: "coilover fully short". */
  readonly met: string;
  /** A margin below this is near: mm or degrees wanted unused. */
  readonly near: number;
  /** Where `near` comes from: the model's own `required`, or common practice. */
  readonly nearFrom: 'model' | 'common practice, no source';
  /** Both parts of a watched pair; null for every other limit. */
  readonly pair: readonly [string, string] | null;
}

/** What is wanted unused at limits, and where a bump stop acts. Editable; the defaults are common practice, no source. */
export interface Habits {
  /** Degrees wanted unused of a joint's angle: 2–3. */
  readonly unusedAngle: number;
  /** mm wanted unused of lengths, plunge, stops and rack: 3–6. */
  readonly unusedLength: number;
  /** Share of the whole travel over which a bump stop acts, where the model states none: 0.15–0.3. */
  readonly bumpStopShare: number;
  /** mm of damper shaft left at full bump: 6–12. */
  readonly shaftLeft: number;
  /** mm before the damper tops out at which the strap is tight: 12–25. */
  readonly strapBefore: number;
}

/** Common practice, no source. */
export const USUAL_HABITS: Habits = {
  unusedAngle: 3,
  unusedLength: 5,
  bumpStopShare: 0.2,
  shaftLeft: 10,
  strapBefore: 15,
};

/** How a margin stands: met or beyond, less left than wanted, or enough. */
export type Standing = 'contact' | 'near' | 'pass';

/** The standing of a margin's value. A margin of 0 is met. */
export function standingOf({ near }: Margin, value: number): Standing {
  if (value <= 0) return 'contact';
  return value < near ? 'near' : 'pass';
}
