/** Everything that a search makes small at one place: wishes missed, what must hold fallen short of, and the pull. */
import { certifiedRange } from '../certify/range.ts';
import { assemble, type Corner } from '../corner.ts';
import { unreachedIn } from '../cure/aim.ts';
import { movedModel } from './moving.ts';
import type { Wish } from './plan.ts';
import type { Question } from './question.ts';
import { missesOf, missOf, stayAt } from './read.ts';
import { type Spot, valuesAt } from './spots.ts';

/** How the search stands: what it looks at, how hard what must hold is held, and how much every move costs. */
export interface Stage {
  readonly spots: readonly Spot[];
  /** Where the pull is to. */
  readonly home: readonly number[];
  /** Misses of what must hold count so much a mm or degree. */
  readonly strength: number;
  readonly pull: number;
  /** Over which share of what is spared the holding sets in. */
  readonly softness: number;
}

/** Bounds nearer than this are taken as this far apart where a move is pulled back, mm or degrees. */
const NARROW = 0.01;
/** What gaps and margins get more than they need, so that it can be proven: mm, degrees. */
const SPARE = { mm: 0.07, degree: 0.01 } as const;
/** The same of measures that are to stay, as a share of their leeway. */
const STAY_SPARE = 0.02;
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
export function leewaysOf({ plan, before }: Question, corner: Corner): number[] {
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
export function missesAt(
  question: Question,
  x: readonly number[],
  stage: Stage,
): Float64Array | null {
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
    const width = Math.max(moving.high[i]! - moving.low[i]!, NARROW);
    misses.push((stage.pull * (each - stage.home[i]!)) / width);
  });
  return misses.every(Number.isFinite) ? Float64Array.from(misses) : null;
}
