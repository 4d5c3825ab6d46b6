/**
 * Where a margin first is 0 along a line of poses. A cell of the line over which the margin is proven positive is passed;
 * any other is halved, down to a few hundredths of a millimetre, so that no dip is stepped over.
 */
import type { Cell } from '../certify/cells.ts';
import type { Element } from '../certify/element.ts';
import {
  halfOf,
  halvesInOrder,
  type Line,
  middleOf,
  SAMPLED_HALF,
  solveAt,
  wholeLine,
} from './line.ts';

/** One margin watched along a line. */
export interface Watch {
  /** The margin of the pose in `line.pose`, freshly solved. */
  readonly value: () => number;
  /** What a cell as a whole is made of. */
  readonly elements: readonly Element[];
  /** Those of the elements for which the margin may be 0 or less somewhere in the cell. */
  readonly open: (cell: Cell, elements: readonly Element[]) => readonly Element[];
}

export interface Crossing {
  /** null where the margin stays positive. */
  readonly at: number | null;
  /** Up to where that is proven: where the first cell begins that could only be sampled. */
  readonly provenTo: number;
}

/** Half-size, mm, of cells in which the root is looked for by the values at their ends. */
const ROOTED_HALF = 0.02;
/** Half-size, mm, below which an enclosed cell is not halved any more: what might dip within is some 1e-4 deep at most. */
const FINEST_HALF = 5e-5;
/** A margin below this is met. */
export const MET = 1e-6;
const ROOT_TOLERANCE = 1e-8;
const MOST_STEPS = 80;

/** The margin at a place of the line; out of reach that of the last reachable pose. */
export function valueAt(line: Line, watch: Watch, at: number): number {
  solveAt(line, at);
  return watch.value();
}

/** The place between `inside`, where the margin is positive, and `outside`, where it is not: regula falsi, Illinois. */
export function rootBetween(line: Line, watch: Watch, inside: number, outside: number): number {
  let a = inside;
  let b = outside;
  let va = valueAt(line, watch, a);
  let vb = valueAt(line, watch, b);
  for (let step = 0; step < MOST_STEPS && Math.abs(b - a) > ROOT_TOLERANCE; step += 1) {
    if (vb === 0) return b;
    const isSlow = step > MOST_STEPS / 4;
    const middle = isSlow ? (a + b) / 2 : b - (vb * (b - a)) / (vb - va);
    const value = valueAt(line, watch, middle);
    if (value > 0) {
      a = middle;
      va = value;
      vb /= 2;
    } else {
      b = middle;
      vb = value;
      va /= 2;
    }
    if (Math.abs(value) < 1e-12) return middle;
  }
  return b;
}

/** The stretch of a line that is searched. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

interface Node {
  readonly cell: Cell;
  readonly elements: readonly Element[];
}

/** A cell's ends in the order of the line, cut to the stretch; null where it lies outside. */
function endsOf(line: Line, cell: Cell, { from, to }: Stretch): readonly [number, number] | null {
  const { sign } = line;
  const middle = middleOf(line, cell);
  const half = halfOf(line, cell);
  const near = sign * Math.max(sign * (middle - sign * half), sign * from);
  const far = sign * Math.min(sign * (middle + sign * half), sign * to);
  return sign * (far - near) > 0 ? [near, far] : null;
}

/** The first place in a small cell where the margin is seen to be met, by its ends and its middle. */
function metWithin(line: Line, watch: Watch, near: number, far: number): number | null {
  let last = near;
  for (const at of [(near + far) / 2, far]) {
    if (valueAt(line, watch, at) <= 0) return rootBetween(line, watch, last, at);
    last = at;
  }
  return null;
}

/**
 * Looks at a small cell that was not passed: where the margin is met in it; 'passed' when it is to be taken as positive;
 * 'halve' when it is to be looked at more closely.
 */
function judge(
  line: Line,
  watch: Watch,
  cell: Cell,
  [near, far]: readonly [number, number],
): number | 'passed' | 'halve' {
  const at = metWithin(line, watch, near, far);
  if (at !== null) return at;
  const half = halfOf(line, cell);
  if (cell.motion === null) return 'passed';
  if (half > 2 * FINEST_HALF) return 'halve';
  const grazing = (near + far) / 2;
  return valueAt(line, watch, grazing) < MET ? grazing : 'passed';
}

/** The first place of the stretch at which the margin, positive at its start, is 0. */
export function firstCrossing(line: Line, watch: Watch, stretch: Stretch): Crossing {
  let provenTo = stretch.to;
  const open: Node[] = [{ cell: wholeLine(line), elements: watch.elements }];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    const { cell } = node;
    const ends = endsOf(line, cell, stretch);
    if (ends === null) continue;
    const elements = watch.open(cell, node.elements);
    if (elements.length === 0) continue;
    const isEnclosed = cell.motion !== null;
    const isSmall = halfOf(line, cell) <= (isEnclosed ? ROOTED_HALF : SAMPLED_HALF);
    const judged = isSmall ? judge(line, watch, cell, ends) : 'halve';
    if (typeof judged === 'number') return { at: judged, provenTo };
    if (judged === 'passed') provenTo = isEnclosed ? provenTo : nearer(line, provenTo, ends[0]);
    else {
      const [first, second] = halvesInOrder(line, cell);
      open.push({ cell: second, elements }, { cell: first, elements });
    }
  }
  return { at: null, provenTo };
}

/** The one of two places that the line comes to first. */
export function nearer({ sign }: Line, a: number, b: number): number {
  return sign * (a - b) < 0 ? a : b;
}

/** Step at which a margin is looked at for coming back, mm. */
const BACK_STEP = 2;

/** The first sampled place after `from` at which a margin that is not positive is so again, root-found; null: nowhere. */
export function comesBack(line: Line, watch: Watch, { from, to }: Stretch): number | null {
  const { sign } = line;
  let last = from;
  while (sign * (to - last) > 0) {
    const next = sign * Math.min(sign * (last + sign * BACK_STEP), sign * to);
    if (valueAt(line, watch, next) > MET) return rootBetween(line, watch, next, last);
    last = next;
  }
  return null;
}
