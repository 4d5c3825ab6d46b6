/**
 * A straight piece of rod seen in the meridian plane of a surface of revolution. Along X(λ), 0 ≤ λ ≤ 1,
 *   s(λ) = s₁ + λ·ds,   ρ(λ)² = c₀ + 2c₁λ + c₂λ²,
 * and the distance from X to the surface is the planar distance from (s, ρ) to the section, since the nearest point of a
 * surface of revolution lies in X's own meridian plane. So the least distance of piece and surface is a planar problem
 * whose stationary λ have closed forms or one monotone equation each.
 */

/**
 * A piece in the meridian plane. Made once, refilled for every piece; what is found of it goes through it too, since a
 * number returned by a function that is not inlined is boxed. Vertices of a section are named by their place `at` in
 * its flat line [s, ρ, s, ρ, …].
 */
export interface Meridian {
  /** The λ of the candidate last found, and ρ there. */
  lambda: number;
  radius: number;
  /** The bound last found by `boundBox`. */
  least: number;
  /** Half the rod's diameter along this piece. */
  half: number;
  s1: number;
  ds: number;
  c0: number;
  c1: number;
  c2: number;
  /** c₀c₂ − c₁², which no rounding may make negative. */
  delta: number;
  sLow: number;
  sHigh: number;
  radiusLow: number;
  radiusHigh: number;
  /** Scratch of the search about a vertex: the slope at the candidate, and the λ between which its root lies. */
  slope: number;
  low: number;
  high: number;
}

/** A meridian to be filled; every number starts as a fraction, so that none is ever kept as an integer. */
export function createMeridian(): Meridian {
  return {
    lambda: 0.5,
    radius: 0.5,
    least: 0.5,
    half: 0.5,
    s1: 0.5,
    ds: 0.5,
    c0: 0.5,
    c1: 0.5,
    c2: 0.5,
    delta: 0.5,
    sLow: 0.5,
    sHigh: 0.5,
    radiusLow: 0.5,
    radiusHigh: 0.5,
    slope: 0.5,
    low: 0.5,
    high: 0.5,
  };
}

/** Takes the candidate λ and finds ρ there. */
export function takeCandidate(m: Meridian): void {
  const squared = m.c0 + m.lambda * (2 * m.c1 + m.lambda * m.c2);
  m.radius = squared > 0 ? Math.sqrt(squared) : 0;
}

/**
 * Fills a meridian with piece `i` of a rod whose break points' axial places and radial vectors are given flat.
 */
export function setMeridian(
  m: Meridian,
  axial: Float64Array,
  radial: Float64Array,
  i: number,
): void {
  const x1 = radial[3 * i]!;
  const y1 = radial[3 * i + 1]!;
  const z1 = radial[3 * i + 2]!;
  const dx = radial[3 * i + 3]! - x1;
  const dy = radial[3 * i + 4]! - y1;
  const dz = radial[3 * i + 5]! - z1;
  const s2 = axial[i + 1]!;
  m.s1 = axial[i]!;
  m.ds = s2 - m.s1;
  m.c0 = x1 * x1 + y1 * y1 + z1 * z1;
  m.c1 = x1 * dx + y1 * dy + z1 * dz;
  m.c2 = dx * dx + dy * dy + dz * dz;
  m.delta = Math.max(0, m.c0 * m.c2 - m.c1 * m.c1);
  m.sLow = Math.min(m.s1, s2);
  m.sHigh = Math.max(m.s1, s2);
  const first = Math.sqrt(m.c0);
  const last = Math.sqrt(Math.max(0, m.c0 + 2 * m.c1 + m.c2));
  m.radiusHigh = Math.max(first, last);
  const turn = m.c2 > 0 ? -m.c1 / m.c2 : 0;
  m.radiusLow = turn > 0 && turn < 1 ? Math.sqrt(m.delta / m.c2) : Math.min(first, last);
}

/**
 * Finds the distance between the bounding boxes, in (s, ρ), of the piece and of the edge between two vertices (or of one
 * vertex, named twice): a lower bound of every distance between them, left in `least`.
 */
export function boundBox(m: Meridian, line: Float64Array, from: number, to: number): void {
  const s0 = line[from]!;
  const r0 = line[from + 1]!;
  const s1 = line[to]!;
  const r1 = line[to + 1]!;
  const across = Math.max(0, Math.min(s0, s1) - m.sHigh, m.sLow - Math.max(s0, s1));
  const up = Math.max(0, Math.min(r0, r1) - m.radiusHigh, m.radiusLow - Math.max(r0, r1));
  m.least = across === 0 ? up : up === 0 ? across : Math.sqrt(across * across + up * up);
}

/** Finds the λ of the stationary distance to the line through the edge at `at`; false where there is none inside the piece. */
export function lineStationary(m: Meridian, line: Float64Array, at: number): boolean {
  const ns = line[at + 3]! - line[at + 1]!;
  const nr = line[at]! - line[at + 2]!;
  if (nr === 0 || m.c2 === 0) return false;
  const kappa = (-ns * m.ds) / nr;
  const room = m.c2 - kappa * kappa;
  if (!(room > 0)) return false;
  m.lambda = (kappa * Math.sqrt(m.delta / room) - m.c1) / m.c2;
  return m.lambda > 0 && m.lambda < 1;
}

/** Part of two nearly equal products that rounding may leave of their difference. */
const ROUNDED = 1e-12;

/**
 * Finds the λ in (0, 1) at which the piece crosses the line ns·s + nr·ρ = c through the edge at `at`, from
 * nr²ρ² = (c − ns·s)²: `which` 0 or 1 picks one of at most two answers; false where it does not exist. (An answer of the
 * squared equation that is none of the line does no harm: it is one candidate more.)
 */
export function lineCrossing(m: Meridian, line: Float64Array, at: number, which: 0 | 1): boolean {
  const ns = line[at + 3]! - line[at + 1]!;
  const nr = line[at]! - line[at + 2]!;
  if (nr === 0) {
    m.lambda = (line[at]! - m.s1) / m.ds;
    return m.lambda > 0 && m.lambda < 1;
  }
  const rest = ns * (line[at]! - m.s1) + nr * line[at + 1]!;
  const slope = -ns * m.ds;
  const qa = nr * nr * m.c2 - slope * slope;
  const qb = nr * nr * m.c1 - rest * slope;
  const qc = nr * nr * m.c0 - rest * rest;
  // Beside an upright line both products are nearly equal, and rounding may turn their difference's sign.
  const root = qb * qb - qa * qc;
  if (!(root >= -ROUNDED * qb * qb)) return false;
  const q = -(qb + (qb < 0 ? -1 : 1) * Math.sqrt(Math.max(0, root)));
  m.lambda = which === 0 ? q / qa : qc / q;
  return m.lambda > 0 && m.lambda < 1;
}

/** Part of ρ² that rounding may leave of a point on the axis. */
const ON_AXIS = 1e-14;

/**
 * Finds half the derivative of the squared distance to the vertex at the candidate: A·λ + B − ρ₀·(c₁ + c₂λ)/ρ(λ). On the
 * axis, where ρ has a kink, it is the one `side` of it: 1 behind, −1 before.
 */
function findSlope(m: Meridian, line: Float64Array, at: number, side: 1 | -1): void {
  takeCandidate(m);
  const turn = m.c1 + m.c2 * m.lambda;
  const isOnAxis = m.radius * m.radius <= ON_AXIS * (m.c0 + m.c2);
  const pull = line[at + 1]! * (isOnAxis ? side * Math.sqrt(m.c2) : turn / m.radius);
  m.slope = m.ds * (m.s1 + m.lambda * m.ds - line[at]!) + turn - pull;
}

const MOST_ITERATIONS = 60;

/** Safeguarded Newton for the slope's root between `low` and `high`, where the slope only grows. */
function findRoot(m: Meridian, line: Float64Array, at: number): void {
  let { low, high } = m;
  m.lambda = (low + high) / 2;
  for (let count = 0; count < MOST_ITERATIONS; count += 1) {
    findSlope(m, line, at, 1);
    if (m.slope === 0) return;
    if (m.slope < 0) low = m.lambda;
    else high = m.lambda;
    const bend = (line[at + 1]! * m.delta) / (m.radius * m.radius * m.radius);
    const newton = m.lambda - m.slope / (m.ds * m.ds + m.c2 - bend);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const moved = Math.abs(next - m.lambda);
    m.lambda = next;
    if (moved < 1e-12) return;
  }
}

/**
 * Finds the λ in (0, 1) at which the distance to the vertex (s₀, ρ₀) is least locally. Its slope grows outside the
 * interval around the point nearest the axis in which ρ³ < ρ₀·Δ/A, A = ds² + c₂, so there is at most one minimum on
 * either side: `which` 0 before, 1 behind; false where it does not exist.
 */
export function vertexStationary(
  m: Meridian,
  line: Float64Array,
  at: number,
  which: 0 | 1,
): boolean {
  let low = 0;
  let high = 1;
  const turnRadius = Math.cbrt((line[at + 1]! * m.delta) / (m.ds * m.ds + m.c2));
  const half = m.c2 * turnRadius * turnRadius - m.delta;
  if (m.c2 > 0 && half >= 0) {
    const spread = Math.sqrt(half);
    if (which === 0) high = Math.min(1, (-m.c1 - spread) / m.c2);
    else low = Math.max(0, (-m.c1 + spread) / m.c2);
  } else if (which === 1) return false;
  if (!(low < high)) return false;
  m.lambda = low;
  findSlope(m, line, at, 1);
  if (!(m.slope < 0)) return false;
  m.lambda = high;
  findSlope(m, line, at, -1);
  if (!(m.slope > 0)) return false;
  m.low = low;
  m.high = high;
  findRoot(m, line, at);
  return true;
}
