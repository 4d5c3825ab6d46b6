/** Alignment angles drawn at the wheel: the two lines each lies between, the true angle, and its sign in words. */
import { Measure, Slot } from '../../../solver/index.ts';
import { angle } from '../../words/format.ts';
import type { Words } from '../labels/labels.ts';
import type { Pen } from './pen.ts';
import { arcBetween, dashes, ray } from './pen.ts';
import { _u, _w, type Drawing, put, type Subject, UP, unitise } from './subject.ts';

const CAMBER: Words = (value) =>
  `camber: top leans ${value < 0 ? 'in' : 'out'} ${angle(Math.abs(value))}`;
const TOE: Words = (value) => `toe ${value < 0 ? 'out' : 'in'} ${angle(Math.abs(value))}`;
const CASTER: Words = (value) =>
  `caster: axis leans to the ${value < 0 ? 'front' : 'rear'} ${angle(Math.abs(value))}`;
const KINGPIN: Words = (value) =>
  `kingpin: axis leans ${value < 0 ? 'out' : 'in'} ${angle(Math.abs(value))}`;
const STEER: Words = (value) =>
  `steered ${angle(Math.abs(value))} to the ${value < 0 ? 'right' : 'left'}`;

/** Two lines from a slot's point along `_u` (dashed: from where it is counted) and `_w`, and the arc between. */
function drawAngle(
  pen: Pen,
  data: Float64Array,
  slot: number,
  reach: number,
  words: Words,
  value: number,
): void {
  const x = data[slot]!;
  const y = data[slot + 1]!;
  const z = data[slot + 2]!;
  dashes(pen, x, y, z, x + reach * _u[0]!, y + reach * _u[1]!, z + reach * _u[2]!, 'soft');
  ray(pen, data, slot, _w, 0, 0, reach, 'accent');
  arcBetween(pen, data, slot, _u, 0, _w, 0, reach * 0.92, 'ink');
  pen.label(x + reach * _w[0]!, y + reach * _w[1]!, z + reach * _w[2]!, 'accent', words, value);
}

function reachOf(subject: Subject): number {
  return subject.extent.drum.radius * 1.12;
}

/** Upright against the wheel's own up direction, laid across the vehicle. */
export const drawCamber: Drawing = (pen, subject) => {
  const { pose, measures } = subject.now;
  _u.set(UP);
  for (let i = 0; i < 3; i += 1) _w[i] = pose.data[Slot.wheelUp + i]!;
  drawAngle(pen, pose.data, Slot.centre, reachOf(subject), CAMBER, measures[Measure.camber]!);
};

/** Straight ahead against the wheel's heading h = [a_y, −a_x, 0]. */
export const drawToe: Drawing = (pen, subject) => {
  const { pose, measures } = subject.now;
  put(_u, 1, 0, 0);
  put(_w, pose.data[Slot.hubAxis + 1]!, -pose.data[Slot.hubAxis]!, 0);
  if (!unitise(_w)) return;
  drawAngle(pen, pose.data, Slot.centre, reachOf(subject), TOE, measures[Measure.toe]!);
};

/** The set pose's heading against the present one. */
export const drawSteerAngle: Drawing = (pen, subject) => {
  const { corner, pose, measures } = subject.now;
  const toe = ((corner.setToe ?? 0) * Math.PI) / 180;
  put(_u, Math.cos(toe), -Math.sin(toe), 0);
  put(_w, pose.data[Slot.hubAxis + 1]!, -pose.data[Slot.hubAxis]!, 0);
  if (!unitise(_w)) return;
  drawAngle(pen, pose.data, Slot.centre, reachOf(subject), STEER, measures[Measure.steerAngle]!);
};

/** The steering axis k seen from the side: its x and z parts alone. */
export const drawCaster: Drawing = (pen, subject) => {
  const { pose, measures } = subject.now;
  _u.set(UP);
  put(_w, pose.data[Slot.frame]!, 0, pose.data[Slot.frame + 2]!);
  if (!unitise(_w)) return;
  drawAngle(pen, pose.data, Slot.lower, reachOf(subject), CASTER, measures[Measure.caster]!);
};

/** The steering axis seen from the front: its y and z parts alone. */
export const drawKingpin: Drawing = (pen, subject) => {
  const { pose, measures } = subject.now;
  _u.set(UP);
  put(_w, 0, pose.data[Slot.frame + 1]!, pose.data[Slot.frame + 2]!);
  if (!unitise(_w)) return;
  const value = measures[Measure.kingpinInclination]!;
  drawAngle(pen, pose.data, Slot.lower, reachOf(subject), KINGPIN, value);
};
