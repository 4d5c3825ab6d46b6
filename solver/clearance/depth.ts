/**
 * How deep pieces are inside a solid section: the least signed distance along a piece, negative inside. There is no closed
 * form; a piece is halved until a lower bound of every part left comes within `CLOSE` of the least value seen.
 */
import { createMeridian, type Meridian, takeCandidate } from './meridian.ts';
import { loadPiece, type ProfileSearch } from './profile.ts';
import type { Section } from './section.ts';

/** How far above the least depth the answer may lie, mm. */
const CLOSE = 0.002;
/** Parts of one piece looked at in the most; only beside outlines that are not convex can it come to so many. */
const MOST_PARTS = 6000;
/** Rounding left where a piece crosses a surface, mm. */
const AT_SURFACE = 1e-9;

const _meridian: Meridian = createMeridian();
/** Parts still to be looked at: λ from and to, the signed distance at both. */
const _stack = new Float64Array(4 * 128);
const _spot = { apart: 0.5, s: 0.5, radius: 0.5, bound: 0.5 };

/** True when (s, ρ) lies inside the closed line: even-odd rule. Of a meridian's candidate. */
function isInside(line: Float64Array, meridian: Meridian): boolean {
  const s = meridian.s1 + meridian.lambda * meridian.ds;
  const { radius } = meridian;
  let inside = false;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const r0 = line[at + 1]!;
    const r1 = line[at + 3]!;
    if (r0 > radius === r1 > radius) continue;
    const cross = line[at]! + ((radius - r0) / (r1 - r0)) * (line[at + 2]! - line[at]!);
    if (s < cross) inside = !inside;
  }
  return inside;
}

/** Finds the signed distance of the candidate to the solid's surface, and the surface's nearest point. */
function findSigned(line: Float64Array): void {
  takeCandidate(_meridian);
  const s = _meridian.s1 + _meridian.lambda * _meridian.ds;
  const { radius } = _meridian;
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const es = line[at + 2]! - line[at]!;
    const er = line[at + 3]! - line[at + 1]!;
    const foot = (s - line[at]!) * es + (radius - line[at + 1]!) * er;
    const t = Math.min(1, Math.max(0, foot / (es * es + er * er || 1)));
    const ds = line[at]! + t * es - s;
    const dr = line[at + 1]! + t * er - radius;
    const squared = ds * ds + dr * dr;
    if (squared >= least) continue;
    least = squared;
    _spot.s = s + ds;
    _spot.radius = radius + dr;
  }
  const apart = Math.sqrt(least);
  _spot.apart = isInside(line, _meridian) ? -apart : apart;
}

/** Twice the area inside a closed line; its sign tells which way it runs. */
function areaOf(line: Float64Array): number {
  let area = 0;
  for (let at = 0; at + 3 < line.length; at += 2) {
    area += line[at]! * line[at + 3]! - line[at + 2]! * line[at + 1]!;
  }
  return area;
}

const _convex = new WeakMap<Float64Array, boolean>();

/** True when the closed line turns one way only. */
export function isConvex(line: Float64Array): boolean {
  const known = _convex.get(line);
  if (known !== undefined) return known;
  const sign = areaOf(line) < 0 ? -1 : 1;
  let convex = true;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const es = sign * (line[at + 2]! - line[at]!);
    const er = sign * (line[at + 3]! - line[at + 1]!);
    const room = 1e-9 * Math.hypot(es, er);
    for (let to = 0; to < line.length; to += 2) {
      const left = es * (line[to + 1]! - line[at + 1]!) - er * (line[to]! - line[at]!);
      if (left < -room) convex = false;
    }
  }
  _convex.set(line, convex);
  return convex;
}

/** Bounds ρ's sagitta between two λ: ρ'' = Δ/ρ³, and ρ changes by no more than the piece's length there. */
function sagitta(from: number, to: number): number {
  const m = _meridian;
  const share = to - from;
  const turn = m.c2 > 0 ? Math.min(to, Math.max(from, -m.c1 / m.c2)) : from;
  const squared = m.c0 + turn * (2 * m.c1 + turn * m.c2);
  const most = (share * Math.sqrt(m.c2)) / 2;
  if (!(squared > 0)) return most;
  return Math.min(most, (m.delta * share * share) / (8 * squared * Math.sqrt(squared)));
}

/**
 * Bounds the signed distance to a convex solid between two λ from below: it is nowhere less than the height over any
 * edge's line, which is linear in s and ρ, and ρ lies below its chord by no more than its sagitta.
 */
function boundHeights(line: Float64Array, from: number, to: number): void {
  const m = _meridian;
  const sag = sagitta(from, to);
  const sign = areaOf(line) > 0 ? 1 : -1;
  m.lambda = from;
  takeCandidate(m);
  const r1 = m.radius;
  m.lambda = to;
  takeCandidate(m);
  const r2 = m.radius;
  const s1 = m.s1 + from * m.ds;
  const s2 = m.s1 + to * m.ds;
  let best = Number.NEGATIVE_INFINITY;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const es = line[at + 2]! - line[at]!;
    const er = line[at + 3]! - line[at + 1]!;
    const length = Math.sqrt(es * es + er * er);
    if (!(length > 0)) continue;
    const ns = (sign * er) / length;
    const nr = (-sign * es) / length;
    const first = ns * (s1 - line[at]!) + nr * (r1 - line[at + 1]!);
    const last = ns * (s2 - line[at]!) + nr * (r2 - line[at + 1]!);
    best = Math.max(best, Math.min(first, last) - Math.max(0, nr) * sag);
  }
  _spot.bound = best;
}

/** Takes the signed distance at λ into the stack's place `at`, and into the answer where it is less than all before. */
function look(search: ProfileSearch, section: Section, which: number, piece: number, at: number) {
  findSigned(section.line);
  _stack[at] = _spot.apart;
  const gap = _spot.apart - _meridian.half - section.half;
  if (gap >= search.gap) return;
  search.gap = gap;
  search.piece = piece;
  search.lambda = _meridian.lambda;
  search.section = which;
  search.s = _spot.s;
  search.radius = _spot.radius;
}

/** Finds the least signed distance along one piece to one solid, where it is less than the least so far. */
function searchPiece(search: ProfileSearch, which: number, piece: number): void {
  const section = search.sections[which]!;
  const { line } = section;
  const convex = isConvex(line);
  const m = _meridian;
  loadPiece(search, piece, m);
  const length = Math.sqrt(m.ds * m.ds + m.c2);
  const thick = m.half + section.half;
  _stack[0] = 0;
  _stack[1] = 1;
  m.lambda = 0;
  look(search, section, which, piece, 2);
  m.lambda = 1;
  look(search, section, which, piece, 3);
  let top = 0;
  for (let count = 0; top >= 0 && count < MOST_PARTS; count += 1) {
    const from = _stack[top]!;
    const to = _stack[top + 1]!;
    const last = _stack[top + 3]!;
    const aim = search.gap + thick - CLOSE;
    const isDone = (_stack[top + 2]! + last - length * (to - from)) / 2 >= aim;
    if (!isDone && convex) boundHeights(line, from, to);
    if (isDone || (convex && _spot.bound >= aim) || top + 8 > _stack.length) {
      top -= 4;
      continue;
    }
    const middle = (from + to) / 2;
    m.lambda = middle;
    look(search, section, which, piece, top + 3);
    _stack[top + 1] = middle;
    _stack[top + 4] = middle;
    _stack[top + 5] = to;
    _stack[top + 6] = _stack[top + 3]!;
    _stack[top + 7] = last;
    top += 4;
  }
}

/** True when a break point lies inside the solid, or a centreline may cross its surface. */
function mayEnter(search: ProfileSearch, which: number): boolean {
  if (search.gap <= -search.leastRadius + AT_SURFACE) return true;
  // Nothing inside is farther from the surface than half the smaller extent.
  const extent = search.extents[which]!;
  const deepest = Math.min(extent[1]! - extent[0]!, extent[3]! - extent[2]!) / 2;
  if (search.gap > deepest - search.leastRadius) return false;
  const { line } = search.sections[which]!;
  for (let piece = 0; piece < search.radii.length; piece += 1) {
    loadPiece(search, piece, _meridian);
    _meridian.lambda = 0;
    takeCandidate(_meridian);
    if (isInside(line, _meridian)) return true;
  }
  return false;
}

/** Lowers the answer of a search by how deep centrelines are inside solid sections. Allocates nothing. */
export function searchDepths(search: ProfileSearch): void {
  for (let which = 0; which < search.sections.length; which += 1) {
    if (!search.sections[which]!.solid || !mayEnter(search, which)) continue;
    for (let piece = 0; piece < search.radii.length; piece += 1) searchPiece(search, which, piece);
  }
}
