/** From a wanted travel: the lengths, stops and joint angles that it needs, in one table. */
import type { CertifiedRange } from '../certify/range.ts';
import { assemble, type Corner } from '../corner.ts';
import type { Failure } from '../linkage/linkage.ts';
import { createPose, solvePose } from '../linkage/solve.ts';
import { createMeasures } from '../measures/keys.ts';
import { placeParts } from '../measures/parts.ts';
import { rackRange } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { extremesInSteps, quantitiesOf } from './extremes.ts';
import { LIMIT_WORDS } from './limitWords.ts';
import { type Habits, type MarginUnit, USUAL_HABITS } from './margin.ts';
import { NEEDS, type Need } from './needs.ts';
import { measureQuantities, quantityOf } from './quantity.ts';
import type { Extreme, ExtremePlace } from './results.ts';
import { allSteps, type Steps } from './steps.ts';

/** Travel wanted of the wheel, both positive, mm from the design pose. */
export interface Wish {
  readonly bump: number;
  readonly droop: number;
}

/** One thing that the wanted travel asks for. */
export interface WantedRow {
  /** Key in the model that would state it, such as "coilover.minLength". */
  readonly key: string;
  readonly label: string;
  readonly unit: MarginUnit;
  /** What the motion itself comes to at worst, and where. */
  readonly demand: number;
  readonly travel: number;
  readonly rack: number;
  /** What is left unused on top, by the habits: common practice, no source. */
  readonly reserve: number;
  /** What the limit should be: at most this for a least length, at least this for all others. */
  readonly wanted: number;
  readonly sense: 'at most' | 'at least' | 'exactly';
  /** What the model states; null where it states nothing. */
  readonly has: number | null;
  /** null where the model states nothing. */
  readonly isEnough: boolean | null;
}

export interface WantedTravel {
  readonly wish: Wish;
  readonly rows: readonly WantedRow[];
  /** Parts that would have rows, were their points stated: "strap". */
  readonly missing: readonly string[];
  /** What the linkage itself fails at within the wanted travel × rack, and then no rows; null where it reaches its corners and edges. */
  readonly fails: Failure | null;
}

function labelOf(key: string): { readonly label: string; readonly unit: MarginUnit } {
  const words = LIMIT_WORDS[key];
  return { label: words?.label ?? key, unit: words?.unit ?? 'mm' };
}

function rowOf(
  key: string,
  place: Pick<ExtremePlace, 'travel' | 'rack'>,
  demand: number,
  reserve: number,
  sense: WantedRow['sense'],
  has: number | undefined,
): WantedRow {
  const wanted = sense === 'at most' ? demand - reserve : demand + reserve;
  const isEnough = (stated: number): boolean => {
    if (sense === 'exactly') return Math.abs(stated - wanted) < CLOSE;
    return sense === 'at most' ? stated <= wanted : stated >= wanted;
  };
  return {
    key,
    ...labelOf(key),
    demand,
    travel: place.travel,
    rack: place.rack,
    reserve,
    wanted,
    sense,
    has: has ?? null,
    isEnough: has === undefined ? null : isEnough(has),
  };
}

/** A stated length that must fit exactly may be off by so much, mm. */
const CLOSE = 0.5;

function needRow(
  corner: Corner,
  habits: Habits,
  need: Need,
  { least, greatest }: Extreme,
): WantedRow {
  const place = need.take === 'least' ? least : greatest;
  const reserve = need.reserve(habits);
  const has = need.has(corner.model);
  if (need.key === 'halfShaft.plungeOut') {
    return rowOf(need.key, place, Math.max(0, -place.value), reserve, 'at least', has);
  }
  const isLeastLength = need.take === 'least';
  return rowOf(need.key, place, place.value, reserve, isLeastLength ? 'at most' : 'at least', has);
}

/** The strap is tight at the wanted droop straight ahead. */
function strapRow(corner: Corner, { droop }: Wish): WantedRow[] {
  if (corner.strap === null) return [];
  const pose = createPose();
  if (solvePose(corner.linkage, pose, -droop, 0) !== 'reached') return [];
  placeParts(corner, pose.data);
  const measures = createMeasures();
  measureQuantities(corner, pose.data, measures);
  const length = quantityOf(corner, 'strapLength', pose.data, measures);
  const place = { travel: -droop, rack: 0 };
  return [rowOf('strap.length', place, length, 0, 'exactly', corner.model.strap?.length)];
}

function stopRows({ model }: Corner, habits: Habits, { bump, droop }: Wish): WantedRow[] {
  const touch = bump - habits.bumpStopShare * (bump + droop);
  const { stops } = model;
  return [
    rowOf('stops.bump', { travel: touch, rack: 0 }, touch, 0, 'exactly', stops?.bump),
    rowOf('stops.droop', { travel: -droop, rack: 0 }, droop, 0, 'exactly', stops?.droop),
  ];
}

/** What fails first on the way to the corners and the middles of the edges of the wanted range. */
function failureIn(corner: Corner, { travel, rack }: CertifiedRange): Failure | null {
  const pose = createPose();
  for (const t of [...travel, 0]) {
    for (const r of [...rack, 0]) {
      const outcome = solvePose(corner.linkage, pose, t, r);
      if (outcome !== 'reached') return outcome;
    }
  }
  return null;
}

function missingParts({ model }: Corner): string[] {
  const { coilover, halfShaft, strap } = model;
  return [
    ...(coilover === undefined ? ['coilover'] : []),
    ...(strap === undefined ? ['strap'] : []),
    ...(halfShaft === undefined ? ['halfShaft'] : []),
  ];
}

/** Works the table out, yielding the share done. Joint angles are the worst anywhere in the wanted travel × the rack,
 * by proof; where the linkage does not reach all of that there is no table. */
export function* wantedTravelInSteps(
  own: Corner,
  wish: Wish,
  habits: Habits = USUAL_HABITS,
): Steps<WantedTravel> {
  const { model } = own;
  const corner = assemble({ ...model, travel: { ...model.travel, ...wish } });
  const range = {
    travel: [-wish.droop, wish.bump] as const,
    rack: rackRange(model.steering),
  };
  const keys = quantitiesOf(corner).filter((key) => NEEDS.some(({ of }) => of === key));
  const fails = failureIn(corner, range);
  if (fails !== null) return { wish, rows: [], missing: missingParts(corner), fails };
  const extremes = yield* extremesInSteps(corner, range, keys);
  const needed = NEEDS.flatMap((need) => {
    const extreme = extremes.find(({ key }) => key === need.of);
    return extreme === undefined ? [] : [needRow(corner, habits, need, extreme)];
  });
  const lengths = needed.filter(({ key }) => key.startsWith('coilover'));
  const others = needed.filter(({ key }) => !key.startsWith('coilover'));
  return {
    wish,
    rows: [...lengths, ...strapRow(corner, wish), ...stopRows(corner, habits, wish), ...others],
    missing: missingParts(corner),
    fails: null,
  };
}

/** The table at once: see `wantedTravelInSteps`. */
export function wantedTravel(corner: Corner, wish: Wish, habits?: Habits): WantedTravel {
  return allSteps(wantedTravelInSteps(corner, wish, habits));
}

/** The model with the wanted travel and every limit of the table stated as wanted. */
export function withWanted(model: Model, { wish, rows }: WantedTravel): Model {
  const value = (key: string): number | undefined => rows.find((row) => row.key === key)?.wanted;
  const stated = <T extends object>(part: T, keys: Readonly<Record<string, string>>): T => {
    const entries = Object.entries(keys).flatMap(([name, key]) => {
      const wanted = value(key);
      return wanted === undefined ? [] : [[name, wanted] as const];
    });
    return { ...part, ...Object.fromEntries(entries) };
  };
  const { coilover, halfShaft, strap, travel, lowerArm, upperArm, tieRod, stops } = model;
  return {
    ...model,
    lowerArm: stated(lowerArm, { ballJointLimit: 'lowerArm.ballJointLimit' }),
    upperArm: stated(upperArm, { ballJointLimit: 'upperArm.ballJointLimit' }),
    tieRod: stated(tieRod, { endLimit: 'tieRod.endLimit', innerLimit: 'tieRod.innerLimit' }),
    ...(coilover === undefined
      ? {}
      : {
          coilover: stated(coilover, {
            minLength: 'coilover.minLength',
            maxLength: 'coilover.maxLength',
          }),
        }),
    ...(halfShaft === undefined
      ? {}
      : {
          halfShaft: stated(halfShaft, {
            outerLimit: 'halfShaft.outerLimit',
            innerLimit: 'halfShaft.innerLimit',
            plungeIn: 'halfShaft.plungeIn',
            plungeOut: 'halfShaft.plungeOut',
          }),
        }),
    ...(strap === undefined ? {} : { strap: stated(strap, { length: 'strap.length' }) }),
    stops: stated(stops ?? {}, { bump: 'stops.bump', droop: 'stops.droop' }),
    travel: { ...travel, bump: wish.bump, droop: wish.droop },
  };
}
