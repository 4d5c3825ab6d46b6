/** The cycle grid: five heights × three locks, every margin of each. */
import { solve } from '../corner.ts';
import { createPose } from '../linkage/solve.ts';
import { placeParts } from '../measures/parts.ts';
import { rackRange, rideTravel } from '../model/defaults.ts';
import { firstStops } from './firstStops.ts';
import { type Margin, type Standing, standingOf } from './margin.ts';
import { type Margins, marginsInto, steerSign } from './margins.ts';
import type {
  CycleCell,
  CycleGrid,
  CycleHeight,
  CycleMargin,
  CycleRack,
  Height,
  Lock,
  RayStops,
} from './results.ts';

const HEIGHT_WORDS: Readonly<Record<Height, string>> = {
  fullBump: 'full bump',
  bumpStop: 'bump stop touches',
  ride: 'ride height',
  midDroop: 'mid droop',
  fullDroop: 'full droop',
};

const HARD_IN_BUMP: readonly string[] = ['coilover.minLength'];
const HARD_IN_DROOP: readonly string[] = ['strap.length', 'stops.droop', 'coilover.maxLength'];

interface End {
  readonly travel: number;
  readonly because: string;
  readonly setBy: string | null;
}

/** Where a ray ends: at the first of these limits or of the linkage, but within the model's travel. */
function endOf({ stops, rangeEnd, lookedTo }: RayStops, name: string): End {
  const [first] = stops;
  const isFirst = first !== undefined && !first.isBeyondRange;
  if (isFirst) return { travel: first.at, because: first.margin.met, setBy: first.margin.key };
  return { travel: rangeEnd ?? lookedTo, because: name, setBy: null };
}

function bumpStopHeight(margins: Margins, full: End, droop: End): CycleHeight {
  const { corner, habits } = margins;
  const stated = corner.model.stops?.bump;
  const share = Math.round(100 * habits.bumpStopShare);
  return {
    height: 'bumpStop',
    travel: stated ?? full.travel - habits.bumpStopShare * (full.travel - droop.travel),
    label: HEIGHT_WORDS.bumpStop,
    because:
      stated === undefined
        ? `common practice, no source: acts over the last ${share} % of travel`
        : 'stops.bump',
    meant: ['stops.bump'],
  };
}

/** The five heights of a corner, from full bump down, all taken straight ahead. */
export function cycleHeights(margins: Margins): CycleHeight[] {
  const { model } = margins.corner;
  const among = (keys: readonly string[]) => (margin: Margin) => keys.includes(margin.key);
  const bumpStops = firstStops(margins, { way: 'bump', held: 0 }, among(HARD_IN_BUMP));
  const droopStops = firstStops(margins, { way: 'droop', held: 0 }, among(HARD_IN_DROOP));
  const full = endOf(bumpStops, 'travel.bump');
  const droop = endOf(droopStops, 'travel.droop');
  const ride = rideTravel(model.travel);
  const end = (height: Height, { travel, because, setBy }: End, meant: string[]): CycleHeight => ({
    height,
    travel,
    label: HEIGHT_WORDS[height],
    because,
    meant: setBy === null ? meant : [...meant, setBy],
  });
  const plain = (height: Height, travel: number, because: string): CycleHeight => ({
    height,
    travel,
    label: HEIGHT_WORDS[height],
    because,
    meant: [],
  });
  return [
    end('fullBump', full, ['stops.bump']),
    bumpStopHeight(margins, full, droop),
    plain('ride', ride, 'travel.ride'),
    plain('midDroop', (ride + droop.travel) / 2, 'half-way from ride height to full droop'),
    end('fullDroop', droop, []),
  ];
}

/** Left lock, straight ahead, right lock; the locks have no rack where the model states no steering limit. */
export function cycleRacks({ corner }: Margins): CycleRack[] {
  const { steering } = corner.model;
  const [least, most] = rackRange(steering);
  const isStated = steering?.limit !== undefined;
  const ends: Readonly<Record<'least' | 'most', CycleRack>> = {
    least: { lock: 'left', rack: isStated ? least : null, meant: ['steering.least'] },
    most: { lock: 'left', rack: isStated ? most : null, meant: ['steering.most'] },
  };
  const isMostLeft = steerSign(corner) > 0;
  const left = isMostLeft ? ends.most : ends.least;
  const right = isMostLeft ? ends.least : ends.most;
  return [left, { lock: 'straight', rack: 0, meant: [] }, { ...right, lock: 'right' }];
}

/** What is left in comparison with what is wanted: below 0 beyond the limit, below 1 near. */
function share({ margin, value }: CycleMargin): number {
  return value / Math.max(margin.near, 1);
}

function worstOf(list: readonly CycleMargin[]): CycleMargin | null {
  let worst: CycleMargin | null = null;
  for (const each of list) {
    if (each.standing === 'meant') continue;
    if (worst === null || share(each) < share(worst)) worst = each;
  }
  return worst;
}

function standing(worst: CycleMargin | null): Standing {
  return worst === null || worst.standing === 'meant' ? 'pass' : worst.standing;
}

/** One cell: every margin at a height and a lock but the linkage's reach, which it tells by reaching. */
export function cycleCell(
  margins: Margins,
  { height, travel, meant }: CycleHeight,
  lock: Lock,
  rack: number,
  meantOfLock: readonly string[],
): CycleCell {
  const pose = createPose();
  const outcome = solve(margins.corner, pose, travel, rack);
  const { lastTravel, lastRack } = pose;
  const place = { height, lock, travel, rack, lastTravel, lastRack };
  if (outcome !== 'reached') {
    return {
      ...place,
      isReached: false,
      fails: outcome,
      margins: [],
      worst: null,
      standing: 'contact',
    };
  }
  placeParts(margins.corner, pose.data);
  marginsInto(margins, pose, travel, rack);
  const list = margins.list.slice(0, -1).map((margin, index): CycleMargin => {
    const value = margins.values[index] ?? Number.NaN;
    const isMeant = meant.includes(margin.key) || meantOfLock.includes(margin.key);
    return { margin, value, standing: isMeant ? 'meant' : standingOf(margin, value) };
  });
  const worst = worstOf(list);
  return {
    ...place,
    isReached: true,
    fails: null,
    margins: list,
    worst,
    standing: standing(worst),
  };
}

/** The worse of two cells: one out of reach before all others. */
function worseCell(a: CycleCell | null, b: CycleCell): CycleCell {
  if (a === null || !b.isReached) return a !== null && !a.isReached ? a : b;
  if (!a.isReached || b.worst === null) return a;
  return a.worst === null || share(b.worst) < share(a.worst) ? b : a;
}

/** The whole grid. */
export function cycleGrid(margins: Margins): CycleGrid {
  const heights = cycleHeights(margins);
  const racks = cycleRacks(margins);
  const cells = heights.flatMap((height) =>
    racks.flatMap(({ lock, rack, meant }) =>
      rack === null ? [] : [cycleCell(margins, height, lock, rack, meant)],
    ),
  );
  return { heights, racks, cells, worst: cells.reduce<CycleCell | null>(worseCell, null) };
}
