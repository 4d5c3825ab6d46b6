/** What a corner does of what is wanted: figures of measures, and by how much they miss. */
import { type Corner, solve } from '../corner.ts';
import { createPose } from '../linkage/solve.ts';
import { AXLE_KEYS, type AxleKey, AxleMeasure, axleInto, createAxle } from '../measures/axle.ts';
import { createMeasures, Measure, type MeasureKey } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import { heightsOf, rackAt, travelAt } from './places.ts';
import type { Aiming, ChangeWish, Height, Lock, MeasureWish, Stay, ToeChangeWish } from './plan.ts';

const _pose = createPose();
const _measures = createMeasures();
const _axle = new Float64Array(AXLE_KEYS.length);

function isAxle(key: MeasureKey | AxleKey): key is AxleKey {
  return (AXLE_KEYS as readonly string[]).includes(key);
}

/** A measure of a pose; NaN out of reach, or where it has none. */
export function measureAt(
  corner: Corner,
  key: MeasureKey | AxleKey,
  height: Height,
  lock: Lock,
): number {
  const travel = travelAt(corner.model, height);
  const rack = rackAt(corner, lock);
  if (isAxle(key)) {
    axleInto(createAxle(corner), travel, rack, _axle);
    return _axle[AxleMeasure[key]]!;
  }
  if (solve(corner, _pose, travel, rack) !== 'reached') return Number.NaN;
  // What the corner lacks the parts for keeps what stood there.
  _measures[Measure[key]] = Number.NaN;
  measureInto(corner, _pose, _measures);
  return _measures[Measure[key]]!;
}

/** Departure of toe from the set pose's at each height of a stretch, degrees; NaN out of reach. */
export function toeDepartures(corner: Corner, from: Height, to: Height): Float64Array {
  return heightsOf(corner.model, from, to).map((travel) => {
    if (solve(corner, _pose, travel, 0) !== 'reached') return Number.NaN;
    measureInto(corner, _pose, _measures);
    return -_measures[Measure.steerAngle]!;
  });
}

/** A wish that is read from single poses. */
export type PoseWish = ToeChangeWish | MeasureWish | ChangeWish;

/** How far a figure misses a value, signed; 0 where it does not. */
export function missOf(figure: number, value: number, aiming: Aiming): number {
  const miss = figure - value;
  if (aiming === 'atLeast') return Math.min(0, miss);
  return aiming === 'atMost' ? Math.max(0, miss) : miss;
}

function figureOfChange(corner: Corner, { measure, height }: ChangeWish): number {
  return (
    measureAt(corner, measure, height, 'straight') - measureAt(corner, measure, 'ride', 'straight')
  );
}

/** What a wish is about, as a number: its measure, its change, or the greatest change of toe. */
export function figureOf(corner: Corner, wish: PoseWish): number {
  if (wish.of === 'change') return figureOfChange(corner, wish);
  if (wish.of === 'measure') return measureAt(corner, wish.measure, wish.height, wish.lock);
  return toeDepartures(corner, wish.from, wish.to).reduce(
    (most, each) => Math.max(most, Math.abs(each)),
    0,
  );
}

/** Weighed misses of a wish: their squares add up to its cost. */
export function missesOf(corner: Corner, wish: PoseWish): Float64Array {
  const { value, within, matters } = wish;
  if (wish.of !== 'toeChange') {
    const miss = missOf(figureOf(corner, wish), value, wish.aiming);
    return Float64Array.of((Math.sqrt(matters) * miss) / within);
  }
  const departures = toeDepartures(corner, wish.from, wish.to);
  const scale = Math.sqrt(matters / departures.length) / within;
  return departures.map(
    (each) => scale * (Math.sign(each) * Math.max(0, Math.abs(each) - value) || 0),
  );
}

/** The value of what is to stay. */
export function stayAt(corner: Corner, { measure, height, lock }: Stay): number {
  return measureAt(corner, measure, height, lock);
}
