/**
 * A design beside the present one as lines over everything, where it differs from the present one in the same place of the
 * bench: arms, knuckle, tie rod and damper between their points, and the tyre's two edges. A faint body alone would be
 * lost behind the present parts.
 */
import { type Corner, placeRod, rodPointCount, Slot } from '../../../solver/index.ts';
import type { BesidePosed } from '../../state/beside.ts';
import type { Place } from '../../state/marks.ts';
import type { Posed } from '../../state/posed.ts';
import { type Drum, tyreDrum } from '../camera/extent.ts';
import type { Words } from '../labels/labels.ts';
import type { Tone } from '../palette.ts';
import { dashes, type Pen, stroke } from './pen.ts';

/** Ends of a line nearer than this to their place of today, mm, are not worth a line. */
const SAME = 0.5;
/** Turned by less than this, rad, a wheel stands as it stood: half a millimetre at its edge. */
const SAME_TURN = 1.2e-3;
/** How a design's lines look, and what they are called. */
export interface Look {
  readonly tone: Tone;
  readonly words: Words;
  /** Lengths of dash and gap, mm. */
  readonly dash: number;
  readonly gap: number;
  /** Dashes around an edge of the tyre. */
  readonly around: number;
}

export const YESTERDAY_LOOK: Look = {
  tone: 'held',
  words: () => 'yesterday',
  dash: 14,
  gap: 10,
  around: 48,
};

const PLACE_LOOKS: Readonly<Record<Place, Omit<Look, 'tone' | 'words'>>> = {
  B: { dash: 26, gap: 10, around: 30 },
  C: { dash: 7, gap: 8, around: 80 },
  D: { dash: 18, gap: 20, around: 40 },
};

/** Longest name written into the picture, characters. */
const LONGEST_NAME = 40;

const looks = new WeakMap<BesidePosed, Look>();

/** The look of a design, made once for it. */
export function lookOf(design: BesidePosed): Look {
  const { key, mark, name } = design;
  if (key === 'yesterday') return YESTERDAY_LOOK;
  const known = looks.get(design);
  if (known !== undefined) return known;
  const short = name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1).trim()}…` : name;
  const text = `${mark.letter} ${short}`;
  const look = { ...PLACE_LOOKS[key], tone: mark.tone, words: () => text };
  looks.set(design, look);
  return look;
}

type Flat = ArrayLike<number>;

/** Of a part that there is none of today: no place is the same. */
const NOWHERE: Flat = [Number.NaN, Number.NaN, Number.NaN];

/** Where the word stands that says whose lines these are: on the first one drawn. */
const _word = { x: 0, y: 0, z: 0, isSet: false };

function isSame(a: Flat, ai: number, b: Flat, bi: number, within = SAME): boolean {
  const x = a[ai]! - b[bi]!;
  const y = a[ai + 1]! - b[bi + 1]!;
  const z = a[ai + 2]! - b[bi + 2]!;
  return x * x + y * y + z * z < within * within;
}

/** The look of the design that is being drawn. */
let _look = YESTERDAY_LOOK;

/** Dark and light by turns, so that it stands out from whatever lies behind. */
function dashed(pen: Pen, a: Flat, ai: number, b: Flat, bi: number): void {
  const { tone, dash, gap } = _look;
  stroke(pen, a, ai, b, bi, 'paper');
  dashes(pen, a[ai]!, a[ai + 1]!, a[ai + 2]!, b[bi]!, b[bi + 1]!, b[bi + 2]!, tone, dash, gap);
  if (_word.isSet) return;
  _word.isSet = true;
  _word.x = (a[ai]! + b[bi]!) / 2;
  _word.y = (a[ai + 1]! + b[bi + 1]!) / 2;
  _word.z = (a[ai + 2]! + b[bi + 2]!) / 2;
}

/** A line between two points of the other design, places in a buffer, unless both stand where today's do. */
function drawLine(pen: Pen, was: Flat, is: Flat, from: number, to: number): void {
  if (isSame(was, from, is, from) && isSame(was, to, is, to)) return;
  dashed(pen, was, from, was, to);
}

/** A line from a point of the body to one of the pose. */
function drawFrom(pen: Pen, was: Flat, is: Flat, top: Flat, topNow: Flat, end: number): void {
  if (isSame(top, 0, topNow, 0) && isSame(was, end, is, end)) return;
  dashed(pen, top, 0, was, end);
}

const MOST_POINTS = 40;
const _rod = new Float64Array(3 * MOST_POINTS);
const _rodNow = new Float64Array(3 * MOST_POINTS);

function drawRod(pen: Pen, now: Posed, other: Posed): void {
  const count = rodPointCount(other.corner);
  const countNow = rodPointCount(now.corner);
  if (Math.max(count, countNow) > MOST_POINTS) return;
  placeRod(other.corner, other.pose.data, _rod);
  placeRod(now.corner, now.pose.data, _rodNow);
  for (let at = 3; at < 3 * count; at += 3) {
    if (count === countNow) drawLine(pen, _rod, _rodNow, at - 3, at);
    else dashed(pen, _rod, at - 3, _rod, at);
  }
}

const drums = new WeakMap<Corner, Drum>();

function drumOf(corner: Corner): Drum {
  const known = drums.get(corner);
  if (known !== undefined) return known;
  const drum = tyreDrum(corner);
  drums.set(corner, drum);
  return drum;
}

/** A dashed circle of the tyre, `side` mm outboard of the wheel's middle. */
function drawEdge(pen: Pen, data: Float64Array, side: number, radius: number): void {
  const a = Slot.hubAxis;
  const u = Slot.wheelUp;
  const vx = data[a + 1]! * data[u + 2]! - data[a + 2]! * data[u + 1]!;
  const vy = data[a + 2]! * data[u]! - data[a]! * data[u + 2]!;
  const vz = data[a]! * data[u + 1]! - data[a + 1]! * data[u]!;
  const x = data[Slot.centre]! + side * data[a]!;
  const y = data[Slot.centre + 1]! + side * data[a + 1]!;
  const z = data[Slot.centre + 2]! + side * data[a + 2]!;
  const { tone, around } = _look;
  for (let i = 0; i < 2 * around; i += 1) {
    const from = (Math.PI * i) / around;
    const to = (Math.PI * (i + 1)) / around;
    const c = radius * Math.cos(from);
    const s = radius * Math.sin(from);
    const d = radius * Math.cos(to);
    const t = radius * Math.sin(to);
    pen.line(
      x + c * data[u]! + s * vx,
      y + c * data[u + 1]! + s * vy,
      z + c * data[u + 2]! + s * vz,
      x + d * data[u]! + t * vx,
      y + d * data[u + 1]! + t * vy,
      z + d * data[u + 2]! + t * vz,
      i % 2 === 0 ? tone : 'paper',
    );
  }
}

function drawTyre(pen: Pen, now: Posed, other: Posed): void {
  const was = other.pose.data;
  const is = now.pose.data;
  const { half, radius } = drumOf(other.corner);
  const today = drumOf(now.corner);
  const isAlike =
    isSame(was, Slot.centre, is, Slot.centre) &&
    isSame(was, Slot.hubAxis, is, Slot.hubAxis, SAME_TURN) &&
    Math.abs(half - today.half) < SAME &&
    Math.abs(radius - today.radius) < SAME;
  if (isAlike) return;
  drawEdge(pen, was, -half, radius);
  drawEdge(pen, was, half, radius);
}

/** Draws what another design does differently at the same travel and rack. */
export function drawOther(pen: Pen, now: Posed, other: Posed, look: Look): void {
  _look = look;
  const was = other.pose.data;
  const is = now.pose.data;
  const { pivots } = other.corner.linkage;
  const { pivots: pivotsNow } = now.corner.linkage;
  _word.isSet = false;
  drawFrom(pen, was, is, pivots.upperFront, pivotsNow.upperFront, Slot.upper);
  drawFrom(pen, was, is, pivots.upperRear, pivotsNow.upperRear, Slot.upper);
  drawFrom(pen, was, is, pivots.lowerFront, pivotsNow.lowerFront, Slot.lower);
  drawFrom(pen, was, is, pivots.lowerRear, pivotsNow.lowerRear, Slot.lower);
  drawLine(pen, was, is, Slot.lower, Slot.upper);
  drawRod(pen, now, other);
  const top = other.corner.coilover?.top;
  if (top !== undefined)
    drawFrom(pen, was, is, top, now.corner.coilover?.top ?? NOWHERE, Slot.damperBottom);
  drawTyre(pen, now, other);
  if (_word.isSet) pen.label(_word.x, _word.y, _word.z, look.tone, look.words, 0);
}
