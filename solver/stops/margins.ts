/** All margins of a corner: listed once, worked out per pose without allocation. */

import type { MeshSurfaces } from '../clearance/mesh.ts';
import { createPairGap, type PairGap, pairGapInto } from '../clearance/pairGap.ts';
import { type WatchedPair, watchedPairs } from '../clearance/pairs.ts';
import { statedGap } from '../clearance/required.ts';
import { type Corner, solve } from '../corner.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import { createMeasures, Measure } from '../measures/keys.ts';
import { type Limit, limitsOf } from '../measures/limits.ts';
import { measureInto } from '../measures/measure.ts';
import { placeParts } from '../measures/parts.ts';
import { rideTravel } from '../model/defaults.ts';
import {
  DROP_LINK_WORDS,
  LIMIT_WORDS,
  LINKAGE_WORDS,
  type LimitWords,
  pairWords,
  rackWords,
} from './limitWords.ts';
import { type Habits, type Margin, USUAL_HABITS } from './margin.ts';
import { isQuantity, measureQuantities, type QuantityKey, quantityOf } from './quantity.ts';

/** How a margin is worked out: sense · (bound − quantity), a pair's gap, or the linkage's reach. */
export type Held =
  | {
      readonly by: 'quantity';
      readonly quantity: QuantityKey;
      readonly bound: number;
      readonly sense: 1 | -1;
    }
  | { readonly by: 'gap'; readonly pair: WatchedPair; readonly gap: PairGap }
  | { readonly by: 'linkage' };

/** A corner's margins and the buffers they are worked out in. Made once for a corner. */
export interface Margins {
  readonly corner: Corner;
  readonly habits: Habits;
  readonly list: readonly Margin[];
  readonly held: readonly Held[];
  /** One number a margin, filled by `marginsInto`. */
  readonly values: Float64Array;
  readonly measures: Float64Array;
}

export interface MarginOptions {
  readonly meshes?: MeshSurfaces | undefined;
  readonly habits?: Habits | undefined;
  /** False leaves the clearances of pairs out: limits alone cost a hundredth. Default true. */
  readonly withPairs?: boolean | undefined;
}

/** +1 where the rack goes to the left to steer to the left, −1 where it goes to the right: a rod behind the axle. */
export function steerSign(corner: Corner): 1 | -1 {
  const pose = createPose();
  const measures = createMeasures();
  if (solve(corner, pose, rideTravel(corner.model.travel), 0) !== 'reached') return 1;
  measureInto(corner, pose, measures);
  return measures[Measure.steerPerRack]! < 0 ? -1 : 1;
}

/** A margin below this is outside, 0 but for rounding: a range may end on a limit. */
export const OUTSIDE = -1e-6;

interface Entry {
  readonly margin: Margin;
  readonly held: Held;
}

function entryOf(
  key: string,
  words: LimitWords,
  habits: Habits,
  quantity: QuantityKey,
  bound: number,
  sense: 1 | -1,
): Entry {
  const near = words.unit === 'degree' ? habits.unusedAngle : habits.unusedLength;
  const nearFrom = 'common practice, no source';
  return {
    margin: { key, ...words, near, nearFrom, pair: null },
    held: { by: 'quantity', quantity, bound, sense },
  };
}

function rackEntries({ least, most }: Limit, habits: Habits, sign: 1 | -1): Entry[] {
  const low = rackWords(sign > 0 ? 'right' : 'left');
  const high = rackWords(sign > 0 ? 'left' : 'right');
  return [
    ...(least === undefined
      ? []
      : [entryOf('steering.least', low, habits, 'rack', least, -1 as const)]),
    ...(most === undefined
      ? []
      : [entryOf('steering.most', high, habits, 'rack', most, 1 as const)]),
  ];
}

function limitEntries(corner: Corner, habits: Habits): Entry[] {
  const sign = steerSign(corner);
  const entries = limitsOf(corner.model).flatMap((limit) => {
    if (limit.of === 'rack') return rackEntries(limit, habits, sign);
    const bound = limit.most ?? limit.least;
    const words = LIMIT_WORDS[limit.name];
    if (bound === undefined || words === undefined || !isQuantity(limit.of)) return [];
    const sense = limit.most === undefined ? -1 : 1;
    return [entryOf(limit.name, words, habits, limit.of, bound, sense)];
  });
  if (corner.lever === null) return entries;
  return [...entries, entryOf('antiRollBar.link', DROP_LINK_WORDS, habits, 'dropLink', 0, -1)];
}

function pairEntry(corner: Corner, pair: WatchedPair): Entry {
  const [first, second] = pair.names;
  const isStated = statedGap(corner.model, first, second) !== undefined;
  return {
    margin: {
      key: `${first}/${second}`,
      ...pairWords(first, second),
      near: pair.required,
      nearFrom: isStated ? 'model' : 'common practice, no source',
      pair: pair.names,
    },
    held: { by: 'gap', pair, gap: createPairGap(pair) },
  };
}

const LINKAGE: Entry = {
  margin: {
    key: 'linkage',
    ...LINKAGE_WORDS,
    near: 0,
    nearFrom: 'common practice, no source',
    pair: null,
  },
  held: { by: 'linkage' },
};

/**
 * Makes the margins of a corner: every limit the model states, the drop link's reach, every watched pair, and last the
 * linkage's own reach.
 */
export function createMargins(corner: Corner, options: MarginOptions = {}): Margins {
  const habits = options.habits ?? USUAL_HABITS;
  const pairs = options.withPairs === false ? [] : watchedPairs(corner, options.meshes);
  const entries = [
    ...limitEntries(corner, habits),
    ...pairs.map((pair) => pairEntry(corner, pair)),
    LINKAGE,
  ];
  return {
    corner,
    habits,
    list: entries.map(({ margin }) => margin),
    held: entries.map(({ held }) => held),
    values: new Float64Array(entries.length),
    measures: createMeasures(),
  };
}

/** Every margin of a corner as a list; `createMargins` works them out. */
export function marginsOf(corner: Corner, options: MarginOptions = {}): readonly Margin[] {
  return createMargins(corner, options).list;
}

/**
 * How far a pose is within the linkage's reach: +∞ in reach, where no single number tells how far it goes on; else minus
 * the distance, mm of travel and rack, back to the last reachable place of the straight path.
 */
function reachLeft(pose: Pose, travel: number, rack: number): number {
  if (pose.outcome === 'reached') return Number.POSITIVE_INFINITY;
  const up = travel - pose.lastTravel;
  const across = rack - pose.lastRack;
  return -Math.sqrt(up * up + across * across);
}

/**
 * One margin, its index in the list, of a pose whose parts are placed (`placeParts`) and, for all but pairs and the linkage,
 * whose quantities are measured (`measureQuantities` into `margins.measures`).
 */
export function marginInto(
  margins: Margins,
  pose: Pose,
  index: number,
  travel: number,
  rack: number,
): void {
  const held = margins.held[index]!;
  const { corner, measures, values } = margins;
  if (held.by === 'quantity') {
    const value = quantityOf(corner, held.quantity, pose.data, measures);
    values[index] = held.sense * (held.bound - value);
  } else if (held.by === 'gap') {
    pairGapInto(held.gap, pose);
    values[index] = held.gap.gap;
  } else values[index] = reachLeft(pose, travel, rack);
}

/**
 * Fills `margins.values` for the pose asked for at (travel, rack), as `solve` left it, with its parts placed
 * (`placeParts` or `measureInto`). Out of reach, all but the linkage's are those of the last reachable pose.
 */
export function marginsInto(margins: Margins, pose: Pose, travel: number, rack: number): void {
  measureQuantities(margins.corner, pose.data, margins.measures);
  for (let i = 0; i < margins.list.length; i += 1) marginInto(margins, pose, i, travel, rack);
}

/** Indices of the margins that the set pose is outside of; the linkage's alone where it is out of reach. */
export function outsideAtSet(margins: Margins): number[] {
  const { corner, list, values } = margins;
  const pose = createPose();
  const ride = rideTravel(corner.model.travel);
  if (solve(corner, pose, ride, 0) !== 'reached') return [list.length - 1];
  placeParts(corner, pose.data);
  marginsInto(margins, pose, ride, 0);
  return list.flatMap((_, index) => ((values[index] ?? 0) < OUTSIDE ? [index] : []));
}
