/** Movement ratios as arrows: what damper, bar and rack move while the wheel moves a stated way. */
import { Measure, Slot } from '../../../solver/index.ts';
import { steeringDirection } from '../../../solver/model/defaults.ts';
import { fixed, length } from '../../words/format.ts';
import type { Words } from '../labels/labels.ts';
import { drawSteerAngle } from './angles.ts';
import { arrow, mark, type Pen, stroke } from './pen.ts';
import { _u, type Drawing, put, type Subject, unitise } from './subject.ts';

/** The wheel's way that the other arrows answer to, mm. */
const WAY = 100;

const WHEEL: Words = (value, unit) => `wheel ${length(value, unit, 0)}`;
const DAMPER: Words = (value, unit) => `damper ${length(value, unit)}`;
const BAR: Words = (value, unit) => `bar ${length(value, unit)}`;
const STRAP: Words = (value, unit) => `strap ${length(value, unit)}`;
const RACK: Words = (value) => `${fixed(value, 3)}° of steer per mm of rack`;

function drawWheelWay(pen: Pen, data: Float64Array): void {
  const x = data[Slot.centre]!;
  const y = data[Slot.centre + 1]!;
  const z = data[Slot.centre + 2]!;
  arrow(pen, x, y, z, 0, 0, 1, WAY, 'ink');
  pen.label(x, y, z + WAY, 'ink', WHEEL, WAY);
}

/** The damper's shortening for the wheel's way up, along the damper. */
export const drawDamper: Drawing = (pen, { now }) => {
  const damper = now.corner.coilover;
  if (damper === null) return;
  const { data } = now.pose;
  const bottom = Slot.damperBottom;
  const [x, y, z] = damper.top;
  put(_u, x - data[bottom]!, y - data[bottom + 1]!, z - data[bottom + 2]!);
  if (!unitise(_u)) return;
  stroke(pen, damper.top, 0, data, bottom, 'soft');
  drawWheelWay(pen, data);
  const way = WAY * now.measures[Measure.motionRatio]!;
  const [bx, by, bz] = [data[bottom]!, data[bottom + 1]!, data[bottom + 2]!];
  arrow(pen, bx, by, bz, _u[0]!, _u[1]!, _u[2]!, way, 'accent');
  pen.label(bx + way * _u[0]!, by + way * _u[1]!, bz + way * _u[2]!, 'accent', DAMPER, way);
};

/** The lever end's way, along its circle about the bar, for the wheel's way up. */
export const drawBar: Drawing = (pen, { now }) => {
  const { lever } = now.corner;
  if (lever === null) return;
  const { data } = now.pose;
  const { circle } = lever;
  const at = Slot.leverEnd;
  const [x, y, z] = [data[at]!, data[at + 1]!, data[at + 2]!];
  const [rx, ry, rz] = [x - circle[0]!, y - circle[1]!, z - circle[2]!];
  const [ax, ay, az] = [circle[9]!, circle[10]!, circle[11]!];
  put(_u, ay * rz - az * ry, az * rx - ax * rz, ax * ry - ay * rx);
  if (!unitise(_u)) return;
  const way = WAY * now.measures[Measure.barMotionRatio]! * lever.raising;
  drawWheelWay(pen, data);
  stroke(pen, circle, 0, data, at, 'soft');
  stroke(pen, data, at, data, Slot.link, 'soft');
  arrow(pen, x, y, z, _u[0]!, _u[1]!, _u[2]!, way, 'accent');
  pen.label(x + way * _u[0]!, y + way * _u[1]!, z + way * _u[2]!, 'accent', BAR, Math.abs(way));
};

export const drawStrap: Drawing = (pen, { now }) => {
  const { strap } = now.corner;
  if (strap === null) return;
  const { data } = now.pose;
  const at = Slot.strapBottom;
  stroke(pen, strap.top, 0, data, at, 'accent');
  mark(pen, strap.top[0], strap.top[1], strap.top[2], 10, 'accent');
  mark(pen, data[at]!, data[at + 1]!, data[at + 2]!, 10, 'accent');
  pen.label(
    (strap.top[0] + data[at]!) / 2,
    (strap.top[1] + data[at + 1]!) / 2,
    (strap.top[2] + data[at + 2]!) / 2,
    'accent',
    STRAP,
    now.measures[Measure.strapLength]!,
  );
};

/** The rack's way, and the steer angle it makes. */
export const drawRack: Drawing = (pen, subject: Subject) => {
  const { corner, pose, measures } = subject.now;
  const [x, y, z] = steeringDirection(corner.model.steering);
  put(_u, x, y, z);
  if (!unitise(_u)) return;
  const { data } = pose;
  const at = Slot.inner;
  arrow(pen, data[at]!, data[at + 1]!, data[at + 2]!, _u[0]!, _u[1]!, _u[2]!, WAY, 'accent');
  pen.label(
    data[at]! + WAY * _u[0]!,
    data[at + 1]! + WAY * _u[1]!,
    data[at + 2]! + WAY * _u[2]!,
    'accent',
    RACK,
    measures[Measure.steerPerRack]!,
  );
  drawSteerAngle(pen, subject);
};
