/** Instant centres and roll centre with the lines they come from; where one lies far off, an arrow says how far. */
import { Measure, Slot } from '../../../solver/index.ts';
import { length } from '../../words/format.ts';
import type { Words } from '../labels/labels.ts';
import { arrow, dashes, mark, type Pen } from './pen.ts';
import type { Drawing } from './subject.ts';

/** To a centre farther than this from the contact, mm, no lines are drawn. */
const FAR = 2600;
const POINTER = 420;

const FRONT: Words = () => 'front-view centre';
const SIDE: Words = () => 'side-view centre';
const FRONT_FAR: Words = (value, unit) => `front-view centre ${length(value, unit, 0)} away`;
const SIDE_FAR: Words = (value, unit) => `side-view centre ${length(value, unit, 0)} away`;
const FRONT_NONE: Words = () => 'no front-view centre: the wheel moves straight';
const SIDE_NONE: Words = () => 'no side-view centre: the wheel moves straight';

/** Tried parts of an arrow's way, its tip first. */
const PARTS = [1, 0.75, 0.5, 0.25] as const;

/** The greatest of the tried parts of a way that the picture shows; 0 where it shows none. */
function seenPart(
  pen: Pen,
  x: number,
  y: number,
  z: number,
  dx: number,
  dy: number,
  dz: number,
): number {
  for (let i = 0; i < PARTS.length; i += 1) {
    const part = PARTS[i]!;
    if (pen.sees(x + part * dx, y + part * dy, z + part * dz)) return part;
  }
  return 0;
}

/**
 * Lines from the contact and from both ball joints, as seen in this view, to the centre at (x, y, z). A centre outside
 * the picture is pointed at from the contact, with its distance; one far off is only pointed at.
 */
function drawCentre(
  pen: Pen,
  data: Float64Array,
  x: number,
  y: number,
  z: number,
  isFront: boolean,
): void {
  const cx = data[Slot.contact]!;
  const cy = data[Slot.contact + 1]!;
  const cz = data[Slot.contact + 2]!;
  const distance = Math.hypot(x - cx, y - cy, z - cz);
  if (!Number.isFinite(distance)) {
    pen.label(cx, cy, cz, 'ink', isFront ? FRONT_NONE : SIDE_NONE, 0);
    return;
  }
  const isSeen = distance <= FAR && pen.sees(x, y, z);
  if (!isSeen) {
    const dx = (x - cx) / distance;
    const dy = (y - cy) / distance;
    const dz = (z - cz) / distance;
    arrow(pen, cx, cy, cz, dx, dy, dz, POINTER, 'ink');
    const words = isFront ? FRONT_FAR : SIDE_FAR;
    // At the arrow's tip, or as near to it as the picture shows it.
    const out = seenPart(pen, cx, cy, cz, POINTER * dx, POINTER * dy, POINTER * dz);
    const at = out * POINTER;
    pen.label(cx + at * dx, cy + at * dy, cz + at * dz, 'ink', words, distance);
  }
  if (distance > FAR) return;
  dashes(pen, cx, cy, cz, x, y, z, 'ink');
  for (let joint = 0; joint < 2; joint += 1) {
    const slot = joint === 0 ? Slot.lower : Slot.upper;
    // Laid into the plane of the view through the contact.
    const jx = isFront ? cx : data[slot]!;
    const jy = isFront ? data[slot + 1]! : cy;
    pen.line(jx, jy, data[slot + 2]!, x, y, z, 'soft');
    mark(pen, jx, jy, data[slot + 2]!, 7, 'soft');
  }
  mark(pen, x, y, z, 26, 'accent');
  if (isSeen) pen.label(x, y, z, 'accent', isFront ? FRONT : SIDE, 0);
}

export const drawFrontCentre: Drawing = (pen, { now }) => {
  const { measures, pose } = now;
  const y = measures[Measure.frontViewCentreY]!;
  const z = measures[Measure.frontViewCentreZ]!;
  drawCentre(pen, pose.data, pose.data[Slot.contact]!, y, z, true);
};

export const drawSideCentre: Drawing = (pen, { now }) => {
  const { measures, pose } = now;
  const x = measures[Measure.sideViewCentreX]!;
  const z = measures[Measure.sideViewCentreZ]!;
  drawCentre(pen, pose.data, x, pose.data[Slot.contact + 1]!, z, false);
};

export const drawCentres: Drawing = (pen, subject) => {
  drawFrontCentre(pen, subject);
  drawSideCentre(pen, subject);
};

const ROLL: Words = (value, unit) =>
  `roll centre ${length(Math.abs(value), unit)} ${value < 0 ? 'below' : 'above'} the ground`;
const ROLL_FAR: Words = (value, unit) =>
  `roll centre ${length(Math.abs(value), unit, 0)} ${value < 0 ? 'below' : 'above'} the ground, out of the picture`;

/** The roll centre on the vehicle's centreline, and the line to it from the contact. */
export const drawRollCentre: Drawing = (pen, { now }) => {
  const { data } = now.pose;
  const height = now.measures[Measure.rollCentreHeight]!;
  const x = data[Slot.contact]!;
  const ground = data[Slot.contact + 2]!;
  if (!Number.isFinite(height)) return;
  if (Math.abs(height) > FAR) {
    arrow(pen, x, 0, ground, 0, 0, Math.sign(height), POINTER, 'ink');
    pen.label(x, 0, ground + Math.sign(height) * POINTER, 'ink', ROLL_FAR, height);
    return;
  }
  dashes(pen, x, data[Slot.contact + 1]!, ground, x, 0, ground + height, 'ink');
  pen.line(x, 0, ground, x, 0, ground + height, 'near');
  mark(pen, x, 0, ground + height, 26, 'accent');
  pen.label(x, 0, ground + height, 'accent', ROLL, height);
};
