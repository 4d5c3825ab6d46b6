/** The settings that come nearest to a camber and caster (and toe, where the rod's length is fixed). */
import { radians } from '../units.ts';
import { ALIGNED_KEYS, type AskedTargets } from './alignment.ts';
import { boxedStep } from './boxed.ts';
import { type Placed, placeCentred, placeNear, type Shares, slopesAt } from './placed.ts';
import type { Stance } from './stance.ts';
import { totalTurn } from './turn.ts';

/** Shares of the pivots' reach, and where the corner stands with them. */
export interface Stood {
  readonly shares: Shares;
  readonly place: Placed;
}

export interface Nearest extends Stood {
  /** Distance from the targets, rad: of camber and caster, and of toe where the rod's length is fixed; only of those sought. */
  readonly miss: number;
}

const MOST_STEPS = 300;
/** Steps and gains below these end the search: shares; rad squared, as a part of what is left. */
const SMALLEST_STEP = 1e-13;
const SMALLEST_GAIN = 1e-15;
/** Farthest step of a share at once, and the one below which the search gives up. */
const FIRST_REACH = 0.5;
const LAST_REACH = 1e-12;
/** Shares the search starts from besides none at all: ends would hide that a cam is dead there. */
const START = 0.8;
/** A place less far off by this, rad, is nearer; else the one with less turn is taken. */
const NEARER = 1e-10;

/** Distance, rad, at which the targets are reached: where `leastTurns` chooses between all that reach them, one is enough. */
const REACHED = 1e-12;

/** So many more starts that end at one place settle it. */
const AGREED = 3;

/** The links whose pivots can be moved, by their places in `Stance.arms`. */
export function movable({ arms }: Stance): readonly number[] {
  return arms.flatMap(({ fitting }, i) => (fitting === null ? [] : [i]));
}

/** Rows of the angles sought in those of `slopesAt`: toe is one of them only while the rod keeps its length. */
function rowsOf({ setsToe }: Stance, targets: AskedTargets): number[] {
  const keys = setsToe ? (['camber', 'caster'] as const) : ALIGNED_KEYS;
  return keys.flatMap((key, row) => (targets[key] === undefined ? [] : [row]));
}

function missesOf(place: Placed, targets: AskedTargets, rows: readonly number[]): number[] {
  return rows.map((row) => {
    const key = ALIGNED_KEYS[row]!;
    return place[key] - radians(targets[key]!);
  });
}

/** The place for shares that may lie far from those of a known place: the way is walked in halves where it must. */
export function walkTo(
  stance: Stance,
  toe: number | null,
  from: Stood,
  shares: Shares,
): Placed | null {
  let at = from;
  let stride = 1;
  let done = 0;
  while (done < 1) {
    const next = Math.min(1, done + stride);
    const tried = shares.map((share, i) => from.shares[i]! + next * (share - from.shares[i]!));
    const place = placeNear(stance, tried, toe, at.place);
    if (place !== null) {
      at = { shares: tried, place };
      done = next;
    } else {
      stride /= 2;
      if (stride < 1 / 64) return null;
    }
  }
  return at.place;
}

function descend(stance: Stance, targets: AskedTargets, toe: number | null, start: Stood): Nearest {
  const links = movable(stance);
  const size = (misses: readonly number[]) => misses.reduce((sum, miss) => sum + miss * miss, 0);
  let at = start;
  const rows = rowsOf(stance, targets);
  let misses = missesOf(at.place, targets, rows);
  let reach = FIRST_REACH;
  for (let count = 0; count < MOST_STEPS && reach > LAST_REACH && links.length > 0; count += 1) {
    const slopes = slopesAt(stance, at.shares, toe, at.place, links);
    if (slopes === null) break;
    const ends = (end: 0 | 1) =>
      links.map((link) => {
        const room = stance.arms[link]!.range[end] - at.shares[link]!;
        return end === 0 ? Math.max(room, -reach) : Math.min(room, reach);
      });
    const steepness = rows.map((row) => slopes[row]!);
    const step = boxedStep(steepness, misses, ends(0), ends(1));
    const longest = Math.max(...step.map(Math.abs));
    if (longest < SMALLEST_STEP) break;
    const shares = at.shares.map((share, i) => share + (step[links.indexOf(i)] ?? 0));
    const place = placeNear(stance, shares, toe, at.place);
    const next = place && missesOf(place, targets, rows);
    const gain = next === null ? -1 : size(misses) - size(next);
    if (place === null || next === null || gain < 0) {
      reach = Math.min(reach, longest) / 4;
      continue;
    }
    at = { shares, place };
    misses = next;
    reach = Math.min(1, 2 * Math.max(reach, longest));
    if (gain <= SMALLEST_GAIN * size(next)) break;
  }
  return { ...at, miss: Math.sqrt(size(misses)) };
}

/** Where the search starts: no shift, then every way to set what can be set well off its middle. */
function starts(stance: Stance): Shares[] {
  const links = movable(stance);
  const ways = 2 ** links.length;
  const none = stance.arms.map(() => 0);
  const corners = Array.from({ length: ways }, (_, way) =>
    none.map((_share, i) => {
      const place = links.indexOf(i);
      if (place < 0) return 0;
      const [least, most] = stance.arms[i]!.range;
      const end = (way >> place) % 2 === 0 ? least : most;
      return START * end;
    }),
  );
  return [none, ...corners];
}

/** Places of a stance with toe held that are known already: the one without any shift. */
export function standCentred(stance: Stance, toe: number | null): Stood | null {
  const place = placeCentred(stance, toe);
  return place === null ? null : { shares: stance.arms.map(() => 0), place };
}

function isLessTurn({ arms }: Stance, a: Stood, b: Stood): boolean {
  return totalTurn(arms, a.shares) < totalTurn(arms, b.shares) - NEARER;
}

/** The best of several places found, and how many more ended at it. */
class Best {
  found: Nearest | null = null;
  agreeing = 0;
  private readonly stance: Stance;

  constructor(stance: Stance) {
    this.stance = stance;
  }

  take(found: Nearest): void {
    const gain = this.found === null ? Number.POSITIVE_INFINITY : this.found.miss - found.miss;
    if (gain > NEARER) {
      this.agreeing = 0;
      this.found = found;
    } else if (gain >= -NEARER) {
      this.agreeing += 1;
      if (isLessTurn(this.stance, found, this.found!)) this.found = found;
    }
  }

  /** True when no further start is needed. */
  isSettled(): boolean {
    return this.found !== null && (this.found.miss < REACHED || this.agreeing >= AGREED);
  }
}

/**
 * The settings whose camber and caster lie nearest to the targets by Euclidean distance in degrees (one left out follows), toe
 * held to its target by the tie rod; where the rod's length is fixed, the distance takes in toe. `isLight` searches from no shift
 * alone. null where the corner cannot stand at ride.
 */
export function nearestTo(stance: Stance, targets: AskedTargets, isLight = false): Nearest | null {
  const toe = stance.setsToe && targets.toe !== undefined ? radians(targets.toe) : null;
  const centred = standCentred(stance, toe);
  if (centred === null) return null;
  const { camber, caster } = targets;
  const isChosenLater = camber !== undefined && caster !== undefined && movable(stance).length > 1;
  const best = new Best(stance);
  for (const shares of isLight ? [centred.shares] : starts(stance)) {
    const place = walkTo(stance, toe, centred, shares);
    if (place === null) continue;
    best.take(descend(stance, targets, toe, { shares, place }));
    if (isChosenLater && toe !== null && best.isSettled()) break;
  }
  return best.found;
}
