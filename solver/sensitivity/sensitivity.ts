/** Values of every measure in a pose with their exact derivatives with respect to every measured input of the model. */
import { type Corner, solve } from '../corner.ts';
import type { Input } from '../inputs/input.ts';
import type { Failure } from '../linkage/linkage.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import { AXLE_KEYS, type Axle, type AxleKey, createAxle } from '../measures/axle.ts';
import { MEASURE_KEYS, type MeasureKey } from '../measures/keys.ts';
import { placeParts } from '../measures/parts.ts';
import { rideTravel } from '../model/defaults.ts';
import { DEGREES_PER_RADIAN } from '../units.ts';
import { writeBothWheels } from './axle.ts';
import { bodiesOf } from './carried.ts';
import { type Constants, constantsOf, type DesignInputs, designInputs } from './design.ts';
import { type Jet, MOST_ORDER } from './jets.ts';
import { motionOf } from './motion.ts';
import { partWriters, type Writer } from './parts.ts';
import { groundOf, standOf, toeOf, writeAlignment, writeCentres } from './wheel.ts';
import type { Write } from './write.ts';

/** A number asked of a pose: a measure of the wheel or of the axle. */
export type AnswerKey = MeasureKey | AxleKey;

export const ANSWER_KEYS: readonly AnswerKey[] = [...MEASURE_KEYS, ...AXLE_KEYS];

const PLACES = new Map(ANSWER_KEYS.map((key, place) => [key, place]));

/** Place of an answer among the values, and of its row among the slopes. */
export function answerPlace(key: AnswerKey): number {
  return PLACES.get(key)!;
}

/** The set pose's part in other poses' measures. */
interface SetPose {
  readonly toe: Jet;
  readonly kingpinTrack: Jet;
  readonly scrub: Jet;
}

/** A corner made ready to be differentiated. */
export interface Sensitivities {
  readonly corner: Corner;
  /** The inputs, in the order of every row of slopes. */
  readonly inputs: readonly Input[];
  readonly axle: Axle;
  readonly design: DesignInputs;
  readonly constants: Constants;
  readonly writers: readonly Writer[];
  readonly set: SetPose | null;
  readonly pose: Pose;
}

/** One pose differentiated. Units are the measures' own, per unit of the input. */
export interface PoseSensitivity {
  readonly travel: number;
  readonly rack: number;
  /** By `answerPlace`; NaN where the model lacks the parts or the number does not exist. */
  readonly values: Float64Array;
  /** By rows: ∂answer/∂input at answerPlace · inputs + input; NaN where the answer is, or has a corner there and no derivative. */
  readonly slopes: Float64Array;
}

/** Makes a corner ready to be differentiated. Costs about a millisecond. */
export function createSensitivities(corner: Corner): Sensitivities {
  const design = designInputs(corner.model);
  const constants = constantsOf(design);
  const bodies = bodiesOf(design, constants);
  const writers = partWriters(design, bodies, corner);
  const pose = createPose();
  return {
    corner,
    inputs: design.inputs,
    axle: createAxle(corner),
    design,
    constants,
    writers,
    set: setPoseOf(corner, design, constants, pose),
    pose,
  };
}

function setPoseOf(
  corner: Corner,
  design: DesignInputs,
  constants: Constants,
  pose: Pose,
): SetPose | null {
  const { jets, number } = design;
  const travel = rideTravel(corner.model.travel);
  if (solve(corner, pose, travel, 0) !== 'reached') return null;
  jets.order = 0;
  const motion = motionOf(jets, constants, pose, { travel, rack: 0, perTravel: 0, perRack: 0 });
  if (motion === null) return null;
  const stand = standOf(jets, motion, number('tyre.loadedRadius'));
  const { scrub, axisY } = groundOf(jets, motion, stand);
  return { toe: toeOf(jets, motion), kingpinTrack: jets.scale(axisY, 2), scrub };
}

/** Steer per rack: −d toe/dr with the travel held. */
function writeSteerPerRack(
  { design, constants, pose }: Sensitivities,
  at: { readonly travel: number; readonly rack: number },
  write: Write,
): void {
  const { jets } = design;
  jets.order = 1;
  const motion = motionOf(jets, constants, pose, { ...at, perTravel: 0, perRack: 1 });
  if (motion === null) return;
  write('steerPerRack', jets.rate(toeOf(jets, motion)), -DEGREES_PER_RADIAN);
}

/** Differentiates the pose at (travel, rack), mm; what fails where it is out of reach or singular. Costs about a millisecond. */
export function sensitivityAt(
  made: Sensitivities,
  travel: number,
  rack: number,
): PoseSensitivity | Failure {
  const { corner, inputs, design, constants, writers, set, pose } = made;
  const { jets, number } = design;
  const outcome = solve(corner, pose, travel, rack);
  if (outcome !== 'reached') return outcome;
  placeParts(corner, pose.data);
  const values = new Float64Array(ANSWER_KEYS.length).fill(Number.NaN);
  const slopes = new Float64Array(ANSWER_KEYS.length * inputs.length).fill(Number.NaN);
  const write: Write = (key, jet, factor = 1, isCorner = false) => {
    const place = answerPlace(key);
    values[place] = factor * jets.value(jet);
    if (!isCorner) jets.gradientInto(jet, slopes, place * inputs.length, factor);
  };
  const mark = jets.mark();
  jets.order = corner.coilover === null ? 1 : MOST_ORDER;
  const motion = motionOf(jets, constants, pose, { travel, rack, perTravel: 1, perRack: 0 });
  if (motion === null) {
    jets.release(mark);
    return 'lowerArm';
  }
  for (const part of writers) {
    jets.order = part.order;
    part.write(motion, pose.data, write);
  }
  jets.order = 1;
  const stand = standOf(jets, motion, number('tyre.loadedRadius'));
  writeAlignment(jets, motion, stand, set?.toe ?? null, write);
  writeCentres(design, motion, stand, write);
  writeSteerPerRack(made, { travel, rack }, write);
  writeBothWheels(made, motion, { travel, rack }, write);
  jets.release(mark);
  return { travel, rack, values, slopes };
}

/** Toe of one pose, degrees, and its derivatives with respect to every input. */
export interface ToeSensitivity {
  readonly toe: number;
  readonly slopes: Float64Array;
}

/** Differentiates toe alone, in a tenth of the time that all measures take; what fails where the pose is out of reach. */
export function toeSensitivityAt(
  { corner, inputs, design, constants, pose }: Sensitivities,
  travel: number,
  rack: number,
): ToeSensitivity | Failure {
  const outcome = solve(corner, pose, travel, rack);
  if (outcome !== 'reached') return outcome;
  const { jets } = design;
  const mark = jets.mark();
  jets.order = 0;
  const motion = motionOf(jets, constants, pose, { travel, rack, perTravel: 0, perRack: 0 });
  if (motion === null) {
    jets.release(mark);
    return 'lowerArm';
  }
  const jet = toeOf(jets, motion);
  const slopes = new Float64Array(inputs.length);
  jets.gradientInto(jet, slopes, 0, DEGREES_PER_RADIAN);
  const toe = DEGREES_PER_RADIAN * jets.value(jet);
  jets.release(mark);
  return { toe, slopes };
}

/** ∂answer/∂input of a differentiated pose, the input by its place in `Sensitivities.inputs`. */
export function slopeOf(
  { slopes }: PoseSensitivity,
  inputCount: number,
  key: AnswerKey,
  place: number,
): number {
  return slopes[answerPlace(key) * inputCount + place]!;
}
