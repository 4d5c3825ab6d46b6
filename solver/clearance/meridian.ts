/**
 * A straight piece of rod seen in the meridian plane of a surface of revolution. Along X(λ), 0 ≤ λ ≤ 1,
 *   s(λ) = s₁ + λ·ds,   ρ(λ)² = c₀ + 2c₁λ + c₂λ²,
 * and the distance from X to the surface is the planar distance from (s, ρ) to the section, since the nearest point of a
 * surface of revolution lies in X's own meridian plane. So the least distance of piece and surface is a planar problem
 * whose stationary λ have closed forms or one monotone equation each.
 */

/** A piece in the meridian plane. Made once, refilled for every piece. */
export interface Meridian {
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
}

export function createMeridian(): Meridian {
  return {
    s1: 0,
    ds: 0,
    c0: 0,
    c1: 0,
    c2: 0,
    delta: 0,
    sLow: 0,
    sHigh: 0,
    radiusLow: 0,
    radiusHigh: 0,
  };
}

/** ρ(λ), mm. */
export function radiusAt(m: Meridian, lambda: number): number {
  const squared = m.c0 + lambda * (2 * m.c1 + lambda * m.c2);
  return squared > 0 ? Math.sqrt(squared) : 0;
}

/** Fills a meridian from the two ends' axial places and the dot products of their radial vectors. */
export function setMeridian(
  m: Meridian,
  s1: number,
  s2: number,
  v11: number,
  v12: number,
  v22: number,
): void {
  m.s1 = s1;
  m.ds = s2 - s1;
  m.c0 = v11;
  m.c1 = v12 - v11;
  m.c2 = Math.max(0, v11 - 2 * v12 + v22);
  m.delta = Math.max(0, m.c0 * m.c2 - m.c1 * m.c1);
  m.sLow = Math.min(s1, s2);
  m.sHigh = Math.max(s1, s2);
  const first = Math.sqrt(v11);
  const last = Math.sqrt(v22);
  m.radiusHigh = Math.max(first, last);
  const turn = m.c2 > 0 ? -m.c1 / m.c2 : 0;
  m.radiusLow = turn > 0 && turn < 1 ? Math.sqrt(m.delta / m.c2) : Math.min(first, last);
}

/** Distance between the piece's bounding box in (s, ρ) and a box: a lower bound of every distance between them. */
export function boxDistance(
  m: Meridian,
  sLow: number,
  sHigh: number,
  radiusLow: number,
  radiusHigh: number,
): number {
  const across = Math.max(0, sLow - m.sHigh, m.sLow - sHigh);
  const up = Math.max(0, radiusLow - m.radiusHigh, m.radiusLow - radiusHigh);
  return across === 0 ? up : up === 0 ? across : Math.sqrt(across * across + up * up);
}

/** λ of the stationary distance to the line with normal (ns, nr); NaN where there is none inside the piece. */
export function lineStationary(m: Meridian, ns: number, nr: number): number {
  if (nr === 0 || m.c2 === 0) return Number.NaN;
  const kappa = (-ns * m.ds) / nr;
  const room = m.c2 - kappa * kappa;
  if (!(room > 0)) return Number.NaN;
  const lambda = (kappa * Math.sqrt(m.delta / room) - m.c1) / m.c2;
  return lambda > 0 && lambda < 1 ? lambda : Number.NaN;
}

/**
 * The λ in (0, 1) at which the piece crosses the line ns·s + nr·ρ = c, from nr²ρ² = (c − ns·s)²: `which` 0 or 1 picks
 * one of at most two answers; NaN where it does not exist.
 */
export function lineCrossing(m: Meridian, ns: number, nr: number, c: number, which: 0 | 1): number {
  const rest = c - ns * m.s1;
  const slope = -ns * m.ds;
  const qa = nr * nr * m.c2 - slope * slope;
  const qb = nr * nr * m.c1 - rest * slope;
  const qc = nr * nr * m.c0 - rest * rest;
  const root = qb * qb - qa * qc;
  if (!(root >= 0)) return Number.NaN;
  const q = -(qb + (qb < 0 ? -1 : 1) * Math.sqrt(root));
  const lambda = which === 0 ? q / qa : qc / q;
  if (!(lambda > 0 && lambda < 1)) return Number.NaN;
  return Math.abs(ns * (m.s1 + lambda * m.ds) + nr * radiusAt(m, lambda) - c) < 1e-6
    ? lambda
    : Number.NaN;
}

/** Half the derivative of the squared distance to the vertex (s₀, ρ₀): A·λ + B − ρ₀·(c₁ + c₂λ)/ρ(λ). */
function vertexSlope(m: Meridian, s0: number, radius0: number, lambda: number): number {
  const radius = radiusAt(m, lambda);
  const pull = radius > 0 ? (radius0 * (m.c1 + m.c2 * lambda)) / radius : 0;
  return m.ds * (m.s1 + lambda * m.ds - s0) + m.c1 + m.c2 * lambda - pull;
}

const MOST_ITERATIONS = 60;

/** Root of the slope between low (negative there) and high (positive there), where it only grows: safeguarded Newton. */
function rootBetween(m: Meridian, s0: number, radius0: number, low: number, high: number): number {
  let lambda = (low + high) / 2;
  for (let count = 0; count < MOST_ITERATIONS; count += 1) {
    const value = vertexSlope(m, s0, radius0, lambda);
    if (value === 0) return lambda;
    if (value < 0) low = lambda;
    else high = lambda;
    const radius = radiusAt(m, lambda);
    const steepness = m.ds * m.ds + m.c2 - (radius0 * m.delta) / (radius * radius * radius);
    const newton = lambda - value / steepness;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - lambda) < 1e-12) return next;
    lambda = next;
  }
  return lambda;
}

/**
 * The λ in (0, 1) at which the distance to the vertex (s₀, ρ₀) is least locally. Its slope grows outside the interval
 * around the point nearest the axis in which ρ³ < ρ₀·Δ/A, A = ds² + c₂, so there is at most one minimum on either side:
 * `which` 0 before, 1 behind; NaN where it does not exist.
 */
export function vertexStationary(m: Meridian, s0: number, radius0: number, which: 0 | 1): number {
  const stiffness = m.ds * m.ds + m.c2;
  let low = 0;
  let high = 1;
  if (m.c2 > 0) {
    const turnRadius = Math.cbrt((radius0 * m.delta) / stiffness);
    const half = m.c2 * turnRadius * turnRadius - m.delta;
    if (half > 0) {
      const spread = Math.sqrt(half);
      if (which === 0) high = Math.min(1, (-m.c1 - spread) / m.c2);
      else low = Math.max(0, (-m.c1 + spread) / m.c2);
    } else if (which === 1) return Number.NaN;
  } else if (which === 1) return Number.NaN;
  if (!(low < high)) return Number.NaN;
  if (!(vertexSlope(m, s0, radius0, low) < 0 && vertexSlope(m, s0, radius0, high) > 0))
    return Number.NaN;
  return rootBetween(m, s0, radius0, low, high);
}
