/** The gap of a part to a placed mesh in one pose. */
import type { MeshBVH } from 'three-mesh-bvh';
import type { MeshGap, MeshSurface } from '../../solver/index.ts';
import { type Outline, outlineFor } from './outline.ts';
import { directionToMesh, type Placing, toMesh, toVehicle } from './placing.ts';
import { axle, CLOSE, found, readyAxle, searchTriangle } from './revolved.ts';
import { nearest, nearTriangle, segment, triangle } from './segment.ts';
import { boundToSection, boundToSegment, createWalk, type Search } from './walk.ts';

/** The chain's part of a surface. */
export function createChainGap(tree: MeshBVH, placing: Placing): MeshSurface['gapToChain'] {
  const { load, walk, count } = createWalk(tree);
  const ends = new Float64Array(6);
  let gap: MeshGap;
  let radius = 0;
  let piece = 0;

  function look(at: number): void {
    if (!nearTriangle(gap.gap + radius)) return;
    gap.gap = nearest.apart - radius;
    gap.piece = piece;
    gap.hint = at;
    gap.meshPoint[0] = nearest.x;
    gap.meshPoint[1] = nearest.y;
    gap.meshPoint[2] = nearest.z;
    for (let i = 0; i < 3; i += 1) {
      gap.partPoint[i] = segment[i]! + nearest.lambda * segment[3 + i]!;
    }
  }

  const search: Search = { bound: boundToSegment, limit: () => gap.gap + radius, look };

  function loadPiece(points: Float64Array, radii: Float64Array, which: number): void {
    piece = which;
    radius = radii[which]!;
    toMesh(placing, points, 3 * which, ends, 0);
    toMesh(placing, points, 3 * which + 3, ends, 3);
    for (let i = 0; i < 3; i += 1) {
      segment[i] = ends[i]!;
      segment[3 + i] = ends[3 + i]! - ends[i]!;
    }
  }

  return (points, radii, out, beyond = Number.POSITIVE_INFINITY) => {
    gap = out;
    const { hint } = out;
    const first = out.piece < radii.length ? out.piece : 0;
    out.gap = beyond;
    if (hint >= 0 && hint < count) {
      for (let i = 0; i < radii.length; i += 1) {
        loadPiece(points, radii, i);
        load(hint);
        look(hint);
      }
    }
    for (let i = 0; i < radii.length; i += 1) {
      // The piece that was nearest comes first: the others are then soon ruled out.
      loadPiece(points, radii, (first + i) % radii.length);
      walk(search);
    }
    if (out.gap === beyond) return;
    toVehicle(placing, out.meshPoint, out.meshPoint);
    toVehicle(placing, out.partPoint, out.partPoint);
  };
}

/** The revolved part of a surface. */
export function createRevolvedGap(tree: MeshBVH, placing: Placing): MeshSurface['gapToRevolved'] {
  const { load, walk, count } = createWalk(tree);
  let outline: Outline;
  let gap: MeshGap;
  let piece = 0;

  function look(at: number): void {
    const before = found.apart;
    searchTriangle(outline, triangle);
    if (found.apart >= before) return;
    gap.piece = piece;
    gap.hint = at;
  }

  const search: Search = {
    bound: (box) => boundToSection(outline, box, found.apart),
    limit: () => found.apart - CLOSE,
    look,
  };

  /** Writes the points: the section's lies in the plane through the axis and the mesh's point. */
  function write(out: MeshGap): void {
    const point = out.meshPoint;
    point[0] = found.x;
    point[1] = found.y;
    point[2] = found.z;
    let s = 0;
    for (let i = 0; i < 3; i += 1) s += (point[i]! - axle[i]!) * axle[3 + i]!;
    let squared = 0;
    for (let i = 0; i < 3; i += 1) {
      const across = point[i]! - axle[i]! - s * axle[3 + i]!;
      out.partPoint[i] = across;
      squared += across * across;
    }
    const stretch = squared > 0 ? found.radius / Math.sqrt(squared) : 0;
    for (let i = 0; i < 3; i += 1) {
      out.partPoint[i] = axle[i]! + found.s * axle[3 + i]! + stretch * out.partPoint[i]!;
    }
    toVehicle(placing, point, point);
    toVehicle(placing, out.partPoint, out.partPoint);
  }

  return (sections, place, out, beyond = Number.POSITIVE_INFINITY) => {
    gap = out;
    toMesh(placing, place, 0, axle, 0);
    directionToMesh(placing, place, 3, axle, 3);
    readyAxle();
    found.apart = beyond;
    const { hint } = out;
    if (hint >= 0 && hint < count) {
      for (piece = 0; piece < sections.length; piece += 1) {
        outline = outlineFor(sections[piece]!);
        load(hint);
        look(hint);
      }
    }
    for (piece = 0; piece < sections.length; piece += 1) {
      outline = outlineFor(sections[piece]!);
      walk(search);
    }
    out.gap = found.apart;
    if (out.gap !== beyond) write(out);
  };
}
