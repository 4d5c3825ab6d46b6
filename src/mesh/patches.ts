/** Searches over patches of a placed mesh, for bounds that hold over more than one pose. */
import type { Box3 } from 'three';
import type { MeshBVH } from 'three-mesh-bvh';
import type { MeshPatch, MeshSurface } from '../../solver/index.ts';
import { outlineFor } from './outline.ts';
import { directionToMesh, type Placing, toMesh, toVehicle } from './placing.ts';
import {
  axle,
  boundTriangle,
  CLOSE,
  found,
  nearestOf,
  readyAxle,
  searchTriangle,
} from './revolved.ts';
import { nearest, nearTriangle, segment, triangle } from './segment.ts';
import { boundToSection, boundToSegment, createWalk } from './walk.ts';

/** A patch that is refilled, and its corners in the mesh's own axes. */
function createPatch(placing: Placing) {
  const own = new Float64Array(24);
  const place = new Float64Array(3);
  const patch: MeshPatch = {
    corners: new Float64Array(24),
    count: 3,
    meshPoint: new Float64Array(3),
    partPoint: new Float64Array(3),
    isInside: false,
  };

  function toCorners(count: number): void {
    patch.count = count;
    for (let at = 0; at < 3 * count; at += 3) {
      for (let i = 0; i < 3; i += 1) place[i] = own[at + i]!;
      toVehicle(placing, place, place);
      for (let i = 0; i < 3; i += 1) patch.corners[at + i] = place[i]!;
    }
  }

  return {
    patch,
    takeBox({ min, max }: Box3): void {
      for (let corner = 0; corner < 8; corner += 1) {
        own[3 * corner] = corner & 1 ? max.x : min.x;
        own[3 * corner + 1] = corner & 2 ? max.y : min.y;
        own[3 * corner + 2] = corner & 4 ? max.z : min.z;
      }
      toCorners(8);
    },
    takeTriangle(): void {
      own.set(triangle);
      toCorners(3);
    },
    /** Writes the two nearest points, given in the mesh's own axes. */
    takePoints(mx: number, my: number, mz: number, px: number, py: number, pz: number): void {
      patch.meshPoint[0] = mx;
      patch.meshPoint[1] = my;
      patch.meshPoint[2] = mz;
      patch.partPoint[0] = px;
      patch.partPoint[1] = py;
      patch.partPoint[2] = pz;
      toVehicle(placing, patch.meshPoint, patch.meshPoint);
      toVehicle(placing, patch.partPoint, patch.partPoint);
    },
  };
}

export function createNearSection(
  tree: MeshBVH,
  placing: Placing,
): MeshSurface['leastNearSection'] {
  const { walk } = createWalk(tree);
  const { patch, takeBox, takeTriangle, takePoints } = createPatch(placing);

  /** Takes a point of the mesh and the place of the section nearest to it. */
  function takeConnexion(x: number, y: number, z: number, s: number, radius: number): void {
    const wx = x - axle[0]!;
    const wy = y - axle[1]!;
    const wz = z - axle[2]!;
    const along = wx * axle[3]! + wy * axle[4]! + wz * axle[5]!;
    const rx = wx - along * axle[3]!;
    const ry = wy - along * axle[4]!;
    const rz = wz - along * axle[5]!;
    const own = Math.sqrt(rx * rx + ry * ry + rz * rz);
    const stretch = own > 0 ? radius / own : 0;
    takePoints(
      x,
      y,
      z,
      axle[0]! + s * axle[3]! + stretch * rx,
      axle[1]! + s * axle[4]! + stretch * ry,
      axle[2]! + s * axle[5]! + stretch * rz,
    );
  }

  return (section, place, swing, bound, enough) => {
    const outline = outlineFor(section);
    toMesh(placing, place, 0, axle, 0);
    directionToMesh(placing, place, 3, axle, 3);
    readyAxle();
    let least = enough;
    walk({
      bound: (box) => {
        const rough = boundToSection(outline, box, least + swing) - swing;
        if (rough >= least) return rough;
        takeBox(box);
        const x = (box.min.x + box.max.x) / 2;
        const y = (box.min.y + box.max.y) / 2;
        const z = (box.min.z + box.max.z) / 2;
        nearestOf(outline, x, y, z);
        takeConnexion(x, y, z, found.s, found.radius);
        patch.isInside = found.apart + outline.half < 0;
        return Math.max(rough, bound(patch));
      },
      limit: () => least,
      look: () => {
        if (boundTriangle(outline, triangle, least + swing) - swing >= least) return;
        found.apart = Number.POSITIVE_INFINITY;
        searchTriangle(outline, triangle);
        const rough = found.apart - CLOSE - swing;
        if (rough >= least) return;
        takeTriangle();
        takeConnexion(found.x, found.y, found.z, found.s, found.radius);
        patch.isInside = found.apart + outline.half < 0;
        least = Math.min(least, Math.max(rough, bound(patch)));
      },
    });
    return least;
  };
}

export function createNearSegment(
  tree: MeshBVH,
  placing: Placing,
): MeshSurface['leastNearSegment'] {
  const { walk } = createWalk(tree);
  const { patch, takeBox, takeTriangle, takePoints } = createPatch(placing);
  const own = new Float64Array(6);

  /** Takes a point of the mesh and the segment's point at λ. */
  function takeConnexion(x: number, y: number, z: number, lambda: number): void {
    const [px, py, pz] = [0, 1, 2].map((i) => segment[i]! + lambda * segment[3 + i]!);
    takePoints(x, y, z, px!, py!, pz!);
  }

  return (ends, swing, bound, enough) => {
    toMesh(placing, ends, 0, own, 0);
    toMesh(placing, ends, 3, own, 3);
    for (let i = 0; i < 3; i += 1) {
      segment[i] = own[i]!;
      segment[3 + i] = own[3 + i]! - own[i]!;
    }
    const [dx, dy, dz] = [segment[3]!, segment[4]!, segment[5]!];
    const squared = dx * dx + dy * dy + dz * dz;
    let least = enough;
    walk({
      bound: (box) => {
        const rough = boundToSegment(box) - swing;
        if (rough >= least) return rough;
        takeBox(box);
        const x = (box.min.x + box.max.x) / 2;
        const y = (box.min.y + box.max.y) / 2;
        const z = (box.min.z + box.max.z) / 2;
        const along = (x - segment[0]!) * dx + (y - segment[1]!) * dy + (z - segment[2]!) * dz;
        takeConnexion(x, y, z, Math.min(1, Math.max(0, squared > 0 ? along / squared : 0)));
        return Math.max(rough, bound(patch));
      },
      limit: () => least,
      look: () => {
        if (!nearTriangle(least + swing)) return;
        const rough = nearest.apart - swing;
        takeTriangle();
        takeConnexion(nearest.x, nearest.y, nearest.z, nearest.lambda);
        least = Math.min(least, Math.max(rough, bound(patch)));
      },
    });
    return least;
  };
}
