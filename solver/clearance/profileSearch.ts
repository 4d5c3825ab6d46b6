/**
 * Straight thick pieces against sections of revolution about the hub axis: the exact least distance, by reduction to the
 * meridian plane (meridian.ts). Every minimum over a piece is among finitely many candidates.
 */
import { searchDepths } from './depth.ts';
import {
  boundBox,
  createMeridian,
  lineCrossing,
  lineStationary,
  type Meridian,
  takeCandidate,
  vertexStationary,
} from './meridian.ts';
import { loadPiece, type ProfileSearch } from './profile.ts';
import type { Section } from './section.ts';

const _meridian: Meridian = createMeridian();

/** Distance from the candidate (s(λ), ρ(λ)) to one edge of the section, kept if it is the least so far. */
function tryEdge(search: ProfileSearch, section: Section, at: number, piece: number): void {
  const { line } = section;
  takeCandidate(_meridian);
  const { lambda } = _meridian;
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
  if (gap < search.gap) {
    search.gap = gap;
    search.piece = piece;
    search.lambda = lambda;
    search.s = nearS;
    search.radius = nearR;
  }
}

/** True when nothing of the piece can come nearer to the edge (or, with one end given twice, to a vertex) than the best. */
function isRuledOut(search: ProfileSearch, section: Section, from: number, to: number): boolean {
  boundBox(_meridian, section.line, from, to);
  return _meridian.least - _meridian.half - section.half >= search.gap;
}

/** All candidates of one piece and one edge: ends, foot line, crossings, and the minima about the edge's vertices. */
function searchEdge(search: ProfileSearch, section: Section, at: number, piece: number): void {
  const { line } = section;
  if (isRuledOut(search, section, at, at + 2)) return;
  _meridian.lambda = 0;
  tryEdge(search, section, at, piece);
  _meridian.lambda = 1;
  tryEdge(search, section, at, piece);
  if (lineStationary(_meridian, line, at)) tryEdge(search, section, at, piece);
  if (lineCrossing(_meridian, line, at, 0)) tryEdge(search, section, at, piece);
  if (lineCrossing(_meridian, line, at, 1)) tryEdge(search, section, at, piece);
  searchVertex(search, section, at, at, piece);
  if (at + 4 === line.length) searchVertex(search, section, at, at + 2, piece);
}

function searchVertex(
  search: ProfileSearch,
  section: Section,
  at: number,
  vertex: number,
  piece: number,
): void {
  if (isRuledOut(search, section, vertex, vertex)) return;
  const { line } = section;
  if (vertexStationary(_meridian, line, vertex, 0)) tryEdge(search, section, at, piece);
  if (vertexStationary(_meridian, line, vertex, 1)) tryEdge(search, section, at, piece);
}

/** True when nothing of the piece can come nearer to any of the section than the best. */
function isFar({ extents, gap }: ProfileSearch, which: number, half: number): boolean {
  const extent = extents[which]!;
  const m = _meridian;
  const across = Math.max(0, extent[0]! - m.sHigh, m.sLow - extent[1]!);
  const up = Math.max(0, extent[2]! - m.radiusHigh, m.radiusLow - extent[3]!);
  const room = gap + m.half + half;
  return room <= 0 ? across + up > 0 : across * across + up * up >= room * room;
}

function searchPiece(search: ProfileSearch, piece: number): void {
  loadPiece(search, piece, _meridian);
  for (let which = 0; which < search.sections.length; which += 1) {
    const section = search.sections[which]!;
    if (isFar(search, which, section.half)) continue;
    const before = search.gap;
    for (let at = 0; at + 3 < section.line.length; at += 2) {
      searchEdge(search, section, at, piece);
    }
    if (search.gap < before) search.section = which;
  }
}

/**
 * Finds the least distance of all pieces to all sections, of solid ones to their surface; the pieces must be projected.
 * Allocates nothing.
 */
export function searchSurfaces(search: ProfileSearch): void {
  search.gap = Number.POSITIVE_INFINITY;
  const { hint } = search;
  searchPiece(search, hint);
  for (let piece = 0; piece < search.radii.length; piece += 1) {
    if (piece !== hint) searchPiece(search, piece);
  }
}

/** Least distance of all pieces to all sections, depths inside solid ones included; the pieces must be projected. */
export function searchProfile(search: ProfileSearch): void {
  searchSurfaces(search);
  searchDepths(search);
  search.hint = search.piece;
}
