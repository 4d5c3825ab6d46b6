/**
 * Where wheel and tyre are cut open: a sector about the hub axis, turned so that the part of the tie rod inside the rim is
 * seen from where the eye is, in every pose. A sight line from the rod to the eye must leave the rim inside the sector.
 * Beyond that the lip beside the rod and the tyre on its ground are left standing as far as can be. Pure numbers in the
 * wheel's axes (z outboard along the hub axis), mm and rad; nothing is allocated.
 */

import { WHEEL } from '../proportions.ts';

/** What stands between the rod and the eye: a ring, and the spokes on its plane. */
export interface Rim {
  /** Least radius of the barrel and greatest of the tyre. */
  readonly inner: number;
  readonly outer: number;
  /** Half the width of rim and tyre together. */
  readonly half: number;
  /** s from which on spokes and brake disc stand, and the radius outside which they do. */
  readonly face: number;
  readonly pad: number;
}

/** Angle that the sector spans: so many spokes with the room between them. */
export const OPENING: number = (3 * 2 * Math.PI) / WHEEL.spokes;

/** Room left at a sight line's sides: half the thickness of what is looked at, mm, and some air, rad. */
const HALF_ROD = 16;
const AIR = 0.05;
/** Parts a stretch of the rod is looked at in, and steps along a sight line. */
const PARTS = 6;
const STEPS = 20;
/** The opening stays this far from the way down to the ground where it can, rad. */
const FROM_GROUND = 0.06;

type Flat = ArrayLike<number>;

function wrapped(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

/** Whether a point stands where wheel and tyre may be. */
export function isInRim(rim: Rim, x: number, y: number, s: number): boolean {
  const radius = Math.sqrt(x * x + y * y);
  if (radius > rim.outer || Math.abs(s) > rim.half) return false;
  return radius >= rim.inner || (s >= rim.face && radius >= rim.pad);
}

/** Angles that must be open, about a middle one. */
const _need = { about: 0, least: 0, most: 0, isSet: false };

function mustOpen(x: number, y: number): void {
  const angle = Math.atan2(y, x);
  const aside = Math.asin(Math.min(1, HALF_ROD / Math.sqrt(x * x + y * y)));
  if (!_need.isSet) {
    _need.isSet = true;
    _need.about = angle;
    _need.least = -aside;
    _need.most = aside;
    return;
  }
  const from = wrapped(angle - _need.about);
  _need.least = Math.min(_need.least, from - aside);
  _need.most = Math.max(_need.most, from + aside);
}

/** Walks from a point of the rod towards the eye, as long as there may be wheel or tyre. */
function look(rim: Rim, x: number, y: number, s: number, eye: Flat): void {
  const dx = eye[0]! - x;
  const dy = eye[1]! - y;
  const ds = eye[2]! - s;
  const far = 2 * rim.outer;
  const reach = Math.min(1, far / Math.sqrt(dx * dx + dy * dy + ds * ds));
  for (let i = 0; i <= STEPS; i += 1) {
    const t = (reach * i) / STEPS;
    const px = x + t * dx;
    const py = y + t * dy;
    if (isInRim(rim, px, py, s + t * ds)) mustOpen(px, py);
  }
}

/** Whether an angle lies in the opening, widened by `room` at both ends. */
export function isOpen(start: number, angle: number, room = 0): boolean {
  return Math.abs(wrapped(angle - start - OPENING / 2)) < OPENING / 2 + room;
}

/**
 * The angle the opening starts at. `rod` is the rod's centreline, `count` points of three numbers, and `eye` the eye, both
 * in the wheel's axes. `lip` is the angle of the wheel's point nearest to the rod, `ground` the way down.
 */
export function openingStart(
  rim: Rim,
  rod: Flat,
  count: number,
  eye: Flat,
  lip: number,
  ground: number,
): number {
  _need.isSet = false;
  for (let at = 3; at < 3 * count; at += 3) {
    for (let part = 0; part <= PARTS; part += 1) {
      const t = part / PARTS;
      const x = rod[at - 3]! + t * (rod[at]! - rod[at - 3]!);
      const y = rod[at - 2]! + t * (rod[at + 1]! - rod[at - 2]!);
      const s = rod[at - 1]! + t * (rod[at + 2]! - rod[at - 1]!);
      if (Math.abs(s) <= rim.half && x * x + y * y < rim.inner * rim.inner) look(rim, x, y, s, eye);
    }
  }
  // Seen through the open side of the wheel: all that is wanted is the section of the lip.
  if (!_need.isSet) {
    _need.about = lip + 4 * AIR;
    _need.least = 0;
    _need.most = 0;
  }
  const least = _need.about + _need.least - AIR;
  const most = _need.about + _need.most + AIR;
  if (most - least >= OPENING) return (least + most - OPENING) / 2;
  const worth = (start: number): number =>
    (isOpen(start, ground, FROM_GROUND) ? 0 : 2) + (isOpen(start, lip) ? 0 : 1);
  const before = most - OPENING;
  return worth(before) > worth(least) ? before : least;
}
