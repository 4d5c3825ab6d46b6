/** One search of a question: least squares from one start, gaps and margins looked at where they turn out low. */
import { certifiedRange } from '../certify/range.ts';
import { assemble, type Corner } from '../corner.ts';
import { unreachedIn } from '../cure/aim.ts';
import type { Steps } from '../stops/steps.ts';
import { boundedLeastSquares, type LeastSquares } from './leastSquares.ts';
import { movedModel } from './moving.ts';
import type { Wish } from './plan.ts';
import type { Question } from './question.ts';
import { missesOf, missOf, stayAt } from './read.ts';
import { lowsOf, type Spot, valuesAt } from './spots.ts';
import { startCount, startOf } from './starts.ts';

/** A place that a search came to. */
export interface Candidate {
  /** Which start it came from, the present place being 0. */
  readonly start: number;
  /** The one mover that may move, by its place on the list; null where all may. */
  readonly only: number | null;
  readonly x: readonly number[];
  /** Half the sum of squares of all that was to be small there. */
  readonly cost: number;
  readonly spots: readonly Spot[];
}

/** How the search stands: what it looks at, how hard what must hold is held, and how much every move costs. */
interface Stage {
  readonly spots: readonly Spot[];
  /** Where the pull is to. */
  readonly home: readonly number[];
  /** Misses of what must hold count so much a mm or degree. */
  readonly strength: number;
  readonly pull: number;
  /** Over which share of what is spared the holding sets in. */
  readonly softness: number;
}

/** Half-width of differences, mm or degrees. */
const REACH = 0.01;
/**
 * What a move over the whole of its bounds costs, as a root, while the search is under way: of equal answers each start comes to
 * the one next to it.
 */
const PULL = 0.05;
const STRENGTH = 30;
const STRONGER = 4;
/** Softness of the last rounds. */
const POLISH = 0.2;
const ROUNDS = 5;
/** Gains that a search under way, and one that is to end, still go on for. */
const ROUGH_GAIN = 1e-5;
const FINE_GAIN = 1e-9;
/** What gaps and margins get more than they need, so that it can be proven: mm, degrees. */
const SPARE = { mm: 0.07, degree: 0.01 } as const;
/** The same of measures that are to stay, as a share of their leeway. */
const STAY_SPARE = 0.02;
/** Spots of one key this near to each other are one, mm. */
const SAME_SPOT = 2;
/** A gap or margin that is low by less than this is not looked at anew. */
const LOW_BY = 0.005;

function leastMisses(wish: Wish, values: readonly number[]): number[] {
  const { value, within, matters } = wish;
  const scale = Math.sqrt(matters / Math.max(1, values.length)) / within;
  return values.map((each) => scale * missOf(each, value, 'atLeast'));
}

/**
 * How far something is short, smoothed over `width` about 0: a search that runs along a floor would trip over the kink of a
 * plain one. Short by half the width at 0, and by next to nothing a few widths above.
 */
function shortOf(left: number, width: number): number {
  return (Math.sqrt(left * left + width * width) - left) / 2;
}

/** Misses of gaps and margins at their spots: of wishes for them, and of what they must not fall below. */
function spotMisses(
  question: Question,
  corner: Corner,
  { spots, strength, softness }: Stage,
): number[] {
  const values = valuesAt(corner, spots, question.meshes);
  const of = (key: string): number[] =>
    spots.flatMap((spot, i) => (spot.key === key ? [values[i]!] : []));
  const { plan, readable, floors } = question;
  return [
    ...plan.wishes.flatMap((wish, i) =>
      wish.of === 'least' && readable[i]! ? leastMisses(wish, of(wish.key)) : [],
    ),
    ...floors.flatMap(({ key, unit, wanted, isBroken }) => {
      const floor = isBroken ? wanted : wanted + SPARE[unit];
      return of(key).map((value) => strength * shortOf(value - floor, softness * SPARE[unit]));
    }),
  ];
}

/** What is left of the leeway of each measure that is to stay and that the design has, as a share of it. */
function leewaysOf({ plan, before }: Question, corner: Corner): number[] {
  return plan.holds.stays.flatMap((stay, i) => {
    const was = before.stays[i]!;
    return Number.isNaN(was) ? [] : [1 - Math.abs(stayAt(corner, stay) - was) / stay.within];
  });
}

function stayMisses(question: Question, corner: Corner, { strength, softness }: Stage): number[] {
  return leewaysOf(question, corner).map(
    (left) => strength * shortOf(left - STAY_SPARE, softness * STAY_SPARE),
  );
}

/** Everything that is to be small at a place; null where the corner cannot be built there, or reaches less than before. */
function missesAt(question: Question, x: readonly number[], stage: Stage): Float64Array | null {
  const { model, plan, moving, before, readable } = question;
  const corner = assemble(movedModel(model, moving, x));
  if (corner.linkage.broken !== null) return null;
  if (unreachedIn(corner, certifiedRange(corner.model)) > before.unreached) return null;
  const misses: number[] = [];
  plan.wishes.forEach((wish, i) => {
    if (wish.of !== 'least' && readable[i]!) misses.push(...missesOf(corner, wish));
  });
  misses.push(...spotMisses(question, corner, stage), ...stayMisses(question, corner, stage));
  x.forEach((each, i) => {
    const width = Math.max(moving.high[i]! - moving.low[i]!, REACH);
    misses.push((stage.pull * (each - stage.home[i]!)) / width);
  });
  return misses.every(Number.isFinite) ? Float64Array.from(misses) : null;
}

function problemOf(question: Question, { x: from, only }: Candidate, stage: Stage): LeastSquares {
  const { low, high } = question.moving;
  const within = (bounds: readonly number[]): readonly number[] =>
    only === null ? bounds : bounds.map((each, i) => (i === only ? each : from[i]!));
  return {
    low: within(low),
    high: within(high),
    reach: REACH,
    residuals: (x) => missesAt(question, x, stage),
  };
}

/** Spots that are not among those known, of gaps and margins that are lower there than they may be or are wished to be. */
export function newSpots(
  { floors, plan }: Question,
  known: readonly Spot[],
  lows: readonly (Spot & { readonly value: number })[],
): readonly Spot[] {
  const wanted = new Map(floors.map(({ key, wanted: floor }) => [key, floor]));
  for (const wish of plan.wishes) {
    if (wish.of === 'least') {
      wanted.set(wish.key, Math.max(wish.value, wanted.get(wish.key) ?? wish.value));
    }
  }
  return lows
    .filter(({ key, value }) => value < (wanted.get(key) ?? Number.NEGATIVE_INFINITY) - LOW_BY)
    .filter(({ key, travel, rack }) =>
      known.every(
        (spot) =>
          spot.key !== key ||
          Math.max(Math.abs(spot.travel - travel), Math.abs(spot.rack - rack)) > SAME_SPOT,
      ),
    );
}

/** Whether a gap or margin is less at one of its spots than it must be, or a measure has not stayed. */
function isShort(question: Question, corner: Corner, spots: readonly Spot[]): boolean {
  const { floors, meshes } = question;
  if (leewaysOf(question, corner).some((left) => left < 0)) return true;
  const wanted = new Map(floors.map(({ key, wanted: floor }) => [key, floor]));
  const values = valuesAt(corner, spots, meshes);
  return spots.some(({ key }, i) => values[i]! < (wanted.get(key) ?? Number.NEGATIVE_INFINITY));
}

/** Goes on from a place until no gap or margin is low where nobody looked; null where there is no corner at the place. */
export function* refineInSteps(
  question: Question,
  from: Candidate,
  firstPull: number = 0,
): Steps<Candidate | null> {
  const { floors, plan, meshes, model, moving } = question;
  const wished = plan.wishes.flatMap((wish) => (wish.of === 'least' ? [wish.key] : []));
  const keys = [...new Set([...wished, ...floors.map(({ key }) => key)])];
  let now = from;
  for (let round = 0; round < ROUNDS; round += 1) {
    const pull = round === 0 ? firstPull : 0;
    const strength = STRENGTH * STRONGER ** round;
    const softness = pull > 0 ? 1 : POLISH;
    const stage = { spots: now.spots, home: from.x, strength, pull, softness };
    const smallestGain = pull > 0 ? ROUGH_GAIN : FINE_GAIN;
    const solved = yield* boundedLeastSquares(problemOf(question, now, stage), now.x, {
      smallestGain,
    });
    if (solved === null) return null;
    const corner = assemble(movedModel(model, moving, solved.x));
    const lows = keys.length === 0 ? [] : lowsOf(corner, keys, meshes);
    yield round / ROUNDS;
    const added = newSpots(question, now.spots, lows);
    now = { ...now, x: solved.x, cost: solved.cost, spots: [...now.spots, ...added] };
    if (added.length === 0 && pull === 0 && !isShort(question, corner, now.spots)) return now;
  }
  return now;
}

/** How many starts a question is searched from. */
export function startsOf({ moving }: Question): number {
  const { length } = moving.present;
  return startCount(length) + (length > 1 ? length : 0);
}

/**
 * Searches from one start: from a place inside the bounds, or, after all of those, from the present one with one mover alone:
 * to move one thing is worth something to whoever has to. Null where no corner can be built there.
 */
export function searchInSteps(question: Question, start: number): Steps<Candidate | null> {
  const { present, low, high } = question.moving;
  const count = startCount(present.length);
  const only = start < count ? null : start - count;
  const x = startOf(only === null ? start : 0, present, low, high);
  return refineInSteps(question, { start, only, x, cost: Number.NaN, spots: question.spots }, PULL);
}
