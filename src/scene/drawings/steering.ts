/** The steering axis and what it leaves on the ground and at the wheel's height: scrub, trail, spindle offset and trail. */
import { Measure, Slot } from '../../../solver/index.ts';
import { fixed, length } from '../../words/format.ts';
import type { Words } from '../labels/labels.ts';
import { mark, type Pen, ray } from './pen.ts';
import { _p, _u, type Drawing, type Subject } from './subject.ts';

/** Drawn past the upper ball joint, mm. */
const ABOVE = 160;

/** Writes the unit steering axis into `_u` and its point at height z into `_p`. */
function axisAt(data: Float64Array, z: number): void {
  for (let i = 0; i < 3; i += 1) _u[i] = data[Slot.frame + i]!;
  const t = (z - data[Slot.lower + 2]!) / _u[2]!;
  for (let i = 0; i < 3; i += 1) _p[i] = data[Slot.lower + i]! + t * _u[i]!;
}

const AXIS_WORDS: Words = () => 'steering axis';

export const drawSteeringAxis: Drawing = (pen, { now }) => {
  const { data } = now.pose;
  axisAt(data, data[Slot.contact + 2]!);
  const span = Math.hypot(
    data[Slot.upper]! - _p[0]!,
    data[Slot.upper + 1]! - _p[1]!,
    data[Slot.upper + 2]! - _p[2]!,
  );
  ray(pen, _p, 0, _u, 0, 0, span + ABOVE, 'accent');
  mark(pen, _p[0]!, _p[1]!, _p[2]!, 22, 'accent');
  const top = span + ABOVE;
  pen.label(
    _p[0]! + top * _u[0]!,
    _p[1]! + top * _u[1]!,
    _p[2]! + top * _u[2]!,
    'accent',
    AXIS_WORDS,
    0,
  );
};

const SCRUB: Words = (value, unit) =>
  `scrub radius ${length(Math.abs(value), unit)} ${value < 0 ? 'inside' : 'outside'} the axis`;
const TRAIL: Words = (value, unit) =>
  `trail ${length(Math.abs(value), unit)}, axis ${value < 0 ? 'behind' : 'ahead'}`;
const SPINDLE_OFFSET: Words = (value, unit) =>
  `spindle offset ${length(Math.abs(value), unit)} ${value < 0 ? 'inboard' : 'outboard'}`;
const SPINDLE_TRAIL: Words = (value, unit) =>
  `spindle trail ${length(Math.abs(value), unit)}, wheel ${value < 0 ? 'ahead' : 'behind'}`;

/**
 * From the axis's point in `_p` to the point a trail and an offset away: first along l = [a_x, a_y, 0] by the offset,
 * then along h = [a_y, −a_x, 0] back by the trail, each with its length.
 */
function drawOffsets(
  pen: Pen,
  data: Float64Array,
  offset: number,
  trail: number,
  offsetWords: Words,
  trailWords: Words,
): void {
  const flat = Math.hypot(data[Slot.hubAxis]!, data[Slot.hubAxis + 1]!);
  const lx = data[Slot.hubAxis]! / flat;
  const ly = data[Slot.hubAxis + 1]! / flat;
  const x = _p[0]!;
  const y = _p[1]!;
  const z = _p[2]!;
  const qx = x + offset * lx;
  const qy = y + offset * ly;
  const cx = qx - trail * ly;
  const cy = qy + trail * lx;
  pen.line(x, y, z, qx, qy, z, 'ink');
  pen.line(qx, qy, z, cx, cy, z, 'near');
  mark(pen, x, y, z, 14, 'accent');
  mark(pen, cx, cy, z, 14, 'ink');
  pen.label((x + qx) / 2, (y + qy) / 2, z, 'ink', offsetWords, offset);
  pen.label((qx + cx) / 2, (qy + cy) / 2, z, 'near', trailWords, trail);
}

/** Half the length of the patch drawn, as a part of the loaded radius; it only marks the place. */
const PATCH_LENGTH = 0.22;

function drawPatch(pen: Pen, subject: Subject): void {
  const { data } = subject.now.pose;
  const flat = Math.hypot(data[Slot.hubAxis]!, data[Slot.hubAxis + 1]!);
  const lx = data[Slot.hubAxis]! / flat;
  const ly = data[Slot.hubAxis + 1]! / flat;
  const half = subject.extent.drum.half * 0.8;
  const long = subject.now.corner.loadedRadius * PATCH_LENGTH;
  const z = data[Slot.contact + 2]!;
  for (let side = 0; side < 4; side += 1) {
    const a = side === 0 || side === 3 ? half : -half;
    const b = side < 2 ? long : -long;
    const c = side < 2 ? -half : half;
    const d = side === 0 || side === 3 ? long : -long;
    pen.line(
      data[Slot.contact]! + a * lx + b * ly,
      data[Slot.contact + 1]! + a * ly - b * lx,
      z,
      data[Slot.contact]! + c * lx + d * ly,
      data[Slot.contact + 1]! + c * ly - d * lx,
      z,
      'soft',
    );
  }
}

/** The contact patch with scrub radius and trail measured on its ground. */
export const drawContact: Drawing = (pen, subject) => {
  const { data } = subject.now.pose;
  const { measures } = subject.now;
  drawPatch(pen, subject);
  axisAt(data, data[Slot.contact + 2]!);
  const scrub = measures[Measure.scrubRadius]!;
  drawOffsets(pen, data, scrub, measures[Measure.casterTrail]!, SCRUB, TRAIL);
};

/** Spindle offset and trail at the wheel centre's height. */
export const drawSpindle: Drawing = (pen, subject) => {
  const { data } = subject.now.pose;
  const { measures } = subject.now;
  axisAt(data, data[Slot.centre + 2]!);
  const offset = measures[Measure.spindleOffset]!;
  drawOffsets(pen, data, offset, measures[Measure.spindleTrail]!, SPINDLE_OFFSET, SPINDLE_TRAIL);
};

const TRACK: Words = (value, unit) => `half track ${length(value, unit)}`;
const TRACK_RATE: Words = (value) =>
  `${fixed(Math.abs(value), 3)} mm ${value < 0 ? 'inward' : 'outward'} per mm of bump`;

/** From the vehicle's centreline to the contact. */
export const drawTrack: Drawing = (pen, { now }) => {
  const { data } = now.pose;
  const x = data[Slot.contact]!;
  const y = data[Slot.contact + 1]!;
  const z = data[Slot.contact + 2]!;
  pen.line(x, 0, z, x, y, z, 'ink');
  mark(pen, x, 0, z, 20, 'ink');
  mark(pen, x, y, z, 20, 'ink');
  pen.label(x, y / 2, z, 'ink', TRACK, y);
  pen.label(x, y, z, 'near', TRACK_RATE, now.measures[Measure.trackRate]!);
};
