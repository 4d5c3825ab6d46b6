/**
 * Joint and half-shaft angles: the two lines, the true angle between them, and the cone a stated limit allows. Asked
 * about one by one, or all at once as cones with what is left of each.
 */
import { Measure, type MeasureKey, Slot } from '../../../solver/index.ts';
import { shaftInnerAxis, steeringDirection } from '../../../solver/model/defaults.ts';
import { angle, length } from '../../words/format.ts';
import type { Words } from '../labels/labels.ts';
import type { Tone } from '../palette.ts';
import { arcBetween, dashes, type Pen, ray, stroke } from './pen.ts';
import { _u, _w, type Drawing, put, unitise } from './subject.ts';

const REACH = 150;
const RIM = 28;
const SPOKES = 4;

/** A cone of half-angle `limit` degrees about `_u` from a point: its rim and four of its sides. */
function drawCone(pen: Pen, at: ArrayLike<number>, ai: number, limit: number, tone: Tone): void {
  pen.cone?.(at[ai]!, at[ai + 1]!, at[ai + 2]!, _u[0]!, _u[1]!, _u[2]!, REACH, limit, tone);
  const flat = Math.abs(_u[2]!) < 0.9;
  let px = flat ? -_u[1]! : 0;
  let py = flat ? _u[0]! : -_u[2]!;
  let pz = flat ? 0 : _u[1]!;
  const size = Math.hypot(px, py, pz);
  px /= size;
  py /= size;
  pz /= size;
  const qx = _u[1]! * pz - _u[2]! * py;
  const qy = _u[2]! * px - _u[0]! * pz;
  const qz = _u[0]! * py - _u[1]! * px;
  const along = REACH * Math.cos((limit * Math.PI) / 180);
  const aside = REACH * Math.sin((limit * Math.PI) / 180);
  let lastX = 0;
  let lastY = 0;
  let lastZ = 0;
  for (let i = 0; i <= RIM; i += 1) {
    const c = aside * Math.cos((2 * Math.PI * i) / RIM);
    const s = aside * Math.sin((2 * Math.PI * i) / RIM);
    const x = at[ai]! + along * _u[0]! + c * px + s * qx;
    const y = at[ai + 1]! + along * _u[1]! + c * py + s * qy;
    const z = at[ai + 2]! + along * _u[2]! + c * pz + s * qz;
    if (i > 0) pen.line(lastX, lastY, lastZ, x, y, z, tone);
    if (i % (RIM / SPOKES) === 0) pen.line(at[ai]!, at[ai + 1]!, at[ai + 2]!, x, y, z, tone);
    lastX = x;
    lastY = y;
    lastZ = z;
  }
}

/** Degrees left unused below which a joint is said to be near its limit: common practice, no source. */
const NEAR = 3;

/** How a joint is said: its angle where it is asked about, what is left of its limit among the cones. */
interface Said {
  readonly angle: Words;
  readonly left: Words;
  readonly free: Words;
}

function said(name: string): Said {
  return {
    angle: (value) => `${name} ${angle(value, 1)}`,
    left: (left) =>
      left < 0 ? `${name} ${angle(-left, 1)} past its limit` : `${name} ${angle(left, 1)} left`,
    free: (value) => `${name} ${angle(value, 1)}, no limit stated`,
  };
}

/** True while all joints are drawn as cones. */
let isAmongCones = false;

/** Past its limit, near it, or neither. */
function toneOf(value: number, limit: number | undefined): 'touch' | 'near' | null {
  if (limit === undefined) return null;
  if (value > limit) return 'touch';
  return isAmongCones && limit - value < NEAR ? 'near' : null;
}

function labelJoint(
  pen: Pen,
  at: ArrayLike<number>,
  ai: number,
  words: Said,
  value: number,
  limit: number | undefined,
): void {
  const reach = REACH * 1.15;
  const x = at[ai]! + reach * _w[0]!;
  const y = at[ai + 1]! + reach * _w[1]!;
  const z = at[ai + 2]! + reach * _w[2]!;
  const tone = toneOf(value, limit) ?? 'accent';
  if (!isAmongCones) pen.label(x, y, z, tone, words.angle, value);
  else if (limit === undefined) pen.label(x, y, z, tone, words.free, value);
  else pen.label(x, y, z, tone, words.left, limit - value);
}

/** `_u` is the axis the angle is counted from, `_w` the line itself; turned over where they point apart (0 to 90°). */
function drawJoint(
  pen: Pen,
  at: ArrayLike<number>,
  ai: number,
  words: Said,
  value: number,
  limit: number | undefined,
): void {
  const isApart = _u[0]! * _w[0]! + _u[1]! * _w[1]! + _u[2]! * _w[2]! < 0;
  if (isApart) for (let i = 0; i < 3; i += 1) _u[i]! *= -1;
  const x = at[ai]!;
  const y = at[ai + 1]!;
  const z = at[ai + 2]!;
  dashes(pen, x, y, z, x + REACH * _u[0]!, y + REACH * _u[1]!, z + REACH * _u[2]!, 'ink');
  ray(pen, at, ai, _w, 0, 0, REACH * 1.15, 'accent');
  arcBetween(pen, at, ai, _u, 0, _w, 0, REACH * 0.8, 'ink');
  if (limit !== undefined) drawCone(pen, at, ai, limit, toneOf(value, limit) ?? 'soft');
  labelJoint(pen, at, ai, words, value, limit);
}

/** Writes a direction given by components in a frame of the pose buffer. */
function turned(data: Float64Array, frame: number, parts: Float64Array, out: Float64Array): void {
  for (let i = 0; i < 3; i += 1) {
    out[i] =
      parts[0]! * data[frame + i]! +
      parts[1]! * data[frame + 3 + i]! +
      parts[2]! * data[frame + 6 + i]!;
  }
}

const LOWER = said('lower ball joint');
const UPPER = said('upper ball joint');
const OUTER = said('tie rod’s outer joint');
const INNER = said('tie rod’s inner joint');
const SHAFT_OUTER = said('outer CV');
const SHAFT_INNER = said('inner CV');
const PLUNGE: Words = (value, unit) =>
  `plunge ${length(Math.abs(value), unit)}, shaft ${value < 0 ? 'longer' : 'shorter'}`;

/** Stud against housing of one of the three joints that have both. */
function studJoint(
  which: 'lower' | 'upper' | 'rod',
  slot: number,
  frame: number,
  words: Said,
  key: MeasureKey,
): Drawing {
  return (pen, { now }) => {
    const { data } = now.pose;
    const { model, joints } = now.corner;
    turned(data, frame, joints[which].housing, _u);
    turned(data, Slot.frame, joints[which].stud, _w);
    const limit =
      which === 'lower'
        ? model.lowerArm.ballJointLimit
        : which === 'upper'
          ? model.upperArm.ballJointLimit
          : model.tieRod.endLimit;
    drawJoint(pen, data, slot, words, now.measures[Measure[key]]!, limit);
  };
}

export const drawLowerJoint: Drawing = studJoint(
  'lower',
  Slot.lower,
  Slot.lowerFrame,
  LOWER,
  'lowerBallJoint',
);
export const drawUpperJoint: Drawing = studJoint(
  'upper',
  Slot.upper,
  Slot.upperFrame,
  UPPER,
  'upperBallJoint',
);
export const drawRodOuter: Drawing = studJoint(
  'rod',
  Slot.outer,
  Slot.rodFrame,
  OUTER,
  'tieRodOuter',
);

/** The line of the rod's joints against the rack. */
export const drawRodInner: Drawing = (pen, { now }) => {
  const { data } = now.pose;
  const { model } = now.corner;
  const [x, y, z] = steeringDirection(model.steering);
  put(_u, x, y, z);
  for (let i = 0; i < 3; i += 1) _w[i] = data[Slot.rodFrame + i]!;
  if (!unitise(_u)) return;
  drawJoint(
    pen,
    data,
    Slot.inner,
    INNER,
    now.measures[Measure.tieRodInner]!,
    model.tieRod.innerLimit,
  );
};

/** Writes the shaft's unit direction, outward, into `_w`; false where there is none. */
function shaftLine(data: Float64Array, inner: ArrayLike<number>): boolean {
  for (let i = 0; i < 3; i += 1) _w[i] = data[Slot.shaftOuter + i]! - inner[i]!;
  return unitise(_w);
}

export const drawShaftOuter: Drawing = (pen, { now }) => {
  const { shaft, model } = now.corner;
  const { data } = now.pose;
  if (shaft === null || !shaftLine(data, shaft.inner)) return;
  for (let i = 0; i < 3; i += 1) _u[i] = data[Slot.hubAxis + i]!;
  const value = now.measures[Measure.outerAngle]!;
  drawJoint(pen, data, Slot.shaftOuter, SHAFT_OUTER, value, model.halfShaft?.outerLimit);
};

export const drawShaftInner: Drawing = (pen, { now }) => {
  const { shaft, model } = now.corner;
  if (shaft === null || model.halfShaft === undefined) return;
  if (!shaftLine(now.pose.data, shaft.inner)) return;
  const [x, y, z] = shaftInnerAxis(model.halfShaft);
  put(_u, x, y, z);
  if (!unitise(_u)) return;
  const value = now.measures[Measure.innerAngle]!;
  drawJoint(pen, shaft.inner, 0, SHAFT_INNER, value, model.halfShaft.innerLimit);
};

const ALL: readonly Drawing[] = [
  drawLowerJoint,
  drawUpperJoint,
  drawRodOuter,
  drawRodInner,
  drawShaftOuter,
  drawShaftInner,
];

/** All joints at once: each stud inside the cone of its limit, and what is left of it. */
export const drawJointCones: Drawing = (pen, subject) => {
  isAmongCones = true;
  for (let i = 0; i < ALL.length; i += 1) ALL[i]!(pen, subject);
  isAmongCones = false;
};

export const drawPlunge: Drawing = (pen, { now }) => {
  const { shaft } = now.corner;
  if (shaft === null) return;
  const { data } = now.pose;
  const at = Slot.shaftOuter;
  stroke(pen, shaft.inner, 0, data, at, 'accent');
  pen.label(
    (shaft.inner[0] + data[at]!) / 2,
    (shaft.inner[1] + data[at + 1]!) / 2,
    (shaft.inner[2] + data[at + 2]!) / 2,
    'accent',
    PLUNGE,
    now.measures[Measure.plunge]!,
  );
};
