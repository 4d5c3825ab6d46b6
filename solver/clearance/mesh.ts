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
}

/** The meshes of a model's obstacles by the obstacles' names; an obstacle whose file is not at hand has none. */
export type MeshSurfaces = ReadonlyMap<string, MeshSurface>;
