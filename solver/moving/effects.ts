/** What a changed design moves: every measure before and after, at the places people look at, most important first. */
import { assemble, type Corner, solve } from '../corner.ts';
import { createPose } from '../linkage/solve.ts';
import { AXLE_KEYS, type AxleKey, axleInto, createAxle } from '../measures/axle.ts';
import { createMeasures, MEASURE_KEYS, type MeasureKey } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import { rackRange, rideTravel } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { FAR_CENTRE, isCentre, MOST_CENTRE_WEIGHT, USUAL_TOE_CHANGE, usualSize } from './usual.ts';

/** Set pose, full bump and full droop straight ahead, and full left lock at ride. */
export const EFFECT_PLACES = ['set', 'bump', 'droop', 'lock'] as const;
export type EffectPlace = (typeof EFFECT_PLACES)[number];

/**
 * A measure before and after, in its own unit; NaN where it does not exist or the pose is out of reach, infinite for a
 * centre of a view that lies far away (usual.ts).
 */
export interface Pair {
  readonly before: number;
  readonly after: number;
}

export interface Effect {
  readonly key: MeasureKey | AxleKey | 'toeChange';
  /** At the places where the measure exists before or after; the toe change, over the whole travel, stands under `set`. */
  readonly at: Readonly<Partial<Record<EffectPlace, Pair>>>;
  /**
   * Its greatest change, counted in changes of the usual size; infinite where it came to exist, or went. A centre of a
   * view counts for one at most: what matters of it is told by roll centre height, anti-dive and the rates besides.
   */
  readonly weight: number;
}

export interface Effects {
  /** Most important first; what does not change is left out. */
  readonly effects: readonly Effect[];
  /** Places that can be reached before and not after. */
  readonly lost: readonly EffectPlace[];
}

/** Heights at which toe is read for its change over travel. */
const HEIGHTS = 41;
/** Changes smaller than this part of the usual size are what is left over where nothing changes. */
const NOTHING = 1e-6;

type Key = MeasureKey | AxleKey;
const KEYS: readonly Key[] = [...MEASURE_KEYS, ...AXLE_KEYS];
/** Places of both coordinates of each view's centre. */
const CENTRES: readonly (readonly [number, number])[] = [
  [KEYS.indexOf('frontViewCentreY'), KEYS.indexOf('frontViewCentreZ')],
  [KEYS.indexOf('sideViewCentreX'), KEYS.indexOf('sideViewCentreZ')],
];

function poseOf(place: EffectPlace, { travel, steering }: Model): readonly [number, number] {
  if (place === 'bump') return [travel.bump, 0];
  if (place === 'droop') return [-travel.droop, 0];
  return [rideTravel(travel), place === 'lock' ? rackRange(steering)[1] : 0];
}

/** Every measure at a place; null out of reach. */
function valuesAt(corner: Corner, place: EffectPlace): Float64Array | null {
  const [travel, rack] = poseOf(place, corner.model);
  const pose = createPose();
  if (solve(corner, pose, travel, rack) !== 'reached') return null;
  const values = new Float64Array(KEYS.length).fill(Number.NaN);
  const measures = createMeasures();
  measureInto(corner, pose, measures);
  values.set(measures);
  for (const [across, up] of CENTRES) {
    if (!(Math.hypot(values[across]!, values[up]!) > FAR_CENTRE)) continue;
    values[across] = Number.POSITIVE_INFINITY;
    values[up] = Number.POSITIVE_INFINITY;
  }
  // Straight ahead nobody asks for a turn.
  if (place !== 'lock') return values;
  const axle = new Float64Array(AXLE_KEYS.length);
  axleInto(createAxle(corner), travel, rack, axle);
  values.set(axle, measures.length);
  return values;
}

/** Greatest less least toe over the model's whole travel at rack 0, degrees; NaN where none of it is reached. */
export function toeChange(corner: Corner): number {
  const { bump, droop } = corner.model.travel;
  const [pose, measures] = [createPose(), createMeasures()];
  const toes: number[] = [];
  for (let i = 0; i < HEIGHTS; i += 1) {
    const travel = -droop + ((bump + droop) * i) / (HEIGHTS - 1);
    if (solve(corner, pose, travel, 0) !== 'reached') continue;
    measureInto(corner, pose, measures);
    toes.push(measures[MEASURE_KEYS.indexOf('toe')]!);
  }
  return toes.length === 0 ? Number.NaN : Math.max(...toes) - Math.min(...toes);
}

function isThere(value: number): boolean {
  return Number.isFinite(value);
}

function weightOf(pairs: readonly Pair[], usual: (farther: number) => number): number {
  const weights = pairs.map(({ before, after }) => {
    if (isThere(before) !== isThere(after)) return Number.POSITIVE_INFINITY;
    if (!isThere(before)) return 0;
    return Math.abs(after - before) / usual(Math.max(Math.abs(before), Math.abs(after)));
  });
  return Math.max(0, ...weights);
}

/**
 * Compares two designs by solving both: exact, no derivative. Sorted by importance: the change divided by a usual size of
 * the measure (common practice, see usual.ts).
 */
export function effectsOf(before: Model, after: Model): Effects {
  const [was, now] = [assemble(before), assemble(after)];
  const places = EFFECT_PLACES.map((place) => ({
    place,
    was: valuesAt(was, place),
    now: valuesAt(now, place),
  }));
  const both = places.flatMap((one) =>
    one.was === null || one.now === null ? [] : [{ place: one.place, was: one.was, now: one.now }],
  );
  const effects = KEYS.map((key, index): Effect => {
    const found = both
      .map((one) => [one.place, { before: one.was[index]!, after: one.now[index]! }] as const)
      .filter(([, pair]) => isThere(pair.before) || isThere(pair.after));
    const weight = weightOf(
      found.map(([, pair]) => pair),
      (farther) => usualSize(key, farther),
    );
    const most = isCentre(key) ? MOST_CENTRE_WEIGHT : Number.POSITIVE_INFINITY;
    return { key, at: Object.fromEntries(found), weight: Math.min(weight, most) };
  });
  const toe: Pair = { before: toeChange(was), after: toeChange(now) };
  effects.push({
    key: 'toeChange',
    at: { set: toe },
    weight: weightOf([toe], () => USUAL_TOE_CHANGE),
  });
  return {
    effects: effects
      .filter(({ weight }) => weight > NOTHING)
      .sort((one, other) => other.weight - one.weight),
    lost: places.filter((one) => one.was !== null && one.now === null).map(({ place }) => place),
  };
}
