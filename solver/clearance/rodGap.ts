/**
 * Tie rod against a surface of revolution of its own wheel (metal or tyre): exact least distance and the two nearest
 * points, by reduction to the wheel's meridian plane (meridian.ts). Bends and the rod's diameters by length included.
 */
import type { Corner } from '../corner.ts';
import { Slot } from '../linkage/slots.ts';
import type { Pose } from '../linkage/solve.ts';
import type { SectionPoint } from '../model/model.ts';
import {
  boxDistance,
  createMeridian,
  lineCrossing,
  lineStationary,
  type Meridian,
  radiusAt,
  setMeridian,
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
const _best = { gap: 0, piece: 0, lambda: 0, s: 0, radius: 0, section: 0 };

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

function radialDot(a: number, b: number): number {
  return (
    _radial[3 * a]! * _radial[3 * b]! +
    _radial[3 * a + 1]! * _radial[3 * b + 1]! +
    _radial[3 * a + 2]! * _radial[3 * b + 2]!
  );
}

function loadPiece(piece: number): void {
  setMeridian(
    _meridian,
    _axial[piece]!,
    _axial[piece + 1]!,
    radialDot(piece, piece),
    radialDot(piece, piece + 1),
    radialDot(piece + 1, piece + 1),
  );
}

/** Distance from (s(λ), ρ(λ)) to one edge of the section, kept if it is the least so far. */
function tryEdge(
  section: Section,
  edge: number,
  lambda: number,
  radius: number,
  piece: number,
  which: number,
): void {
  if (!(lambda >= 0)) return;
  const { line } = section;
  const at = 2 * edge;
  const s0 = line[at]!;
  const r0 = line[at + 1]!;
  const es = line[at + 2]! - s0;
  const er = line[at + 3]! - r0;
  const s = _meridian.s1 + lambda * _meridian.ds;
  const r = radiusAt(_meridian, lambda);
  const foot = ((s - s0) * es + (r - r0) * er) / (es * es + er * er || 1);
  const t = foot < 0 ? 0 : foot > 1 ? 1 : foot;
  const nearS = s0 + t * es;
  const nearR = r0 + t * er;
  const gap =
    Math.sqrt((s - nearS) * (s - nearS) + (r - nearR) * (r - nearR)) - radius - section.half;
  if (gap < _best.gap) {
    _best.gap = gap;
    _best.piece = piece;
    _best.lambda = lambda;
    _best.s = nearS;
    _best.radius = nearR;
    _best.section = which;
  }
}

/** All candidates of one piece and one edge: ends, foot line, crossings, and both minima about the edge's first vertex. */
function searchEdge(
  section: Section,
  edge: number,
  radius: number,
  piece: number,
  which: number,
): void {
  const { line } = section;
  const at = 2 * edge;
  const s0 = line[at]!;
  const r0 = line[at + 1]!;
  const s1 = line[at + 2]!;
  const r1 = line[at + 3]!;
  const least = boxDistance(
    _meridian,
    Math.min(s0, s1),
    Math.max(s0, s1),
    Math.min(r0, r1),
    Math.max(r0, r1),
  );
  if (least - radius - section.half >= _best.gap) return;
  tryEdge(section, edge, 0, radius, piece, which);
  tryEdge(section, edge, 1, radius, piece, which);
  const ns = r1 - r0;
  const nr = s0 - s1;
  tryEdge(section, edge, lineStationary(_meridian, ns, nr), radius, piece, which);
  if (least === 0) {
    const c = ns * s0 + nr * r0;
    tryEdge(section, edge, lineCrossing(_meridian, ns, nr, c, 0), radius, piece, which);
    tryEdge(section, edge, lineCrossing(_meridian, ns, nr, c, 1), radius, piece, which);
  }
  searchVertex(section, edge, s0, r0, radius, piece, which);
  if (edge === line.length / 2 - 2) searchVertex(section, edge, s1, r1, radius, piece, which);
}

function searchVertex(
  section: Section,
  edge: number,
  s0: number,
  r0: number,
  radius: number,
  piece: number,
  which: number,
): void {
  if (boxDistance(_meridian, s0, s0, r0, r0) - radius - section.half >= _best.gap) return;
  tryEdge(section, edge, vertexStationary(_meridian, s0, r0, 0), radius, piece, which);
  tryEdge(section, edge, vertexStationary(_meridian, s0, r0, 1), radius, piece, which);
}

function searchPiece(rod: RodGap, piece: number): void {
  loadPiece(piece);
  const radius = rod.pieces.radii[piece]!;
  for (let which = 0; which < rod.sections.length; which += 1) {
    const section = rod.sections[which]!;
    const edges = section.line.length / 2 - 1;
    for (let edge = 0; edge < edges; edge += 1) searchEdge(section, edge, radius, piece, which);
  }
}

/** True when (s, ρ) lies inside the closed section: even-odd rule. */
function isInside(line: Float64Array, s: number, radius: number): boolean {
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

/** Signed distance of the point at λ: minus its depth inside the solid. Leaves the boundary point in `_best`. */
function depthAt(section: Section, lambda: number, piece: number, which: number): number {
  _best.gap = Number.POSITIVE_INFINITY;
  for (let edge = 0; edge < section.line.length / 2 - 1; edge += 1) {
    tryEdge(section, edge, lambda, 0, piece, which);
  }
  const s = _meridian.s1 + lambda * _meridian.ds;
  return isInside(section.line, s, radiusAt(_meridian, lambda)) ? -_best.gap : _best.gap;
}

/** The deepest point of a piece inside a solid: sampled, then narrowed by golden section to far below 0.01 mm. */
function searchDepth(section: Section, radius: number, piece: number, which: number): void {
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
  if (depthAt(section, middle, piece, which) > deepest) depthAt(section, at, piece, which);
  _best.gap = Math.min(deepest, depthAt(section, _best.lambda, piece, which)) - radius;
}

function searchSolids(rod: RodGap): void {
  const found = { ..._best };
  for (let which = 0; which < rod.sections.length; which += 1) {
    const section = rod.sections[which]!;
    if (!section.solid) continue;
    for (let piece = 0; piece < rod.pieces.radii.length; piece += 1) {
      loadPiece(piece);
      searchDepth(section, rod.pieces.radii[piece]!, piece, which);
      if (_best.gap < found.gap) Object.assign(found, _best);
    }
  }
  Object.assign(_best, found);
}

/** True when the centreline enters a solid: only then its depth must be searched. */
function entersSolid(rod: RodGap): boolean {
  for (const section of rod.sections) {
    if (!section.solid) continue;
    for (let i = 0; i < rod.pieces.points.length / 3; i += 1) {
      if (isInside(section.line, _axial[i]!, Math.sqrt(radialDot(i, i)))) return true;
    }
    if (_best.gap <= -rod.pieces.radii[_best.piece]! + 1e-9) return true;
  }
  return false;
}

function writeAnswer(rod: RodGap, pose: Float64Array): void {
  loadPiece(_best.piece);
  const { piece, lambda } = _best;
  const s = _meridian.s1 + lambda * _meridian.ds;
  const radius = radiusAt(_meridian, lambda);
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
