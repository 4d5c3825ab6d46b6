/**
 * The signed distance to the swept tyre: at a point, the least over all poses of the distance to the posed tyre, found
 * by branch and bound over the tree of poses.
 *
 * A posed tyre's distance is that to its section in the point's meridian plane, d = h(s, ρ). While the pose moves, the
 * point moves in the tyre's axes by Δ. Where the section is convex, h lies above its tangent, and only ρ bends:
 *   d' ≥ d + n·Δ − max(0, −h_ρ)·|Δ|²/(2ρ),
 * and always d' ≥ d − |Δ|. Both bounds hold over a cell with Δ linear in its place, less the second order of a turn and
 * what the motion strays; the better of the two is taken. Below a leaf the linear motion is followed into ever smaller
 * cells until nothing lower than `tolerance` is left.
 */
import { tyreSections } from '../clearance/section.ts';
import type { Corner } from '../corner.ts';
import { Cell } from './cell.ts';
import { growPoses } from './poses.ts';
import { createProfile } from './profile.ts';
import { type SweptRange, sweptRange } from './range.ts';
import { look, lowerBound, near, point, type Sweep, seen } from './sight.ts';

/** The answer at a point, refilled by every search. */
export interface SweptDistance {
  /** mm; negative inside the swept space. */
  distance: number;
  /** Its gradient: the normal of the posed tyre that comes nearest. */
  x: number;
  y: number;
  z: number;
  /** The pose that comes nearest, mm. */
  travel: number;
  rack: number;
}

export interface SweptField extends Sweep {
  readonly found: SweptDistance;
  /** Where the last answer was found: tried first for the next point, which is mostly near it. */
  readonly hint: { cell: number; a: number; b: number };
}

/**
 * Makes the field of a corner's tyre over a range, a little at a time, true to `allowed` mm besides the tolerance of
 * each search; null where no pose of the range can be reached.
 */
export function* growSweptField(
  corner: Corner,
  range: SweptRange,
  allowed: number,
): Generator<undefined, SweptField | null> {
  const [section] = tyreSections(corner.model);
  if (section === undefined) return null;
  const profile = createProfile(section.line);
  const poses = yield* growPoses(corner, sweptRange(corner.model, range), profile.reach, allowed);
  if (poses.root < 0) return null;
  return {
    profile,
    poses,
    found: { distance: 0.5, x: 0.5, y: 0.5, z: 0.5, travel: 0.5, rack: 0.5 },
    hint: { cell: -1, a: 0.5, b: 0.5 },
  };
}

/** The same at once. */
export function createSweptField(
  corner: Corner,
  range: SweptRange,
  allowed: number,
): SweptField | null {
  const growing = growSweptField(corner, range, allowed);
  for (;;) {
    const step = growing.next();
    if (step.done) return step.value;
  }
}

const MOST_OPEN = 512;
/** Cells still to be looked at: number in the tree, place and half-sizes as parts of that cell's, lower bound. */
const _cell = new Int32Array(MOST_OPEN);
const _open = new Float64Array(5 * MOST_OPEN);

function keep(field: SweptField, cell: number, a: number, b: number): void {
  const { found, hint } = field;
  const { cells } = field.poses;
  const at = cell * Cell.size;
  found.distance = near.distance;
  found.x = seen.x;
  found.y = seen.y;
  found.z = seen.z;
  found.travel = cells[at + Cell.travel]! + a * cells[at + Cell.halfTravel]!;
  found.rack = cells[at + Cell.rack]! + b * cells[at + Cell.halfRack]!;
  hint.cell = cell;
  hint.a = a;
  hint.b = b;
}

function open(
  at: number,
  cell: number,
  a: number,
  b: number,
  halfA: number,
  halfB: number,
  bound: number,
): void {
  _cell[at] = cell;
  const to = 5 * at;
  _open[to] = a;
  _open[to + 1] = b;
  _open[to + 2] = halfA;
  _open[to + 3] = halfB;
  _open[to + 4] = bound;
}

function keepIfNearer(field: SweptField, cell: number, a: number, b: number): void {
  if (near.distance < field.found.distance) keep(field, cell, a, b);
}

/** Looks at a part of a cell from its middle and puts it among the open ones. */
function add(
  field: SweptField,
  to: number,
  cell: number,
  a: number,
  b: number,
  halfA: number,
  halfB: number,
): void {
  look(field, cell, a, b);
  keepIfNearer(field, cell, a, b);
  open(to, cell, a, b, halfA, halfB, lowerBound(field, cell, halfA, halfB));
}

/** Takes the open cell at `at` apart; its halves take its place, the more promising last. Returns how many are open. */
function split(field: SweptField, at: number): number {
  const { firsts, seconds, cells } = field.poses;
  const from = 5 * at;
  const cell = _cell[at]!;
  const a = _open[from]!;
  const b = _open[from + 1]!;
  const halfA = _open[from + 2]!;
  const halfB = _open[from + 3]!;
  if (firsts[cell]! >= 0) {
    add(field, at, firsts[cell]!, 0, 0, 1, 1);
    add(field, at + 1, seconds[cell]!, 0, 0, 1, 1);
  } else {
    const of = cell * Cell.size;
    const { reach } = field.profile;
    const movesA = halfA * (cells[of + Cell.speedA]! + reach * cells[of + Cell.turnA]!);
    const movesB = halfB * (cells[of + Cell.speedB]! + reach * cells[of + Cell.turnB]!);
    const alongA = movesA >= movesB;
    const da = alongA ? halfA / 2 : 0;
    const db = alongA ? 0 : halfB / 2;
    add(field, at, cell, a - da, b - db, halfA - da, halfB - db);
    add(field, at + 1, cell, a + da, b + db, halfA - da, halfB - db);
  }
  if (_open[from + 4]! < _open[from + 9]!) swap(at);
  return at + 2;
}

/** Exchanges the open cells at `at` and after it. */
function swap(at: number): void {
  const cell = _cell[at]!;
  _cell[at] = _cell[at + 1]!;
  _cell[at + 1] = cell;
  for (let i = 5 * at; i < 5 * at + 5; i += 1) {
    const number = _open[i]!;
    _open[i] = _open[i + 5]!;
    _open[i + 5] = number;
  }
}

/**
 * Looks for the pose that comes nearest to (x, y, z), into `field.found`, and stops as soon as one comes nearer than
 * `enough`. The distance found is never below the true one less the leaves' stray, and at most `tolerance` above it,
 * where it is below `ceiling`; anything from `ceiling` up is only known to be no less.
 */
function search(field: SweptField, tolerance: number, enough: number, ceiling: number): void {
  const { root } = field.poses;
  const { found, hint } = field;
  found.distance = Number.POSITIVE_INFINITY;
  if (hint.cell >= 0) {
    look(field, hint.cell, hint.a, hint.b);
    keep(field, hint.cell, hint.a, hint.b);
    if (found.distance < enough) return;
  }
  let count = 1;
  add(field, 0, root, 0, 0, 1, 1);
  while (count > 0) {
    if (found.distance < enough) return;
    count -= 1;
    if (_open[5 * count + 4]! < Math.min(found.distance, ceiling) - tolerance)
      count = split(field, count);
  }
}

function stand(x: number, y: number, z: number): void {
  point.x = x;
  point.y = y;
  point.z = z;
}

/** How much less than the deepest place in a section, mm, is deep enough to look no further. */
const DEEP_ENOUGH = 0.5;

/**
 * Writes the swept distance at a point into `field.found`, at most `tolerance` mm above the true one. In the middle of a
 * section, where no pose comes much nearer, the first pose that says so is taken.
 */
export function sweptDistance(
  field: SweptField,
  x: number,
  y: number,
  z: number,
  tolerance: number,
): void {
  stand(x, y, z);
  search(field, tolerance, DEEP_ENOUGH - field.profile.depth, Number.POSITIVE_INFINITY);
}

/** True where the point lies within `margin` of a posed tyre, decided to `tolerance` mm. */
export function isSwept(
  field: SweptField,
  x: number,
  y: number,
  z: number,
  margin: number,
  tolerance: number,
): boolean {
  stand(x, y, z);
  search(field, tolerance, margin, margin);
  return field.found.distance < margin;
}
