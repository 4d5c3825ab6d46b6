/**
 * Straight thick pieces against a solid box along the vehicle's axes. Outside, the squared distance along a piece is
 * convex and a parabola between the places where it passes the box's face planes; inside, the depth to the nearest face
 * is the least of six linear functions, and greatest where two of them cross or at an end.
 */
import type { Vector3 } from '../model/model.ts';
import type { PlacedChain } from './placed.ts';

/** The least distance of a chain and a box, and where: made once, refilled. */
export interface BoxGap {
  /** mm; where a centreline enters the box minus its deepest point's depth and its radius. */
  gap: number;
  piece: number;
  lambda: number;
}

export function createBoxGap(): BoxGap {
  return { gap: Number.POSITIVE_INFINITY, piece: 0, lambda: 0.5 };
}

interface Bounds {
  readonly min: Vector3;
  readonly max: Vector3;
}

/** Start of the piece and vector along it. */
const _piece = new Float64Array(6);
/** Where the piece passes the face planes, in order; with both ends. */
const _passes = new Float64Array(8);
const _trial = { lambda: 0.5, value: 0.5, bestLambda: 0.5, best: 0.5 };

/** Finds the squared distance to the box at the trial's λ. */
function findSquared({ min, max }: Bounds): void {
  let squared = 0;
  for (let i = 0; i < 3; i += 1) {
    const x = _piece[i]! + _trial.lambda * _piece[3 + i]!;
    const off = Math.max(0, min[i]! - x, x - max[i]!);
    squared += off * off;
  }
  _trial.value = squared;
}

function keepLeast(): void {
  if (_trial.value >= _trial.best) return;
  _trial.best = _trial.value;
  _trial.bestLambda = _trial.lambda;
}

/** Writes the places in [0, 1] where the piece passes a face plane, both ends with them, in order; answers how many. */
function writePasses({ min, max }: Bounds): number {
  let count = 1;
  _passes[0] = 0;
  for (let i = 0; i < 3; i += 1) {
    const along = _piece[3 + i]!;
    for (let side = 0; side < 2; side += 1) {
      const lambda = ((side === 0 ? min[i]! : max[i]!) - _piece[i]!) / along;
      if (!(lambda > 0 && lambda < 1)) continue;
      let at = count;
      while (at > 1 && _passes[at - 1]! > lambda) {
        _passes[at] = _passes[at - 1]!;
        at -= 1;
      }
      _passes[at] = lambda;
      count += 1;
    }
  }
  _passes[count] = 1;
  return count + 1;
}

/** Takes the lowest place of the parabola that holds about the trial's λ, if it lies between two passes. */
function takeVertex({ min, max }: Bounds, from: number, to: number): boolean {
  const middle = (_passes[from]! + _passes[to]!) / 2;
  let slope = 0;
  let bend = 0;
  for (let i = 0; i < 3; i += 1) {
    const along = _piece[3 + i]!;
    const x = _piece[i]! + middle * along;
    const off = x < min[i]! ? x - min[i]! : x > max[i]! ? x - max[i]! : 0;
    if (off === 0) continue;
    slope += off * along;
    bend += along * along;
  }
  if (!(bend > 0)) return false;
  _trial.lambda = middle - slope / bend;
  return _trial.lambda > _passes[from]! && _trial.lambda < _passes[to]!;
}

/** Finds the least squared distance along the loaded piece. */
function findNearest(bounds: Bounds): void {
  const count = writePasses(bounds);
  _trial.best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i += 1) {
    _trial.lambda = _passes[i]!;
    findSquared(bounds);
    keepLeast();
    if (i === 0) continue;
    // Inside the box there is no parabola: then the middle tells.
    if (!takeVertex(bounds, i - 1, i)) _trial.lambda = (_passes[i - 1]! + _passes[i]!) / 2;
    findSquared(bounds);
    keepLeast();
  }
}

/** Depth below face `face` (0 to 5: low and high of x, y, z) of the point at λ: linear, negative outside. */
function depthStart({ min, max }: Bounds, face: number): number {
  const axis = face >> 1;
  return face % 2 === 0 ? _piece[axis]! - min[axis]! : max[axis]! - _piece[axis]!;
}

function depthSlope(face: number): number {
  const along = _piece[3 + (face >> 1)]!;
  return face % 2 === 0 ? along : -along;
}

/** Tries the depth to the nearest face at the trial's λ, as a negative number. */
function tryDepth(bounds: Bounds): void {
  if (!(_trial.lambda >= 0 && _trial.lambda <= 1)) return;
  let depth = Number.POSITIVE_INFINITY;
  for (let face = 0; face < 6; face += 1) {
    depth = Math.min(depth, depthStart(bounds, face) + _trial.lambda * depthSlope(face));
  }
  _trial.value = -depth;
  keepLeast();
}

/** Finds minus the depth of the loaded piece's deepest point. */
function findDeepest(bounds: Bounds): void {
  _trial.best = Number.POSITIVE_INFINITY;
  _trial.lambda = 0;
  tryDepth(bounds);
  _trial.lambda = 1;
  tryDepth(bounds);
  for (let one = 0; one < 6; one += 1) {
    for (let other = 0; other < one; other += 1) {
      const start = depthStart(bounds, other) - depthStart(bounds, one);
      _trial.lambda = start / (depthSlope(one) - depthSlope(other));
      tryDepth(bounds);
    }
  }
}

/** Fills `out` with the least distance of a placed chain to a box. Allocates nothing. */
export function boxGapInto(out: BoxGap, { points, starts, radii }: PlacedChain, box: Bounds): void {
  out.gap = Number.POSITIVE_INFINITY;
  for (let piece = 0; piece < radii.length; piece += 1) {
    const at = 3 * starts[piece]!;
    for (let i = 0; i < 3; i += 1) {
      _piece[i] = points[at + i]!;
      _piece[3 + i] = points[at + 3 + i]! - points[at + i]!;
    }
    findNearest(box);
    if (_trial.best === 0) findDeepest(box);
    else _trial.best = Math.sqrt(_trial.best);
    const gap = _trial.best - radii[piece]!;
    if (gap >= out.gap) continue;
    out.gap = gap;
    out.piece = piece;
    out.lambda = _trial.bestLambda;
  }
}

/** Writes the point of the box's surface nearest to `from`: on the nearest face where that lies inside. */
export function writeOnBox({ min, max }: Bounds, from: Float64Array, out: Float64Array): void {
  let least = Number.POSITIVE_INFINITY;
  let face = 0;
  let isInside = true;
  for (let i = 0; i < 3; i += 1) {
    const x = from[i]!;
    out[i] = Math.min(max[i]!, Math.max(min[i]!, x));
    if (x < min[i]! || x > max[i]!) isInside = false;
    if (x - min[i]! < least) {
      least = x - min[i]!;
      face = 2 * i;
    }
    if (max[i]! - x < least) {
      least = max[i]! - x;
      face = 2 * i + 1;
    }
  }
  const axis = face >> 1;
  if (isInside) out[axis] = face % 2 === 0 ? min[axis]! : max[axis]!;
}
