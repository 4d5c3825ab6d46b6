/** Two chains of straight thick pieces: every piece against every piece, in closed form. */
import type { PlacedChain } from './placed.ts';

/** The least distance of two chains' surfaces, and where. Made once, refilled; lengths mm, λ shares of the pieces. */
export interface ChainGap {
  gap: number;
  first: number;
  second: number;
  firstLambda: number;
  secondLambda: number;
}

export function createChainGap(): ChainGap {
  return {
    gap: Number.POSITIVE_INFINITY,
    first: 0,
    second: 0,
    firstLambda: 0.5,
    secondLambda: 0.5,
  };
}

/** The two pieces: vectors along them, and from the second's start to the first's; products of these. */
const _pieces = {
  ux: 0.5,
  uy: 0.5,
  uz: 0.5,
  vx: 0.5,
  vy: 0.5,
  vz: 0.5,
  wx: 0.5,
  wy: 0.5,
  wz: 0.5,
  uu: 0.5,
  vv: 0.5,
  uv: 0.5,
  uw: 0.5,
  vw: 0.5,
};
/** The pair of points last tried, and the least squared distance so far. */
const _trial = { first: 0.5, second: 0.5, squared: 0.5, bestFirst: 0.5, bestSecond: 0.5 };

function loadPieces(a: Float64Array, i: number, b: Float64Array, j: number): void {
  const p = _pieces;
  p.ux = a[i + 3]! - a[i]!;
  p.uy = a[i + 4]! - a[i + 1]!;
  p.uz = a[i + 5]! - a[i + 2]!;
  p.vx = b[j + 3]! - b[j]!;
  p.vy = b[j + 4]! - b[j + 1]!;
  p.vz = b[j + 5]! - b[j + 2]!;
  p.wx = a[i]! - b[j]!;
  p.wy = a[i + 1]! - b[j + 1]!;
  p.wz = a[i + 2]! - b[j + 2]!;
  p.uu = p.ux * p.ux + p.uy * p.uy + p.uz * p.uz;
  p.vv = p.vx * p.vx + p.vy * p.vy + p.vz * p.vz;
  p.uv = p.ux * p.vx + p.uy * p.vy + p.uz * p.vz;
  p.uw = p.ux * p.wx + p.uy * p.wy + p.uz * p.wz;
  p.vw = p.vx * p.wx + p.vy * p.wy + p.vz * p.wz;
}

function tryPoints(): void {
  const p = _pieces;
  const a = _trial.first;
  const b = _trial.second;
  const x = p.wx + a * p.ux - b * p.vx;
  const y = p.wy + a * p.uy - b * p.vy;
  const z = p.wz + a * p.uz - b * p.vz;
  const squared = x * x + y * y + z * z;
  if (squared >= _trial.squared) return;
  _trial.squared = squared;
  _trial.bestFirst = a;
  _trial.bestSecond = b;
}

/** Tries an end of the first piece against its foot on the second. */
function tryFirstEnd(end: 0 | 1): void {
  const { vv, vw, uv } = _pieces;
  _trial.first = end;
  _trial.second = vv > 0 ? Math.min(1, Math.max(0, (vw + end * uv) / vv)) : 0;
  tryPoints();
}

/** Tries an end of the second piece against its foot on the first. */
function trySecondEnd(end: 0 | 1): void {
  const { uu, uw, uv } = _pieces;
  _trial.second = end;
  _trial.first = uu > 0 ? Math.min(1, Math.max(0, (end * uv - uw) / uu)) : 0;
  tryPoints();
}

/**
 * Finds the least distance of the loaded pieces: at the common perpendicular where that meets both, else at one of the
 * four ends. Nearly parallel pieces lose nothing by it, since an end is as near as any other point then.
 */
function findNearest(): void {
  const { uu, vv, uv, uw, vw } = _pieces;
  _trial.squared = Number.POSITIVE_INFINITY;
  const det = uu * vv - uv * uv;
  const a = (uv * vw - vv * uw) / det;
  const b = (uu * vw - uv * uw) / det;
  if (a > 0 && a < 1 && b > 0 && b < 1) {
    _trial.first = a;
    _trial.second = b;
    tryPoints();
  }
  tryFirstEnd(0);
  tryFirstEnd(1);
  trySecondEnd(0);
  trySecondEnd(1);
}

/** True when balls about both pieces are farther apart than the least so far. */
function isFar(room: number): boolean {
  const p = _pieces;
  const x = p.wx + (p.ux - p.vx) / 2;
  const y = p.wy + (p.uy - p.vy) / 2;
  const z = p.wz + (p.uz - p.vz) / 2;
  const reach = room + (Math.sqrt(p.uu) + Math.sqrt(p.vv)) / 2;
  return reach <= 0 || x * x + y * y + z * z >= reach * reach;
}

/** Fills `out` with the least distance of two placed chains: between centrelines, less both radii. Allocates nothing. */
export function chainGapInto(out: ChainGap, a: PlacedChain, b: PlacedChain): void {
  out.gap = Number.POSITIVE_INFINITY;
  for (let i = 0; i < a.radii.length; i += 1) {
    for (let j = 0; j < b.radii.length; j += 1) {
      const thick = a.radii[i]! + b.radii[j]!;
      loadPieces(a.points, 3 * a.starts[i]!, b.points, 3 * b.starts[j]!);
      if (isFar(out.gap + thick)) continue;
      findNearest();
      const gap = Math.sqrt(_trial.squared) - thick;
      if (gap >= out.gap) continue;
      out.gap = gap;
      out.first = i;
      out.second = j;
      out.firstLambda = _trial.bestFirst;
      out.secondLambda = _trial.bestSecond;
    }
  }
}

/** Writes the point at a share of a chain's piece. */
export function writePointAt(
  { points, starts }: PlacedChain,
  piece: number,
  lambda: number,
  out: Float64Array,
): void {
  const at = 3 * starts[piece]!;
  for (let i = 0; i < 3; i += 1) {
    out[i] = points[at + i]! + lambda * (points[at + 3 + i]! - points[at + i]!);
  }
}
