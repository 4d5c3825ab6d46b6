/**
 * Least distance of a triangle to a section of revolution. The distance of a point depends only on its place s along the
 * axis and its distance ρ from it, and changes by no more than the point moves. A triangle is parted at its longest side
 * until a lower bound of each part reaches the least value seen at a point: s is linear over a part and ρ is convex and
 * nearly linear, so that the part's image in the (s, ρ) plane is its corners' triangle, lowered by at most a small sag.
 */
import { foot, type Outline, signedApart } from './outline.ts';
import { boundOfBox, boundOfTriangle } from './outlineBounds.ts';

/** How far from the least value a search may end, mm: half of what is promised. */
export const CLOSE = 0.005;

/** Most parts looked at for one triangle. Beyond it, only met deep inside a solid, the value is a little less close. */
const MOST_PARTS = 4000;

/** The axis in the mesh's own axes: a point, a unit direction. */
export const axle = new Float64Array(6);

/** What was found: the least signed distance, the mesh's point, and the section's place. */
export const found = { apart: 0.5, x: 0.5, y: 0.5, z: 0.5, s: 0.5, radius: 0.5 };

/** Place along the axis and distance from it, of the point last asked about. */
const spot = { s: 0.5, radius: 0.5 };

function locate(x: number, y: number, z: number): void {
  const px = x - axle[0]!;
  const py = y - axle[1]!;
  const pz = z - axle[2]!;
  const s = px * axle[3]! + py * axle[4]! + pz * axle[5]!;
  const rx = px - s * axle[3]!;
  const ry = py - s * axle[4]!;
  const rz = pz - s * axle[5]!;
  spot.s = s;
  spot.radius = Math.sqrt(rx * rx + ry * ry + rz * rz);
}

/** Looks at one point of the mesh. */
function tryPoint(outline: Outline, x: number, y: number, z: number): void {
  locate(x, y, z);
  const apart = signedApart(outline, spot.s, spot.radius);
  if (apart >= found.apart) return;
  found.apart = apart;
  found.x = x;
  found.y = y;
  found.z = z;
  found.s = foot.s;
  found.radius = foot.radius;
}

/** Finds the section's place nearest to one point of the mesh. */
export function nearestOf(outline: Outline, x: number, y: number, z: number): void {
  found.apart = Number.POSITIVE_INFINITY;
  tryPoint(outline, x, y, z);
}

/** Parts waiting to be looked at, nine coordinates each, one on top of the other. */
const _stack = new Float64Array(9 * 512);
const _image = new Float64Array(6);
/** Of the part on top: squared length of its longest side, and which it is. */
const _longest = { squared: 0.5, side: 0 };

function findLongest(at: number): void {
  _longest.squared = -1;
  for (let i = 0; i < 9; i += 3) {
    const next = i === 6 ? 0 : i + 3;
    const x = _stack[at + next]! - _stack[at + i]!;
    const y = _stack[at + next + 1]! - _stack[at + i + 1]!;
    const z = _stack[at + next + 2]! - _stack[at + i + 2]!;
    const squared = x * x + y * y + z * z;
    if (squared > _longest.squared) {
      _longest.squared = squared;
      _longest.side = i;
    }
  }
}

/** A lower bound of the signed distance over the part at `at`; one of `enough` is not made better. */
function boundOf(outline: Outline, at: number, enough: number): number {
  if (outline.floor >= enough) return outline.floor;
  let sLow = Number.POSITIVE_INFINITY;
  let sHigh = Number.NEGATIVE_INFINITY;
  let high = 0;
  for (let i = 0; i < 3; i += 1) {
    locate(_stack[at + 3 * i]!, _stack[at + 3 * i + 1]!, _stack[at + 3 * i + 2]!);
    _image[2 * i] = spot.s;
    _image[2 * i + 1] = spot.radius;
    sLow = Math.min(sLow, spot.s);
    sHigh = Math.max(sHigh, spot.s);
    high = Math.max(high, spot.radius);
  }
  findLongest(at);
  const long = Math.sqrt(_longest.squared);
  const rough = boundOfBox(outline, sLow, sHigh, Math.max(0, high - long), high, enough);
  if (rough >= enough) return rough;
  const low = leastRadius(at);
  const fine = boundOfBox(outline, sLow, sHigh, low, high, enough);
  if (fine >= enough) return fine;
  // ρ bends by 1/ρ at most; over a triangle of longest side l that is a sag of no more than l²/6ρ (a circle of radius
  // l/√3 holds it), and never more than the side itself.
  const sag = low > 0 ? Math.min(long, _longest.squared / (6 * low)) : long;
  return Math.max(fine, boundOfTriangle(outline, _image) - sag);
}

/** Two directions across the axis, for the part's shadow on a plane normal to it. */
const _across = new Float64Array(6);
const _shadow = new Float64Array(6);

/** Finds directions across the axis; to be called when `axle` was filled. */
export function readyAxle(): void {
  const ax = axle[3]!;
  const ay = axle[4]!;
  const az = axle[5]!;
  const isUpright = Math.abs(az) > 0.7;
  const size = isUpright ? Math.hypot(ay, az) : Math.hypot(ax, ay);
  const ux = isUpright ? 0 : -ay / size;
  const uy = isUpright ? -az / size : ax / size;
  const uz = isUpright ? ay / size : 0;
  _across[0] = ux;
  _across[1] = uy;
  _across[2] = uz;
  _across[3] = ay * uz - az * uy;
  _across[4] = az * ux - ax * uz;
  _across[5] = ax * uy - ay * ux;
}

/** Least distance from the axis over the part at `at`: that of its shadow on a plane across the axis. */
function leastRadius(at: number): number {
  for (let i = 0; i < 3; i += 1) {
    const x = _stack[at + 3 * i]! - axle[0]!;
    const y = _stack[at + 3 * i + 1]! - axle[1]!;
    const z = _stack[at + 3 * i + 2]! - axle[2]!;
    _shadow[2 * i] = x * _across[0]! + y * _across[1]! + z * _across[2]!;
    _shadow[2 * i + 1] = x * _across[3]! + y * _across[4]! + z * _across[5]!;
  }
  let squared = Number.POSITIVE_INFINITY;
  let left = 0;
  for (let i = 0; i < 6; i += 2) {
    const next = i === 4 ? 0 : i + 2;
    const x = _shadow[i]!;
    const y = _shadow[i + 1]!;
    const ex = _shadow[next]! - x;
    const ey = _shadow[next + 1]! - y;
    if (x * ey - y * ex > 0) left += 1;
    const t = Math.min(1, Math.max(0, -(x * ex + y * ey) / (ex * ex + ey * ey || 1)));
    const px = x + t * ex;
    const py = y + t * ey;
    squared = Math.min(squared, px * px + py * py);
  }
  return left === 0 || left === 3 ? 0 : Math.sqrt(squared);
}

/** Parts the triangle at `at` at its longest side, in place and on top of the stack; looks at the middle of that side. */
function part(outline: Outline, at: number): void {
  const a = at + _longest.side;
  const b = at + (_longest.side === 6 ? 0 : _longest.side + 3);
  const x = (_stack[a]! + _stack[b]!) / 2;
  const y = (_stack[a + 1]! + _stack[b + 1]!) / 2;
  const z = (_stack[a + 2]! + _stack[b + 2]!) / 2;
  tryPoint(outline, x, y, z);
  _stack.copyWithin(at + 9, at, at + 9);
  _stack[b] = x;
  _stack[b + 1] = y;
  _stack[b + 2] = z;
  _stack[a + 9] = x;
  _stack[a + 10] = y;
  _stack[a + 11] = z;
}

/** A lower bound of the triangle's signed distance to the section; one of `enough` is not made better. */
export function boundTriangle(outline: Outline, triangle: Float64Array, enough: number): number {
  _stack.set(triangle);
  return boundOf(outline, 0, enough);
}

/** Lets `found` take the triangle's least signed distance to the section, if it is less by more than what is promised. */
export function searchTriangle(outline: Outline, triangle: Float64Array): void {
  _stack.set(triangle);
  if (boundOf(outline, 0, found.apart - CLOSE) >= found.apart - CLOSE) return;
  for (let i = 0; i < 9; i += 3)
    tryPoint(outline, triangle[i]!, triangle[i + 1]!, triangle[i + 2]!);
  let count = 1;
  for (let looked = 0; count > 0 && looked < MOST_PARTS; looked += 1) {
    const at = 9 * (count - 1);
    const enough = found.apart - CLOSE;
    if (boundOf(outline, at, enough) >= enough || 9 * (count + 1) > _stack.length) {
      count -= 1;
    } else {
      part(outline, at);
      count += 1;
    }
  }
}
