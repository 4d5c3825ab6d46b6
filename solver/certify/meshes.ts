/**
 * Moving parts against a mesh fixed to the body. The mesh is parted into boxes and triangles; each is held apart from the
 * part by a plane across their shortest connexion at the cell's centre, and how near that plane the part can come over
 * the cell is linear but for the square of the cell's size.
 */
import { createMeshGap, type MeshPatch, type MeshSurface } from '../clearance/mesh.ts';
import type { Section } from '../clearance/section.ts';
import { Slot } from '../linkage/slots.ts';
import type { Cell } from './cells.ts';
import { type Bounder, type Pieces, stretches, swingsOf } from './element.ts';
import { reachBound } from './hull.ts';
import type { Motion } from './motion.ts';
import { aim, createSeparation, POINT, segmentBound } from './separation.ts';
import type { Triple } from './taylor.ts';
import { ringSwings, swingAt } from './whole.ts';

/** A mesh's distances are exact to this, mm. */
const MESH_ROUNDING = 0.01;

const _space = createSeparation();
const _ends = new Float64Array(6);

/** Copies the corners of a patch, which stand still; a triangle's nearest edge comes first. */
function takePatch({ corners, count }: MeshPatch): void {
  const { second } = _space;
  second.fill(0);
  _space.secondCount = count;
  for (let corner = 0; corner < count; corner += 1) {
    for (let i = 0; i < 3; i += 1) second[corner * POINT + i] = corners[3 * corner + i]!;
  }
}

/** Puts the corner with this number last, so that the edge across from it is the hull's first. */
function putLast(corner: number): void {
  const { second } = _space;
  for (let i = 0; i < 3; i += 1) {
    const kept = second[2 * POINT + i]!;
    second[2 * POINT + i] = second[corner * POINT + i]!;
    second[corner * POINT + i] = kept;
  }
}

/** Bounds the distance of a patch to the moving segment in `_space`. */
function patchToSegment(patch: MeshPatch, enough: number): number {
  const { meshPoint: m, partPoint: p, count } = patch;
  takePatch(patch);
  aim(_space, p[0]! - m[0]!, p[1]! - m[1]!, p[2]! - m[2]!);
  let best = segmentBound(_space, enough);
  for (let corner = 0; count === 3 && corner < 2 && best < enough; corner += 1) {
    putLast(corner);
    best = Math.max(best, segmentBound(_space, enough));
  }
  return best;
}

/** Bounds the gap of a chain, whose break points are seen from the ground, to a mesh, piece by piece. */
export function chainMeshBounder({ track, radii, starts }: Pieces, surface: MeshSurface): Bounder {
  return {
    elements: stretches(radii.length, 1),
    isCoarse: () => false,
    swings: (cell) => swingsOf(track(cell)),
    bound: (cell, element, enough) => {
      const over = track(cell);
      if (over === null) return Number.NEGATIVE_INFINITY;
      if (over.length === 0) return Number.POSITIVE_INFINITY;
      const at = starts[element.first]! * POINT;
      const radius = radii[element.first]!;
      for (let i = 0; i < 3; i += 1) {
        _ends[i] = over[at + i]!;
        _ends[3 + i] = over[at + POINT + i]!;
      }
      for (let i = 0; i < 2 * POINT; i += 1) _space.first[i] = over[at + i]!;
      const swing = Math.max(swingAt(over, at), swingAt(over, at + POINT)) + MESH_ROUNDING;
      const wanted = enough + radius;
      const bound = (patch: MeshPatch): number => patchToSegment(patch, wanted);
      return surface.leastNearSegment(_ends, swing, bound, wanted) - radius;
    },
  };
}

/** The greatest n·corner of a patch. */
function farthest({ corners, count }: MeshPatch, { x, y, z }: Triple): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < 3 * count; at += 3) {
    most = Math.max(most, x * corners[at]! + y * corners[at + 1]! + z * corners[at + 2]!);
  }
  return most;
}

function unitOf(x: number, y: number, z: number): Triple | null {
  const size = Math.sqrt(x * x + y * y + z * z);
  return size > 0 ? { x: x / size, y: y / size, z: z / size } : null;
}

/** n without its part along an edge of the patch. */
function squareTo({ corners }: MeshPatch, from: number, to: number, n: Triple): Triple | null {
  const x = corners[3 * to]! - corners[3 * from]!;
  const y = corners[3 * to + 1]! - corners[3 * from + 1]!;
  const z = corners[3 * to + 2]! - corners[3 * from + 2]!;
  const squared = x * x + y * y + z * z;
  const along = squared > 0 ? (n.x * x + n.y * y + n.z * z) / squared : 0;
  return unitOf(n.x - along * x, n.y - along * y, n.z - along * z);
}

/** The triangle's own normal, on the side of n. */
function normalOf({ corners: c }: MeshPatch, n: Triple): Triple | null {
  const [ux, uy, uz] = [c[3]! - c[0]!, c[4]! - c[1]!, c[5]! - c[2]!];
  const [vx, vy, vz] = [c[6]! - c[0]!, c[7]! - c[1]!, c[8]! - c[2]!];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const sign = x * n.x + y * n.y + z * n.z < 0 ? -1 : 1;
  return unitOf(sign * x, sign * y, sign * z);
}

const EDGES = [
  [0, 1],
  [1, 2],
  [2, 0],
] as const;

/** A cell that is enclosed. */
type Enclosed = Cell & { readonly motion: Motion };

/**
 * Bounds the gap of a patch to a convex section. Any direction bounds; the connexion's is found to a hundredth only, so
 * that directions square to what the triangle is nearest by are tried beside it.
 */
function patchToSection(
  cell: Enclosed,
  sections: readonly [Section],
  patch: MeshPatch,
  enough: number,
): number {
  const { meshPoint: m, partPoint: p, count, isInside } = patch;
  const sign = isInside ? -1 : 1;
  const n = unitOf(sign * (p[0]! - m[0]!), sign * (p[1]! - m[1]!), sign * (p[2]! - m[2]!));
  if (n === null) return Number.NEGATIVE_INFINITY;
  const along = (direction: Triple): number =>
    reachBound(cell, sections, direction) - farthest(patch, direction);
  let best = along(n);
  if (count !== 3 || best >= enough) return best;
  const normal = normalOf(patch, n);
  if (normal !== null) best = Math.max(best, along(normal));
  for (const [from, to] of EDGES) {
    if (best >= enough) return best;
    const square = squareTo(patch, from, to, n);
    if (square !== null) best = Math.max(best, along(square));
  }
  return best;
}

/** Sections whose hulls together hold the given ones: of a shell every edge, of a solid the whole. */
function convexParts(section: Section): Section[] {
  if (section.solid) return [section];
  return Array.from({ length: section.line.length / 2 - 1 }, (_, i) => ({
    ...section,
    line: section.line.slice(2 * i, 2 * i + 4),
  }));
}

const _axle = new Float64Array(6);

/**
 * Bounds the gap of sections of revolution about the hub axis to a mesh. Inside a ring its hull tells nothing: there
 * speed alone does.
 */
export function sectionsMeshBounder(all: readonly Section[], surface: MeshSurface): Bounder {
  const parts = all.flatMap(convexParts).map((section) => [section] as const);
  const answer = createMeshGap();
  return {
    elements: stretches(parts.length, 1),
    isCoarse: () => false,
    swings: (cell) => ringSwings(cell, all) ?? { travel: 1, rack: 1 },
    bound: (cell, element, enough) => {
      const { motion, pose } = cell;
      const part = parts[element.first]!;
      const moved = ringSwings(cell, part);
      if (motion === null || moved === null) return Number.NEGATIVE_INFINITY;
      for (let i = 0; i < 3; i += 1) {
        _axle[i] = pose[Slot.centre + i]!;
        _axle[3 + i] = pose[Slot.hubAxis + i]!;
      }
      const swing = moved.travel + moved.rack + moved.rest + MESH_ROUNDING;
      const enclosed = { ...cell, motion };
      const bound = (patch: MeshPatch): number => patchToSection(enclosed, part, patch, enough);
      const apart = surface.leastNearSection(part[0], _axle, swing, bound, enough);
      if (apart >= enough) return apart;
      surface.gapToRevolved(part, _axle, answer, enough + swing);
      return Math.max(apart, answer.gap - swing);
    },
  };
}
