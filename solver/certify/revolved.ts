/**
 * A thick polyline against sections of revolution about the hub axis, seen from the knuckle, in the meridian plane: a
 * point's axial place s and radius ρ. A stretch of the polyline is a curve there whose radius is convex along it, so it
 * lies between its chord and the chord less a sagitta. Chord and section edge are bounded as two plane segments; of a
 * solid, whose inside counts, each edge's line also bounds from one side.
 */
import type { Section } from '../clearance/section.ts';
import { Slot } from '../linkage/slots.ts';
import type { Cell } from './cells.ts';
import { type Bounder, type Element, type Pieces, stretches, swingsOf } from './element.ts';
import { aimSegments, createSeparation, POINT, segmentBound } from './separation.ts';

/** Places of the slopes along α and β and of the rest in a point's numbers. */
const SLOPES = [3, 6] as const;
const REST = 9;

const _plane = createSeparation();
/** The two ends of a stretch in space, from the wheel centre, and the vector along it. */
const _ends = new Float64Array(2 * POINT);
const _along = new Float64Array(POINT);

/** Writes the ends of an element's stretch, measured from the wheel centre. */
function takeStretch(cell: Cell, track: Float64Array, first: number, { from, to }: Element): void {
  const at = first * POINT;
  for (let i = 0; i < POINT; i += 1) {
    const start = track[at + i]!;
    const along = track[at + POINT + i]! - start;
    _ends[i] = start + from * along;
    _ends[POINT + i] = start + to * along;
    _along[i] = (to - from) * along;
  }
  _along[REST] = (to - from) * (track[at + REST]! + track[at + POINT + REST]!);
  for (let i = 0; i < 3; i += 1) {
    const shift = cell.pose[Slot.centre + i]! - cell.pose[Slot.lower + i]!;
    _ends[i] = _ends[i]! - shift;
    _ends[POINT + i] = _ends[POINT + i]! - shift;
  }
}

/**
 * Turns a point in space into one of the meridian plane, (s, ρ, 0): ρ' ≤ ρ + ê·u + (t·u)²/(2ρ_least), t·u across the
 * plane. False where the point may come to the axis.
 */
function flatten(pose: Float64Array, from: number, plane: Float64Array, to: number): boolean {
  const ax = pose[Slot.hubAxis]!;
  const ay = pose[Slot.hubAxis + 1]!;
  const az = pose[Slot.hubAxis + 2]!;
  const x = _ends[from]!;
  const y = _ends[from + 1]!;
  const z = _ends[from + 2]!;
  const s = x * ax + y * ay + z * az;
  const radius = Math.sqrt((x - s * ax) ** 2 + (y - s * ay) ** 2 + (z - s * az) ** 2);
  if (!(radius > 0)) return false;
  const ex = (x - s * ax) / radius;
  const ey = (y - s * ay) / radius;
  const ez = (z - s * az) / radius;
  const rest = _ends[from + REST]!;
  let across = rest;
  let inwards = rest;
  plane[to] = s;
  plane[to + 1] = radius;
  plane[to + 2] = 0;
  for (const slope of SLOPES) {
    const ux = _ends[from + slope]!;
    const uy = _ends[from + slope + 1]!;
    const uz = _ends[from + slope + 2]!;
    const outwards = ux * ex + uy * ey + uz * ez;
    plane[to + slope] = ux * ax + uy * ay + uz * az;
    plane[to + slope + 1] = outwards;
    plane[to + slope + 2] = 0;
    inwards += Math.abs(outwards);
    across += Math.abs(
      ux * (ay * ez - az * ey) + uy * (az * ex - ax * ez) + uz * (ax * ey - ay * ex),
    );
  }
  const least = radius - inwards;
  if (!(least > 0)) return false;
  plane[to + REST] = rest + (across * across) / (2 * least);
  return true;
}

/** How far the point or vector at a place of a buffer can come from its middle. */
function swingAt(buffer: Float64Array, at: number): number {
  let total = buffer[at + REST]!;
  for (const slope of SLOPES) {
    total += Math.hypot(buffer[at + slope]!, buffer[at + slope + 1]!, buffer[at + slope + 2]!);
  }
  return total;
}

/** a·(x × d) of the stretch's start, or its slope, and of the vector along it, or its slope. */
function axialProduct(pose: Float64Array, x: number, d: number): number {
  const e = _ends;
  const v = _along;
  return (
    pose[Slot.hubAxis]! * (e[x + 1]! * v[d + 2]! - e[x + 2]! * v[d + 1]!) +
    pose[Slot.hubAxis + 1]! * (e[x + 2]! * v[d]! - e[x]! * v[d + 2]!) +
    pose[Slot.hubAxis + 2]! * (e[x]! * v[d + 1]! - e[x + 1]! * v[d]!)
  );
}

/** Least radius along the stretch at the centre. */
function leastRadius(pose: Float64Array): number {
  const a = Slot.hubAxis;
  let start = 0;
  let along = 0;
  let both = 0;
  let s = 0;
  let ds = 0;
  for (let i = 0; i < 3; i += 1) {
    const x = _ends[i]!;
    const d = _ends[POINT + i]! - x;
    start += x * x;
    along += d * d;
    both += x * d;
    s += x * pose[a + i]!;
    ds += d * pose[a + i]!;
  }
  const c1 = both - s * ds;
  const c2 = along - ds * ds;
  const share = c2 > 0 ? Math.min(1, Math.max(0, -c1 / c2)) : 0;
  return Math.sqrt(Math.max(0, start - s * s + share * (2 * c1 + share * c2)));
}

/**
 * Bounds the sagitta of the stretch's curve over the cell: along it ρ'' = K²/ρ³ with K = a·(x × d), x its start and d the
 * vector along it, so it is at most K²/(8ρ³).
 */
function sagitta(pose: Float64Array): number {
  const swing = swingAt(_ends, 0);
  const least = leastRadius(pose) - Math.max(swing, swingAt(_ends, POINT));
  if (!(least > 0)) return Number.POSITIVE_INFINITY;
  let turn = Math.abs(axialProduct(pose, 0, 0));
  for (const slope of SLOPES) {
    turn += Math.abs(axialProduct(pose, slope, 0) + axialProduct(pose, 0, slope));
  }
  turn += swing * swingAt(_along, 0);
  turn += _ends[REST]! * Math.hypot(_along[0]!, _along[1]!, _along[2]!);
  turn += _along[REST]! * Math.hypot(_ends[0]!, _ends[1]!, _ends[2]!);
  return (turn * turn) / (8 * least ** 3);
}

/** One edge of a section; of a convex solid also its unit normal (s, ρ) out of the solid. */
interface Edge {
  readonly line: Float64Array;
  readonly outwards: readonly [number, number] | null;
}

/** What an element holds of the sections: one edge of a shell, or a solid as a whole. */
interface Target {
  readonly edges: readonly Edge[];
  readonly half: number;
  /** Closed line of a solid; null of a shell. */
  readonly solid: Float64Array | null;
}

/** Twice the area inside a closed line, positive when it runs anticlockwise in (s, ρ). */
function areaOf(line: Float64Array): number {
  let area = 0;
  for (let at = 0; at + 3 < line.length; at += 2) {
    area += line[at]! * line[at + 3]! - line[at + 2]! * line[at + 1]!;
  }
  return area;
}

function outwardsOf(line: Float64Array, at: number, area: number): [number, number] | null {
  const s = line[at + 2]! - line[at]!;
  const r = line[at + 3]! - line[at + 1]!;
  const length = Math.hypot(s, r);
  if (length === 0) return null;
  const sign = area > 0 ? 1 : -1;
  return [(sign * r) / length, (-sign * s) / length];
}

/** True when all of a solid's line lies inside of every edge's line. */
function isConvex(line: Float64Array): boolean {
  const area = areaOf(line);
  for (let at = 0; at + 3 < line.length; at += 2) {
    const normal = outwardsOf(line, at, area);
    if (normal === null) continue;
    for (let to = 0; to < line.length; to += 2) {
      const out = (line[to]! - line[at]!) * normal[0] + (line[to + 1]! - line[at + 1]!) * normal[1];
      if (out > 1e-9) return false;
    }
  }
  return true;
}

function targetsOf({ line, half, solid }: Section): Target[] {
  const area = areaOf(line);
  const isNormal = solid && isConvex(line);
  const edges: Edge[] = Array.from({ length: line.length / 2 - 1 }, (_, i) => ({
    line: line.slice(2 * i, 2 * i + 4),
    outwards: isNormal ? outwardsOf(line, 2 * i, area) : null,
  }));
  if (solid) return [{ edges, half, solid: line }];
  return edges.map((edge) => ({ edges: [edge], half, solid: null }));
}

/** True when a point of the plane lies inside a closed line: even-odd rule. */
function isInside(line: Float64Array, s: number, radius: number): boolean {
  let inside = false;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const r0 = line[at + 1]!;
    const r1 = line[at + 3]!;
    if (r0 > radius === r1 > radius) continue;
    const cross = line[at]! + ((radius - r0) / (r1 - r0)) * (line[at + 2]! - line[at]!);
    if (cross > s) inside = !inside;
  }
  return inside;
}

function aimAtEdge({ line }: Edge): void {
  const { second } = _plane;
  second.fill(0);
  second[0] = line[0]!;
  second[1] = line[1]!;
  second[POINT] = line[2]!;
  second[POINT + 1] = line[3]!;
  aimSegments(_plane);
}

/** Bounds both ends' height over an edge's line, on its outer side. */
function heightOver({ line }: Edge, [ns, nr]: readonly [number, number]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const at of [0, POINT]) {
    const p = _plane.first;
    const height =
      (p[at]! - line[0]!) * ns +
      (p[at + 1]! - line[1]!) * nr -
      Math.abs(p[at + 3]! * ns + p[at + 4]! * nr) -
      Math.abs(p[at + 6]! * ns + p[at + 7]! * nr) -
      p[at + REST]!;
    least = Math.min(least, height);
  }
  return least - Math.max(0, nr) * _plane.sag;
}

/** A sagitta below this, mm, or below this share of what the bound loses otherwise, is small enough. */
const FINE_SAGITTA = 0.004;
const SAGITTA_SHARE = 0.3;
/** With a larger sagitta a stretch is taken as a ball about its middle. */
const WIDEST_SAGITTA = 20;
/** Share of a piece, and length in mm, below which no stretch is halved. */
const FINEST_STRETCH = 1 / 20000;
const SHORTEST_STRETCH = 0.02;

const _found = { isCoarse: false };

/**
 * Bounds the gap of a chain, whose break points are seen from the knuckle, to sections of revolution about the hub axis.
 * Where a chain may reach into a solid that is not convex, nothing can be told: −∞.
 */
export function revolvedBounder(
  { track, radii, starts }: Pieces,
  sections: readonly Section[],
): Bounder {
  const targets = sections.flatMap(targetsOf);
  return {
    elements: stretches(radii.length, targets.length),
    isCoarse: () => _found.isCoarse,
    swings: (cell) => swingsOf(track(cell)),
    bound: (cell, element, enough) => {
      const points = track(cell);
      if (points === null) return Number.NEGATIVE_INFINITY;
      if (points.length === 0) return Number.POSITIVE_INFINITY;
      const target = targets[element.second]!;
      const thick = radii[element.first]! + target.half;
      takeStretch(cell, points, starts[element.first]!, element);
      _found.isCoarse = element.to - element.from > FINEST_STRETCH;
      const isOff =
        flatten(cell.pose, 0, _plane.first, 0) && flatten(cell.pose, POINT, _plane.first, POINT);
      _plane.sag = isOff ? sagitta(cell.pose) : Number.POSITIVE_INFINITY;
      if (_plane.sag > WIDEST_SAGITTA) return ballBound(cell.pose, target) - thick;
      return stretchBound(target, enough + thick) - thick;
    },
  };
}

/** Aims from the target's nearest edge at a point of the plane; its distance, and how high it is over the target's edges. */
function pointOver(
  { edges }: Target,
  s: number,
  radius: number,
): { apart: number; height: number } {
  const { first } = _plane;
  first.fill(0);
  first[0] = s;
  first[1] = radius;
  first.copyWithin(POINT, 0, POINT);
  _plane.sag = 0;
  let apart = Number.POSITIVE_INFINITY;
  let height = Number.NEGATIVE_INFINITY;
  for (const edge of edges) {
    aimAtEdge(edge);
    apart = Math.min(apart, _plane.distance);
    if (edge.outwards !== null) height = Math.max(height, heightOver(edge, edge.outwards));
  }
  return { apart, height };
}

/**
 * Bounds the distance of a stretch that may come near the axis: it stays within half its length and its swing of its
 * middle.
 */
function ballBound(pose: Float64Array, target: Target): number {
  const swing = Math.max(swingAt(_ends, 0), swingAt(_ends, POINT));
  const half = Math.hypot(_along[0]!, _along[1]!, _along[2]!) / 2;
  noteCoarse(half > swing);
  const a = Slot.hubAxis;
  let s = 0;
  let squared = 0;
  for (let i = 0; i < 3; i += 1) {
    const x = _ends[i]! + _along[i]! / 2;
    s += x * pose[a + i]!;
    squared += x * x;
  }
  const radius = Math.sqrt(Math.max(0, squared - s * s));
  const { apart, height } = pointOver(target, s, radius);
  const inside = target.solid !== null && isInside(target.solid, s, radius);
  return (inside ? height : apart) - half - swing;
}

/** Bounds the distance of a stretch to its target. */
function stretchBound({ edges, solid }: Target, enough: number): number {
  let apart = Number.POSITIVE_INFINITY;
  let middle = Number.POSITIVE_INFINITY;
  let height = Number.NEGATIVE_INFINITY;
  for (const edge of edges) {
    aimAtEdge(edge);
    middle = Math.min(middle, _plane.distance);
    apart = Math.min(apart, segmentBound(_plane, enough));
    if (edge.outwards !== null) height = Math.max(height, heightOver(edge, edge.outwards));
  }
  const { first } = _plane;
  if (solid === null || (apart > 0 && !isInside(solid, first[0]!, first[1]!))) {
    const best = Math.max(apart, height);
    noteCoarse(_plane.sag > Math.max(FINE_SAGITTA, SAGITTA_SHARE * (middle - best)));
    return best;
  }
  // In or near a solid only the heights hold; they ask for stretches as short as the cell lets them move.
  const length = Math.hypot(_along[0]!, _along[1]!, _along[2]!);
  noteCoarse(length > SHORTEST_STRETCH + swingAt(_ends, 0));
  return height;
}

function noteCoarse(isCoarse: boolean): void {
  _found.isCoarse &&= isCoarse;
}
