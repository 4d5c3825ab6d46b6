/**
 * Tie rod against a surface of revolution of its own wheel (metal or tyre): exact least distance and the two nearest
 * points, by reduction to the wheel's meridian plane (meridian.ts). Bends and the rod's diameters by length included.
 */
import type { Corner } from '../corner.ts';
import { Slot } from '../linkage/slots.ts';
import type { Pose } from '../linkage/solve.ts';
import type { SectionPoint } from '../model/model.ts';
import {
  boundBox,
  createMeridian,
  lineCrossing,
  lineStationary,
  type Meridian,
  setMeridian,
  takeCandidate,
  vertexStationary,
} from './meridian.ts';
import { type RodPieces, rodPieces } from './rodPieces.ts';
import { type Section, tyreSections, wheelSections } from './section.ts';

/** What the rod is nearest to. */
export type Place = Section['name'];

/** The answer, refilled by `rodGapInto`. Lengths mm, points in vehicle axes. */
export interface RodGap {
  readonly pieces: RodPieces;
  readonly sections: readonly Section[];
  /** Least distance between the surfaces; negative when they overlap, then minus the overlap. */
  gap: number;
  place: Place;
  /** Nearest point of the section, [s, ρ]. */
  readonly sectionPoint: [number, number];
  /** Point of the rod's centreline, and of the section's mid-surface in the same meridian plane. */
  readonly rodPoint: Float64Array;
  readonly wheelPoint: Float64Array;
  /** Distance along the rod from its outer joint to that point. */
  fromOuter: number;
  /** Where the least was found, tried first in the next pose: it makes the rest quick to rule out. */
  hint: number;
}

export function createRodGap(corner: Corner, against: 'wheel' | 'tyre'): RodGap {
  const { model } = corner;
  return {
    pieces: rodPieces(corner),
    sections: against === 'wheel' ? wheelSections(model) : tyreSections(model),
    gap: Number.POSITIVE_INFINITY,
    place: against === 'wheel' ? 'barrel' : 'tyre',
    sectionPoint: [0, 0],
    rodPoint: new Float64Array(3),
    wheelPoint: new Float64Array(3),
    fromOuter: 0,
    hint: 0,
  };
}

const MOST_POINTS = 64;
/** Per break point of the rod: axial place s, then the radial vector, in vehicle axes from the wheel centre. */
const _axial = new Float64Array(MOST_POINTS);
const _radial = new Float64Array(3 * MOST_POINTS);
const _meridian: Meridian = createMeridian();
const _best = { gap: 0.5, piece: 0, lambda: 0.5, s: 0.5, radius: 0.5, section: 0 };

/** Writes s and the radial vector of every break point of the rod. */
function projectPieces(pieces: RodPieces, pose: Float64Array): void {
  const f = Slot.rodFrame;
  const ax = pose[Slot.hubAxis]!;
  const ay = pose[Slot.hubAxis + 1]!;
  const az = pose[Slot.hubAxis + 2]!;
  const ox = pose[Slot.outer]! - pose[Slot.centre]!;
  const oy = pose[Slot.outer + 1]! - pose[Slot.centre + 1]!;
  const oz = pose[Slot.outer + 2]! - pose[Slot.centre + 2]!;
  const { points } = pieces;
  for (let i = 0, at = 0; at < points.length; i += 1, at += 3) {
    const x = points[at]!;
    const y = points[at + 1]!;
    const z = points[at + 2]!;
    const px = ox + x * pose[f]! + y * pose[f + 3]! + z * pose[f + 6]!;
    const py = oy + x * pose[f + 1]! + y * pose[f + 4]! + z * pose[f + 7]!;
    const pz = oz + x * pose[f + 2]! + y * pose[f + 5]! + z * pose[f + 8]!;
    const s = px * ax + py * ay + pz * az;
    _axial[i] = s;
    _radial[at] = px - s * ax;
    _radial[at + 1] = py - s * ay;
    _radial[at + 2] = pz - s * az;
  }
}

function loadPiece(rod: RodGap, piece: number): void {
  _meridian.half = rod.pieces.radii[piece]!;
  setMeridian(_meridian, _axial, _radial, piece);
}

/** Distance from the candidate (s(λ), ρ(λ)) to one edge of the section, kept if it is the least so far. */
function tryEdge(section: Section, edge: number, piece: number, which: number): void {
  const { line } = section;
  takeCandidate(_meridian);
  const { lambda } = _meridian;
  const at = 2 * edge;
  const s0 = line[at]!;
  const r0 = line[at + 1]!;
  const es = line[at + 2]! - s0;
  const er = line[at + 3]! - r0;
  const s = _meridian.s1 + lambda * _meridian.ds;
  const r = _meridian.radius;
  const foot = ((s - s0) * es + (r - r0) * er) / (es * es + er * er || 1);
  const t = Math.min(1, Math.max(0, foot));
  const nearS = s0 + t * es;
  const nearR = r0 + t * er;
  const apart = Math.sqrt((s - nearS) * (s - nearS) + (r - nearR) * (r - nearR));
  const gap = apart - _meridian.half - section.half;
  if (gap < _best.gap) {
    _best.gap = gap;
    _best.piece = piece;
    _best.lambda = lambda;
    _best.s = nearS;
    _best.radius = nearR;
    _best.section = which;
  }
}

/** True when nothing of the piece can come nearer to the edge (or, with one end given twice, to a vertex) than the best. */
function isRuledOut(section: Section, from: number, to: number): boolean {
  boundBox(_meridian, section.line, from, to);
  return _meridian.least - _meridian.half - section.half >= _best.gap;
}

/** All candidates of one piece and one edge: ends, foot line, crossings, and the minima about the edge's vertices. */
function searchEdge(section: Section, edge: number, piece: number, which: number): void {
  const { line } = section;
  const at = 2 * edge;
  if (isRuledOut(section, at, at + 2)) return;
  _meridian.lambda = 0;
  tryEdge(section, edge, piece, which);
  _meridian.lambda = 1;
  tryEdge(section, edge, piece, which);
  if (lineStationary(_meridian, line, at)) tryEdge(section, edge, piece, which);
  if (lineCrossing(_meridian, line, at, 0)) tryEdge(section, edge, piece, which);
  if (lineCrossing(_meridian, line, at, 1)) tryEdge(section, edge, piece, which);
  searchVertex(section, edge, at, piece, which);
  if (at + 4 === line.length) searchVertex(section, edge, at + 2, piece, which);
}

function searchVertex(
  section: Section,
  edge: number,
  at: number,
  piece: number,
  which: number,
): void {
  if (isRuledOut(section, at, at)) return;
  if (vertexStationary(_meridian, section.line, at, 0)) tryEdge(section, edge, piece, which);
  if (vertexStationary(_meridian, section.line, at, 1)) tryEdge(section, edge, piece, which);
}

function searchPiece(rod: RodGap, piece: number): void {
  loadPiece(rod, piece);
  for (let which = 0; which < rod.sections.length; which += 1) {
    const section = rod.sections[which]!;
    const edges = section.line.length / 2 - 1;
    for (let edge = 0; edge < edges; edge += 1) searchEdge(section, edge, piece, which);
  }
}

/** True when the candidate lies inside the closed section: even-odd rule. */
function isInside(line: Float64Array): boolean {
  const s = _meridian.s1 + _meridian.lambda * _meridian.ds;
  const { radius } = _meridian;
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

const DEPTH_SAMPLES = 48;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Signed distance of the centreline's point at λ: minus its depth inside the solid. Leaves the boundary point in `_best`. */
function depthAt(section: Section, lambda: number, piece: number, which: number): number {
  _best.gap = Number.POSITIVE_INFINITY;
  _meridian.lambda = lambda;
  for (let edge = 0; edge < section.line.length / 2 - 1; edge += 1) {
    tryEdge(section, edge, piece, which);
  }
  const apart = _best.gap + _meridian.half + section.half;
  return isInside(section.line) ? -apart : apart;
}

/** The deepest point of a piece inside a solid: sampled, then narrowed by golden section to far below 0.01 mm. */
function searchDepth(section: Section, piece: number, which: number): void {
  let at = 0;
  let deepest = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= DEPTH_SAMPLES; i += 1) {
    const depth = depthAt(section, i / DEPTH_SAMPLES, piece, which);
    if (depth < deepest) {
      deepest = depth;
      at = i / DEPTH_SAMPLES;
    }
  }
  let low = Math.max(0, at - 1 / DEPTH_SAMPLES);
  let high = Math.min(1, at + 1 / DEPTH_SAMPLES);
  while (high - low > 1e-7) {
    const a = high - GOLDEN * (high - low);
    const b = low + GOLDEN * (high - low);
    if (depthAt(section, a, piece, which) < depthAt(section, b, piece, which)) high = b;
    else low = a;
  }
  const middle = (low + high) / 2;
  const narrowed = depthAt(section, middle, piece, which);
  const depth = narrowed <= deepest ? narrowed : depthAt(section, at, piece, which);
  _best.gap = depth - _meridian.half - section.half;
}

function searchSolids(rod: RodGap): void {
  const found = { ..._best };
  for (let which = 0; which < rod.sections.length; which += 1) {
    const section = rod.sections[which]!;
    if (!section.solid) continue;
    for (let piece = 0; piece < rod.pieces.radii.length; piece += 1) {
      loadPiece(rod, piece);
      searchDepth(section, piece, which);
      if (_best.gap < found.gap) Object.assign(found, _best);
    }
  }
  Object.assign(_best, found);
}

/** True when the centreline enters a solid, by crossing its boundary or as a whole: only then its depth is searched. */
function entersSolid(rod: RodGap): boolean {
  if (!rod.sections[0]!.solid) return false;
  if (_best.gap <= -rod.pieces.radii[_best.piece]! + 1e-9) return true;
  loadPiece(rod, 0);
  _meridian.lambda = 0;
  takeCandidate(_meridian);
  return isInside(rod.sections[0]!.line);
}

function writeAnswer(rod: RodGap, pose: Float64Array): void {
  loadPiece(rod, _best.piece);
  const { piece, lambda } = _best;
  _meridian.lambda = lambda;
  takeCandidate(_meridian);
  const { radius } = _meridian;
  const s = _meridian.s1 + lambda * _meridian.ds;
  const stretch = radius > 0 ? _best.radius / radius : 0;
  for (let i = 0; i < 3; i += 1) {
    const a = pose[Slot.hubAxis + i]!;
    const v = (1 - lambda) * _radial[3 * piece + i]! + lambda * _radial[3 * piece + 3 + i]!;
    rod.rodPoint[i] = pose[Slot.centre + i]! + s * a + v;
    rod.wheelPoint[i] = pose[Slot.centre + i]! + _best.s * a + stretch * v;
  }
  rod.gap = _best.gap;
  rod.place = rod.sections[_best.section]!.name;
  rod.sectionPoint[0] = _best.s;
  rod.sectionPoint[1] = _best.radius;
  const { lengths } = rod.pieces;
  rod.fromOuter = lengths[piece]! + lambda * (lengths[piece + 1]! - lengths[piece]!);
  rod.hint = piece;
}

/**
 * Fills `rod` with the exact least distance of the tie rod to its wheel sections in the pose of the buffer, whose parts
 * must be placed (`placeParts` or `measureInto`). Allocates only where the rod's centreline is inside the tyre.
 */
export function rodGapInto(rod: RodGap, pose: Pose): void {
  projectPieces(rod.pieces, pose.data);
  _best.gap = Number.POSITIVE_INFINITY;
  searchPiece(rod, rod.hint);
  for (let piece = 0; piece < rod.pieces.radii.length; piece += 1) {
    if (piece !== rod.hint) searchPiece(rod, piece);
  }
  if (entersSolid(rod)) searchSolids(rod);
  writeAnswer(rod, pose.data);
}

/** Section points for a picture or a table. */
export function sectionPoints(section: Section): SectionPoint[] {
  const { line } = section;
  return Array.from(
    { length: line.length / 2 },
    (_, i) => [line[2 * i]!, line[2 * i + 1]!] as const,
  );
}
