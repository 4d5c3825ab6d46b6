/** What shows the hand that something can be held, and what it does while held: a ring on the tyre, arrows on a handle. */
import { Measure, type Pose, Slot } from '../../../solver/index.ts';
import type { Posed } from '../../state/posed.ts';
import { angle, length } from '../../words/format.ts';
import type { Drum } from '../camera/extent.ts';
import { arrow, type Pen } from '../drawings/pen.ts';
import type { Words } from '../labels/labels.ts';
import { type Carried, placeNow } from './carried.ts';
import type { Axis } from './pointDrag.ts';
import { ARROW, type PointGrip } from './pointGrip.ts';
import type { WheelGrip } from './wheelGrip.ts';

const RING = 56;
/** Where the rings lie: just off the tread, near its edges. */
const CLEAR = 1.012;
const SHOULDER = 0.72;

/** A circle about the hub axis, `s` mm along it from the wheel centre. */
function ring(pen: Pen, data: Float64Array, s: number, radius: number): void {
  const a = Slot.hubAxis;
  const u = Slot.wheelUp;
  const vx = data[a + 1]! * data[u + 2]! - data[a + 2]! * data[u + 1]!;
  const vy = data[a + 2]! * data[u]! - data[a]! * data[u + 2]!;
  const vz = data[a]! * data[u + 1]! - data[a + 1]! * data[u]!;
  const cx = data[Slot.centre]! + s * data[a]!;
  const cy = data[Slot.centre + 1]! + s * data[a + 1]!;
  const cz = data[Slot.centre + 2]! + s * data[a + 2]!;
  let x = cx + radius * data[u]!;
  let y = cy + radius * data[u + 1]!;
  let z = cz + radius * data[u + 2]!;
  for (let i = 1; i <= RING; i += 1) {
    const c = radius * Math.cos((2 * Math.PI * i) / RING);
    const t = radius * Math.sin((2 * Math.PI * i) / RING);
    const nx = cx + c * data[u]! + t * vx;
    const ny = cy + c * data[u + 1]! + t * vy;
    const nz = cz + c * data[u + 2]! + t * vz;
    pen.line(x, y, z, nx, ny, nz, 'accent');
    x = nx;
    y = ny;
    z = nz;
  }
}

const HINT: Words = () => 'drag: up or down for travel, sideways to steer';
const TRAVEL: Words = (value, unit) =>
  value === 0 ? 'travel 0' : `${value < 0 ? 'droop' : 'bump'} ${length(Math.abs(value), unit)}`;
const STEER: Words = (value) =>
  `steered ${angle(Math.abs(value), 1)} to the ${value < 0 ? 'right' : 'left'}`;

/** The ring, and beside the wheel what it answers to or what it has been moved to. */
export function markWheel(pen: Pen, rings: Pen, grip: WheelGrip, now: Posed, drum: Drum): void {
  if (!grip.isOver && !grip.isHeld) return;
  const { data } = now.pose;
  const clear = drum.radius * CLEAR;
  ring(rings, data, drum.half * SHOULDER, clear);
  ring(rings, data, -drum.half * SHOULDER, clear);
  const x = data[Slot.centre]! + drum.half * data[Slot.hubAxis]!;
  const y = data[Slot.centre + 1]! + drum.half * data[Slot.hubAxis + 1]!;
  const z = data[Slot.centre + 2]! + drum.half * data[Slot.hubAxis + 2]!;
  if (grip.way === 'undecided') {
    pen.label(x, y, z, 'soft', HINT, 0);
    return;
  }
  if (grip.way !== 'steer') pen.label(x, y, z, 'accent', TRAVEL, data[Slot.travel]!);
  if (grip.way !== 'travel') pen.label(x, y, z, 'accent', STEER, now.measures[Measure.steerAngle]!);
}

const AXIS_WORDS: readonly Words[] = [() => 'x forward', () => 'y left', () => 'z up'];
const _place = new Float64Array(3);
const _axis = new Float64Array(3);

/** Words of handles' names, made once each. */
const NAMES = new Map<string, Words>();

function wordsFor(label: string): Words {
  const known = NAMES.get(label);
  if (known !== undefined) return known;
  const made: Words = () => label;
  NAMES.set(label, made);
  return made;
}

const X: Words = (value, unit) => `design x ${length(value, unit, 2)}`;
const Y: Words = (value, unit) => `design y ${length(value, unit, 2)}`;
const Z: Words = (value, unit) => `design z ${length(value, unit, 2)}`;
const COORDINATES: readonly Words[] = [X, Y, Z];

function markArrows(pen: Pen, grip: PointGrip, at: Carried, perPixel: number): void {
  const x = _place[0]!;
  const y = _place[1]!;
  const z = _place[2]!;
  for (let i = 0; i < 3; i += 1) {
    const axis = i as Axis;
    if (grip.isHeld && grip.axis !== null && grip.axis !== axis) continue;
    grip.axisNow(at, axis, _axis);
    const isLit = grip.axis === axis;
    const reach = ARROW * perPixel;
    const tone = isLit ? 'near' : 'accent';
    arrow(pen, x, y, z, _axis[0]!, _axis[1]!, _axis[2]!, reach, tone);
    const words = grip.isHeld ? COORDINATES[i]! : AXIS_WORDS[i]!;
    pen.label(
      x + reach * _axis[0]!,
      y + reach * _axis[1]!,
      z + reach * _axis[2]!,
      isLit ? 'near' : 'soft',
      words,
      grip.isHeld ? at.design[i]! : 0,
    );
  }
}

/** One handle's name, with its arrows when it is the selected one. */
function markHandle(pen: Pen, grip: PointGrip, index: number, pose: Pose, ruler: Ruler): void {
  const at = grip.carried()[index];
  if (at === undefined) return;
  placeNow(at, pose, _place);
  pen.label(_place[0]!, _place[1]!, _place[2]!, 'ink', wordsFor(at.point.label), 0);
  if (index === grip.selected) markArrows(pen, grip, at, ruler(_place));
}

/** mm that one px shows at a point. */
export type Ruler = (point: Float64Array) => number;

/** The hovered handle's name, and the selected one's arrows with the design's numbers while it is dragged. */
export function markPoints(pen: Pen, grip: PointGrip, now: Posed, ruler: Ruler): void {
  markHandle(pen, grip, grip.selected, now.pose, ruler);
  if (grip.hovered !== grip.selected) markHandle(pen, grip, grip.hovered, now.pose, ruler);
}
