/**
 * The corner where closed forms may change sign. With the arms' angles θ, φ and a spin ψ of the knuckle about its
 * steering axis as unknowns it is three equations,
 *   |UB − LB| = span,   |TO − TI| = rod,   W_z = height,
 * regular wherever the corner itself is: a stretched pair of links, at which a closed-form step has no room left, is
 * passed like any other pose. A pose is singular where the determinant of their 3 × 3 derivative is 0.
 */
import { circlePoint, circleVelocity } from './circle.ts';
import { angleRates } from './place.ts';
import { Fixed, Slot } from './slots.ts';
import { carryPoint } from './triad.ts';

/** Residual of every equation that counts as solved, mm, and the one accepted where rounding stops the progress. */
const TOLERANCE = 1e-11;
const ROUNDING = 2e-10;
const MOST_ITERATIONS = 12;
/** A solution further than this from where it started is another pose, rad. */
const FARTHEST = 0.25;

const _residual = new Float64Array(3);
/** The 3 × 3 derivative, by rows; columns θ, φ, ψ. */
const _j = new Float64Array(9);
const _step = new Float64Array(3);
/** Tangents of the lower and the upper circle, and an angular velocity. */
const _v = new Float64Array(9);
const LOWER = 0;
const UPPER = 3;
const OMEGA = 6;

/** Places both ball joints for the arms' angles. */
export function placeArms(
  fixed: Float64Array,
  pose: Float64Array,
  theta: number,
  phi: number,
): void {
  pose[Slot.lowerAngle] = theta;
  pose[Slot.lowerCos] = Math.cos(theta);
  pose[Slot.lowerSin] = Math.sin(theta);
  pose[Slot.upperCos] = Math.cos(phi);
  pose[Slot.upperSin] = Math.sin(phi);
  circlePoint(fixed, Fixed.lowerCircle, pose, Slot.lowerCos, Slot.lower);
  circlePoint(fixed, Fixed.upperCircle, pose, Slot.upperCos, Slot.upper);
}

/**
 * Turns the knuckle's frame with its steering axis, then by ψ about it: k = unit(UB − LB), p = unit of the last m made
 * normal to k, m = cos ψ·p + sin ψ·(k × p), n = k × m. Returns |UB − LB|.
 */
export function turnFrame(pose: Float64Array, psi: number): number {
  const f = Slot.frame;
  const x = pose[Slot.upper]! - pose[Slot.lower]!;
  const y = pose[Slot.upper + 1]! - pose[Slot.lower + 1]!;
  const z = pose[Slot.upper + 2]! - pose[Slot.lower + 2]!;
  const span = Math.sqrt(x * x + y * y + z * z);
  const kx = x / span;
  const ky = y / span;
  const kz = z / span;
  const along = kx * pose[f + 3]! + ky * pose[f + 4]! + kz * pose[f + 5]!;
  const px = pose[f + 3]! - along * kx;
  const py = pose[f + 4]! - along * ky;
  const pz = pose[f + 5]! - along * kz;
  const size = Math.sqrt(px * px + py * py + pz * pz);
  const cos = Math.cos(psi) / size;
  const sin = Math.sin(psi) / size;
  const mx = cos * px + sin * (ky * pz - kz * py);
  const my = cos * py + sin * (kz * px - kx * pz);
  const mz = cos * pz + sin * (kx * py - ky * px);
  pose[f] = kx;
  pose[f + 1] = ky;
  pose[f + 2] = kz;
  pose[f + 3] = mx;
  pose[f + 4] = my;
  pose[f + 5] = mz;
  pose[f + 6] = ky * mz - kz * my;
  pose[f + 7] = kz * mx - kx * mz;
  pose[f + 8] = kx * my - ky * mx;
  return span;
}

/** Places TO and W from the frame and writes the residuals. Returns |TO − TI|. */
function measureResiduals(
  fixed: Float64Array,
  pose: Float64Array,
  span: number,
  target: number,
): number {
  const f = Slot.frame;
  const along = fixed[Fixed.outerAlong]!;
  const aside = fixed[Fixed.outerAside]!;
  let squared = 0;
  for (let i = 0; i < 3; i += 1) {
    const outer = pose[Slot.lower + i]! + along * pose[f + i]! + aside * pose[f + 3 + i]!;
    pose[Slot.outer + i] = outer;
    squared += (outer - pose[Slot.inner + i]!) * (outer - pose[Slot.inner + i]!);
  }
  carryPoint(fixed, Fixed.centreInFrame, pose, Slot.lower, f, Slot.centre);
  const rod = Math.sqrt(squared);
  _residual[0] = span - 1 / fixed[Fixed.spanInverse]!;
  _residual[1] = rod - Math.sqrt(fixed[Fixed.rodSquared]!);
  _residual[2] = pose[Slot.centre + 2]! - target;
  return rod;
}

/** ω = k × k′ into `_v` when one end of the span moves by sign·(the tangent at `end`). */
function turnBy(pose: Float64Array, end: number, factor: number): void {
  const f = Slot.frame;
  const x = factor * _v[end]!;
  const y = factor * _v[end + 1]!;
  const z = factor * _v[end + 2]!;
  _v[OMEGA] = pose[f + 1]! * z - pose[f + 2]! * y;
  _v[OMEGA + 1] = pose[f + 2]! * x - pose[f]! * z;
  _v[OMEGA + 2] = pose[f]! * y - pose[f + 1]! * x;
}

/** Rod and height rows of one column: LB moves by `share` of the lower tangent, the frame turns by ω. */
function writeColumn(pose: Float64Array, rod: number, share: number, column: number): void {
  const ox = _v[OMEGA]!;
  const oy = _v[OMEGA + 1]!;
  const oz = _v[OMEGA + 2]!;
  const vx = share * _v[LOWER]!;
  const vy = share * _v[LOWER + 1]!;
  const vz = share * _v[LOWER + 2]!;
  const bx = pose[Slot.outer]! - pose[Slot.lower]!;
  const by = pose[Slot.outer + 1]! - pose[Slot.lower + 1]!;
  const bz = pose[Slot.outer + 2]! - pose[Slot.lower + 2]!;
  const stretch =
    (pose[Slot.outer]! - pose[Slot.inner]!) * (vx + oy * bz - oz * by) +
    (pose[Slot.outer + 1]! - pose[Slot.inner + 1]!) * (vy + oz * bx - ox * bz) +
    (pose[Slot.outer + 2]! - pose[Slot.inner + 2]!) * (vz + ox * by - oy * bx);
  _j[3 + column] = stretch / rod;
  _j[6 + column] =
    vz +
    ox * (pose[Slot.centre + 1]! - pose[Slot.lower + 1]!) -
    oy * (pose[Slot.centre]! - pose[Slot.lower]!);
}

function along(pose: Float64Array, end: number): number {
  const f = Slot.frame;
  return pose[f]! * _v[end]! + pose[f + 1]! * _v[end + 1]! + pose[f + 2]! * _v[end + 2]!;
}

/** Writes the derivative of the three residuals; returns its determinant. */
function linearise(fixed: Float64Array, pose: Float64Array, span: number, rod: number): number {
  circleVelocity(fixed, Fixed.lowerCircle, pose, Slot.lowerCos, _v, LOWER);
  circleVelocity(fixed, Fixed.upperCircle, pose, Slot.upperCos, _v, UPPER);
  _j[0] = -along(pose, LOWER);
  _j[1] = along(pose, UPPER);
  _j[2] = 0;
  turnBy(pose, LOWER, -1 / span);
  writeColumn(pose, rod, 1, 0);
  turnBy(pose, UPPER, 1 / span);
  writeColumn(pose, rod, 0, 1);
  for (let i = 0; i < 3; i += 1) _v[OMEGA + i] = pose[Slot.frame + i]!;
  writeColumn(pose, rod, 0, 2);
  return (
    _j[0]! * (_j[4]! * _j[8]! - _j[5]! * _j[7]!) - _j[1]! * (_j[3]! * _j[8]! - _j[5]! * _j[6]!)
  );
}

/** Newton step: derivative·step = −residual, by Cramer's rule. */
function writeStep(det: number): void {
  const a = -_residual[0]!;
  const b = -_residual[1]!;
  const c = -_residual[2]!;
  const j0 = _j[0]!;
  const j1 = _j[1]!;
  const j3 = _j[3]!;
  const j4 = _j[4]!;
  const j5 = _j[5]!;
  const j6 = _j[6]!;
  const j7 = _j[7]!;
  const j8 = _j[8]!;
  _step[0] = (a * (j4 * j8 - j5 * j7) - j1 * (b * j8 - j5 * c)) / det;
  _step[1] = (j0 * (b * j8 - j5 * c) - a * (j3 * j8 - j5 * j6)) / det;
  _step[2] = (j0 * (j4 * c - b * j7) - j1 * (j3 * c - b * j6) + a * (j3 * j7 - j4 * j6)) / det;
}

/** UB's part along the upper circle and TI's part across m: both go to 0, and change sign, where a pair is stretched. */
const _stretch = { tangential: 0, radial: 0, across: 0, forward: 0 };

function measureStretch(fixed: Float64Array, pose: Float64Array): void {
  const c = Fixed.upperCircle;
  _stretch.radial = 0;
  _stretch.tangential = 0;
  _stretch.forward = 0;
  _stretch.across = 0;
  for (let i = 0; i < 3; i += 1) {
    const d = pose[Slot.lower + i]! - fixed[c + i]!;
    const p = fixed[c + 3 + i]!;
    const q = fixed[c + 6 + i]!;
    _stretch.radial += d * (pose[Slot.upperCos]! * p + pose[Slot.upperSin]! * q);
    _stretch.tangential += d * (pose[Slot.upperCos]! * q - pose[Slot.upperSin]! * p);
    const e = pose[Slot.inner + i]! - pose[Slot.lower + i]!;
    _stretch.forward += e * pose[Slot.frame + 3 + i]!;
    _stretch.across += e * pose[Slot.frame + 6 + i]!;
  }
}

/** Writes the closed forms' rooms of a placed pose. */
function writeRooms(fixed: Float64Array, pose: Float64Array): void {
  measureStretch(fixed, pose);
  const { radial, tangential, forward, across } = _stretch;
  pose[Slot.upperRoom] = tangential ** 2 / (radial ** 2 + tangential ** 2);
  pose[Slot.rodRoom] = across ** 2 / (forward ** 2 + across ** 2);
}

/** Writes which of the closed forms' answers, and which sense of the lower arm's angle, a placed pose belongs to: ±1. */
export function writeSides(fixed: Float64Array, pose: Float64Array): void {
  measureStretch(fixed, pose);
  fixed[Fixed.upperSide] = _stretch.tangential > 0 ? -1 : 1;
  fixed[Fixed.rodSide] = _stretch.across > 0 ? -1 : 1;
  fixed[Fixed.wheelSide] = 1;
  angleRates(fixed, pose);
  fixed[Fixed.wheelSide] = pose[Slot.angleCentre + 2]! < 0 ? -1 : 1;
}

/**
 * Newton from the pose in the buffer to the wheel centre height of `travel`, the rack's end already at its new place
 * (so its first step is the tangent's). Returns the determinant of the solved pose, whose sign tells the branch, or 0
 * where it does not converge nearby. Leaves the pose placed, lengths within 1e-9 mm.
 */
export function correct(fixed: Float64Array, pose: Float64Array, travel: number): number {
  const target = fixed[Fixed.designHeight]! + travel;
  const theta = pose[Slot.lowerAngle]!;
  const phi = Math.atan2(pose[Slot.upperSin]!, pose[Slot.upperCos]!);
  let lower = theta;
  let upper = phi;
  let psi = 0;
  let spun = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let count = 0; count <= MOST_ITERATIONS; count += 1) {
    placeArms(fixed, pose, lower, upper);
    const span = turnFrame(pose, psi);
    const rod = measureResiduals(fixed, pose, span, target);
    const det = linearise(fixed, pose, span, rod);
    const worst = Math.max(
      Math.abs(_residual[0]!),
      Math.abs(_residual[1]!),
      Math.abs(_residual[2]!),
    );
    if (worst <= TOLERANCE || (worst <= ROUNDING && worst >= least)) {
      writeRooms(fixed, pose);
      return det;
    }
    if (det === 0) return 0;
    least = Math.min(least, worst);
    writeStep(det);
    lower += _step[0]!;
    upper += _step[1]!;
    psi = _step[2]!;
    spun += psi;
    const moved = Math.max(Math.abs(lower - theta), Math.abs(upper - phi), Math.abs(spun));
    if (!(moved < FARTHEST)) return 0;
  }
  return 0;
}
