/** A search through the tree over a mesh's triangles, and how near its boxes can be. */
import type { Box3 } from 'three';
import type { MeshBVH } from 'three-mesh-bvh';
import type { Outline } from './outline.ts';
import { boundOfBox } from './outlineBounds.ts';
import { axle } from './revolved.ts';
import { segment, triangle } from './segment.ts';

/** What a search through the tree does at a box and at a triangle. */
export interface Search {
  /** A lower bound of what any triangle inside the box could answer. */
  readonly bound: (box: Box3) => number;
  /** Answers are of use below this. */
  readonly limit: () => number;
  /** Looks at the triangle that is loaded, whose place in the tree is `at`. */
  readonly look: (at: number) => void;
}

/** Walks the tree from the most promising box on. */
export function createWalk(tree: MeshBVH) {
  const positions = tree.geometry.getAttribute('position').array;
  const index = tree.geometry.getIndex()!.array;

  function load(at: number): void {
    for (let i = 0; i < 3; i += 1) {
      const from = 3 * index[3 * at + i]!;
      triangle[3 * i] = positions[from]!;
      triangle[3 * i + 1] = positions[from + 1]!;
      triangle[3 * i + 2] = positions[from + 2]!;
    }
  }

  function walk({ bound, limit, look }: Search): void {
    tree.shapecast({
      boundsTraverseOrder: bound,
      intersectsBounds: (_box, _isLeaf, score) => (score ?? 0) < limit(),
      intersectsRange: (offset, count) => {
        for (let at = offset; at < offset + count; at += 1) {
          load(at);
          look(at);
        }
        return false;
      },
    });
  }

  return { load, walk, count: index.length / 3 };
}

/** Lower bound of the distance between a box and `segment`. */
export function boundToSegment(box: Box3): number {
  const { min, max } = box;
  const ends = segment;
  const x = Math.max(
    0,
    min.x - Math.max(ends[0]!, ends[0]! + ends[3]!),
    Math.min(ends[0]!, ends[0]! + ends[3]!) - max.x,
  );
  const y = Math.max(
    0,
    min.y - Math.max(ends[1]!, ends[1]! + ends[4]!),
    Math.min(ends[1]!, ends[1]! + ends[4]!) - max.y,
  );
  const z = Math.max(
    0,
    min.z - Math.max(ends[2]!, ends[2]! + ends[5]!),
    Math.min(ends[2]!, ends[2]! + ends[5]!) - max.z,
  );
  const cx = (min.x + max.x) / 2 - ends[0]!;
  const cy = (min.y + max.y) / 2 - ends[1]!;
  const cz = (min.z + max.z) / 2 - ends[2]!;
  const length = ends[3]! * ends[3]! + ends[4]! * ends[4]! + ends[5]! * ends[5]!;
  const along = (cx * ends[3]! + cy * ends[4]! + cz * ends[5]!) / (length || 1);
  const t = Math.min(1, Math.max(0, along));
  const ox = cx - t * ends[3]!;
  const oy = cy - t * ends[4]!;
  const oz = cz - t * ends[5]!;
  const sx = max.x - min.x;
  const sy = max.y - min.y;
  const sz = max.z - min.z;
  return Math.max(
    Math.sqrt(x * x + y * y + z * z),
    Math.sqrt(ox * ox + oy * oy + oz * oz) - Math.sqrt(sx * sx + sy * sy + sz * sz) / 2,
  );
}

/** Lower bound of the signed distance between a box and a section about `axle`; one of `enough` is not made better. */
export function boundToSection(outline: Outline, box: Box3, enough: number): number {
  const { min, max } = box;
  const hx = (max.x - min.x) / 2;
  const hy = (max.y - min.y) / 2;
  const hz = (max.z - min.z) / 2;
  const x = min.x + hx - axle[0]!;
  const y = min.y + hy - axle[1]!;
  const z = min.z + hz - axle[2]!;
  const ax = axle[3]!;
  const ay = axle[4]!;
  const az = axle[5]!;
  const s = x * ax + y * ay + z * az;
  const rx = x - s * ax;
  const ry = y - s * ay;
  const rz = z - s * az;
  const radius = Math.sqrt(rx * rx + ry * ry + rz * rz);
  const halfS = hx * Math.abs(ax) + hy * Math.abs(ay) + hz * Math.abs(az);
  // ρ is convex: it lies above its tangent at the middle, and no corner is farther from the middle than half a diagonal.
  const fall =
    radius > 0 ? (hx * Math.abs(rx) + hy * Math.abs(ry) + hz * Math.abs(rz)) / radius : 0;
  const rise = Math.sqrt(hx * hx + hy * hy + hz * hz);
  const low = Math.max(0, radius - fall);
  return boundOfBox(outline, s - halfS, s + halfS, low, radius + rise, enough);
}
