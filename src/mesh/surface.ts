/** A placed mesh that answers how near a part of the corner comes: the solver's `MeshSurface` over a tree of triangles. */
import type { Box3 } from 'three';
import type { MeshBVH } from 'three-mesh-bvh';
import type { MeshGap, MeshPatch, MeshSurface, Section } from '../../solver/index.ts';
import type { MeshTree } from './data.ts';
import { boundOfBox, type Outline, outlineOf } from './outline.ts';
import { directionToMesh, type Placing, placedBox, toMesh, toVehicle } from './placing.ts';
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
import { openTree } from './tree.ts';

/** What a search through the tree does at a box and at a triangle. */
interface Search {
  /** A lower bound of what any triangle inside the box could answer. */
  readonly bound: (box: Box3) => number;
  /** Answers are of use below this. */
  readonly limit: () => number;
  /** Looks at the triangle that is loaded, whose place in the tree is `at`. */
  readonly look: (at: number) => void;
}

/** Walks the tree from the most promising box on. */
function createWalk(tree: MeshBVH) {
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
function boundToSegment(box: Box3): number {
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
function boundToSection(outline: Outline, box: Box3, enough: number): number {
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

/** The chain's part of a surface. */
function createChainGap(tree: MeshBVH, placing: Placing): MeshSurface['gapToChain'] {
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

const _outlines = new WeakMap<Section, Outline>();

function outlineFor(section: Section): Outline {
  const known = _outlines.get(section);
  if (known !== undefined) return known;
  const made = outlineOf(section);
  _outlines.set(section, made);
  return made;
}

/** The revolved part of a surface. */
function createRevolvedGap(tree: MeshBVH, placing: Placing): MeshSurface['gapToRevolved'] {
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

function createNearSection(tree: MeshBVH, placing: Placing): MeshSurface['leastNearSection'] {
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

function createNearSegment(tree: MeshBVH, placing: Placing): MeshSurface['leastNearSegment'] {
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

/** Places a mesh in the vehicle. Cheap: the tree is the mesh's own and stays as it is wherever the mesh stands. */
export function createMeshSurface(data: MeshTree, placing: Placing): MeshSurface {
  const tree = openTree(data);
  return {
    bounds: placedBox(data.positions, placing),
    triangles: tree.geometry.getIndex()!.count / 3,
    gapToChain: createChainGap(tree, placing),
    gapToRevolved: createRevolvedGap(tree, placing),
    leastNearSection: createNearSection(tree, placing),
    leastNearSegment: createNearSegment(tree, placing),
  };
}
