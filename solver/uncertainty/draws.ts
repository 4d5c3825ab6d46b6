/** Corners drawn at random about a model, each measured: what a Monte Carlo run is made of. */
import { assembleNear, type Corner, solve } from '../corner.ts';
import type { Input } from '../inputs/input.ts';
import { applyInputs, inputValues } from '../inputs/value.ts';
import { placeFrames } from '../linkage/bodies.ts';
import { Slot } from '../linkage/slots.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import { AXLE_KEYS, axleInto, createAxle } from '../measures/axle.ts';
import { createMeasures, MEASURE_KEYS } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import { rideTravel } from '../model/defaults.ts';
import { type AnswerKey, answerPlace } from '../sensitivity/sensitivity.ts';
import { degrees } from '../units.ts';
import { type KnownKey, TOE_CHANGE_KEYS, toeHeights } from './knowledge.ts';

/** What is asked of every corner. */
export interface Asked {
  readonly travel: number;
  readonly rack: number;
  readonly keys: readonly KnownKey[];
}

/** Measures corners for the answers asked, into buffers made once. */
export interface Gauge {
  readonly asked: Asked;
  readonly pose: Pose;
  readonly measures: Float64Array;
  readonly axle: Float64Array;
  readonly hasAxle: boolean;
}

export function createGauge(asked: Asked): Gauge {
  return {
    asked,
    pose: createPose(),
    measures: createMeasures(),
    axle: new Float64Array(AXLE_KEYS.length),
    hasAxle: asked.keys.some((key) => (AXLE_KEYS as readonly string[]).includes(key)),
  };
}

/** Toe at a height, rack 0, degrees; NaN out of reach. */
function toeAt({ pose }: Gauge, corner: Corner, travel: number): number {
  if (solve(corner, pose, travel, 0) !== 'reached') return Number.NaN;
  placeFrames(corner.linkage.fixed, pose.data);
  return degrees(Math.atan2(pose.data[Slot.hubAxis]!, pose.data[Slot.hubAxis + 1]!));
}

function toeChangeOf(gauge: Gauge, corner: Corner, key: KnownKey): number {
  const { travel } = corner.model;
  if (key === 'toeChange') {
    const toes = Array.from(toeHeights(corner.model), (height) => toeAt(gauge, corner, height));
    return Math.max(...toes) - Math.min(...toes);
  }
  const set = toeAt(gauge, corner, rideTravel(travel));
  return toeAt(gauge, corner, key === 'toeToBump' ? travel.bump : -travel.droop) - set;
}

/** Writes a corner's answers in the order asked, NaN where there is none; false where the pose is out of reach. */
export function gaugeInto(gauge: Gauge, corner: Corner, out: Float64Array): boolean {
  const { asked, pose, measures, axle } = gauge;
  out.fill(Number.NaN);
  if (solve(corner, pose, asked.travel, asked.rack) !== 'reached') return false;
  measures.fill(Number.NaN);
  measureInto(corner, pose, measures);
  if (gauge.hasAxle) axleInto(createAxle(corner), asked.travel, asked.rack, axle);
  asked.keys.forEach((key, i) => {
    if ((TOE_CHANGE_KEYS as readonly string[]).includes(key)) {
      out[i] = toeChangeOf(gauge, corner, key);
      return;
    }
    const place = answerPlace(key as AnswerKey);
    const last = MEASURE_KEYS.length;
    out[i] = place < last ? measures[place]! : axle[place - last]!;
  });
  return true;
}

/** Corners about one, their inputs normal and independent with the given standard uncertainties. */
export function createDraw(
  corner: Corner,
  inputs: readonly Input[],
  sigmas: Float64Array,
  normal: () => number,
): () => Corner {
  const moved = inputs.filter((_, i) => sigmas[i]! > 0);
  const spreads = sigmas.filter((sigma) => sigma > 0);
  const means = inputValues(corner.model, moved);
  const values = means.slice();
  return () => {
    for (let i = 0; i < values.length; i += 1) values[i] = means[i]! + spreads[i]! * normal();
    return assembleNear(corner, applyInputs(corner.model, moved, values));
  };
}
