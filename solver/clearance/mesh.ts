/**
 * A mesh obstacle as the solver sees it: a surface fixed to the body that answers how near a part comes. What answers is
 * made outside of the solver, from a file's triangles; the solver only asks.
 */
import type { Vector3 } from '../model/model.ts';
import type { Section } from './section.ts';

/** The least distance between a mesh and a part, and where it is. Made once, refilled by every question. */
export interface MeshGap {
  /** mm; negative when they overlap. */
  gap: number;
  /** Nearest point of the mesh, vehicle axes, mm. */
  readonly meshPoint: Float64Array;
  /** Nearest point of the part's centreline, or of its section's mid-surface in the same plane through the axis. */
  readonly partPoint: Float64Array;
  /** Which piece of the chain, or which of the sections, it is. */
  piece: number;
  /** Where the answer was found, tried first the next time: nearby poses have it nearby. */
  hint: number;
}

export function createMeshGap(): MeshGap {
  return {
    gap: Number.POSITIVE_INFINITY,
    meshPoint: new Float64Array(3),
    partPoint: new Float64Array(3),
    piece: 0,
    hint: -1,
  };
}

/**
 * The surface of a mesh obstacle, placed in the vehicle. It may be open: it has no inside. Answers are exact to 0.01 mm.
 * Where the gap is not less than `beyond`, the answer is `beyond` itself and the points stay as they were: a search for a
 * least value needs no more, and far parts cost nothing.
 */
export interface MeshSurface {
  /** The box about the placed mesh, vehicle axes, mm. */
  readonly bounds: { readonly min: Vector3; readonly max: Vector3 };
  readonly triangles: number;
  /**
   * Least distance to a thick polyline: `points` flat, three a break point, vehicle axes, mm; `radii` one a piece. Where
   * the centreline of a piece meets the mesh the gap is minus its radius.
   */
  gapToChain(points: Float64Array, radii: Float64Array, out: MeshGap, beyond?: number): void;
  /**
   * Least distance to sections of revolution about an axle: `axle` holds the centre (s = 0) and the unit axis, six
   * numbers. Where a mid-surface meets the mesh the gap is minus its half thickness; inside a solid section it is minus
   * the depth of the mesh's deepest point.
   */
  gapToRevolved(
    sections: readonly Section[],
    axle: Float64Array,
    out: MeshGap,
    beyond?: number,
  ): void;
  /**
   * The least of `bound` over patches that together hold the whole mesh, and `enough` at most: a search by parting, for
   * bounds that hold over more than one pose. `bound` answers a lower bound of what any point of the patch's hull could;
   * patches farther from the section than the least plus `swing` are not asked about.
   */
  leastNearSection(
    section: Section,
    axle: Float64Array,
    swing: number,
    bound: (patch: MeshPatch) => number,
    enough: number,
  ): number;
  /** As `leastNearSection`, for a segment without thickness: its two ends, six numbers. */
  leastNearSegment(
    ends: Float64Array,
    swing: number,
    bound: (patch: MeshPatch) => number,
    enough: number,
  ): number;
}

/** Something of a mesh: a box about many triangles, or one of them. Refilled for every question. */
export interface MeshPatch {
  /** Its corners, three numbers each, vehicle axes, mm: it lies within their hull. */
  readonly corners: Float64Array;
  /** Three of a triangle, eight of a box. */
  count: number;
  /** A point of the patch, of a triangle the nearest one; and the part's point nearest to that. */
  readonly meshPoint: Float64Array;
  readonly partPoint: Float64Array;
  /** Whether the mesh's point lies inside a solid section. */
  isInside: boolean;
}

/** The meshes of a model's obstacles by the obstacles' names; an obstacle whose file is not at hand has none. */
export type MeshSurfaces = ReadonlyMap<string, MeshSurface>;
