/** The swept space's surface as a closed mesh of triangles, in vehicle axes. */
import { EDGE_CORNERS, SHEETS } from './cube.ts';
import { type SweptField, sweptDistance } from './field.ts';
import { type Grid, layGrid, startTracing, type Tracing, traceCubes } from './grid.ts';
import { addPlane, createPlanes, type Planes, placeVertex } from './vertex.ts';

export interface SweptSurface {
  /** Three numbers a vertex, mm in vehicle axes. */
  readonly positions: Float32Array;
  /** Outward unit normals, three numbers a vertex. */
  readonly normals: Float32Array;
  /** Three vertices a triangle, counter-clockwise from outside. */
  readonly triangles: Uint32Array;
}

/** How near, mm, a place on an edge is brought to the surface before its last step along the tangent. */
const NEAR = 0.3;
const MOST_STEPS = 5;

/** Places where the surface cuts the grid's edges: position and normal, six numbers each, by corner · 3 + axis. */
interface Cuts {
  readonly at: Map<number, number>;
  numbers: Float64Array;
  count: number;
}

function grown(cuts: Cuts): number {
  if (6 * cuts.count === cuts.numbers.length) {
    const more = new Float64Array(2 * cuts.numbers.length);
    more.set(cuts.numbers);
    cuts.numbers = more;
  }
  cuts.count += 1;
  return 6 * (cuts.count - 1);
}

function placeOf({ low, size, step }: Grid, corner: number): [number, number, number] {
  const [nx, ny] = size;
  return [
    low[0] + step * (corner % nx),
    low[1] + step * (Math.floor(corner / nx) % ny),
    low[2] + step * Math.floor(corner / (nx * ny)),
  ];
}

/** Finds where the surface cuts the edge from `corner` along `axis` by Newton's steps within what brackets it. */
function findCut(
  tracing: Tracing,
  cuts: Cuts,
  corner: number,
  axis: number,
  isOutward: boolean,
): number {
  const { field, grid, margin, tolerance } = tracing;
  const { found } = field;
  const place = placeOf(grid, corner);
  const start = place[axis]!;
  let inner = start + (isOutward ? 0 : grid.step);
  let outer = start + (isOutward ? grid.step : 0);
  let next = (inner + outer) / 2;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    place[axis] = next;
    sweptDistance(field, place[0], place[1], place[2], tolerance);
    const off = found.distance - margin;
    if (off < 0) inner = next;
    else outer = next;
    const slope = axis === 0 ? found.x : axis === 1 ? found.y : found.z;
    const wanted = next - off / slope;
    const isBetween = (wanted - inner) * (wanted - outer) <= 0;
    next = isBetween ? wanted : (inner + outer) / 2;
    if (isBetween && Math.abs(off) < NEAR) break;
  }
  const to = grown(cuts);
  place[axis] = next;
  cuts.numbers.set(place, to);
  cuts.numbers[to + 3] = found.x;
  cuts.numbers[to + 4] = found.y;
  cuts.numbers[to + 5] = found.z;
  return to;
}

/** Corner number of a cube's corner. */
function cornerOf({ stride }: Grid, cube: number, corner: number): number {
  const [sx, sy, sz] = stride;
  return cube + (corner & 1) * sx + ((corner >> 1) & 1) * sy + (corner >> 2) * sz;
}

/** Cosine of the angle between a plane and the vertex's mean normal beyond which the cell holds a crease. */
const SMOOTH = 0.98;
/** Distance of a vertex from one of its planes, mm, from which on they do not agree. */
const APART = 0.15;
const MOST_SETTLING = 3;

function isCreased(planes: Planes, vertex: Float64Array): boolean {
  for (let at = 0; at < 6 * planes.count; at += 6) {
    let cosine = 0;
    let off = 0;
    for (let k = 0; k < 3; k += 1) {
      const along = planes.each[at + 3 + k]!;
      cosine += along * vertex[3 + k]!;
      off += along * (vertex[k]! - planes.each[at + k]!);
    }
    if (cosine < SMOOTH || Math.abs(off) > APART) return true;
  }
  return false;
}

/** Brings a vertex at a crease, where planes only say where it might be, onto the surface. */
function settle({ field, margin, tolerance }: Tracing, vertex: Float64Array): void {
  const { found } = field;
  for (let step = 0; step < MOST_SETTLING; step += 1) {
    sweptDistance(field, vertex[0]!, vertex[1]!, vertex[2]!, tolerance);
    const off = found.distance - margin;
    if (Math.abs(off) < tolerance) return;
    vertex[0]! -= off * found.x;
    vertex[1]! -= off * found.y;
    vertex[2]! -= off * found.z;
  }
}

/** Places the vertices of all sheets in one cube. */
function placeSheets(tracing: Tracing, cuts: Cuts, i: number, vertices: number[]): void {
  const { grid, cubes, insides } = tracing;
  const cube = cubes[i]!;
  const inside = insides[i]!;
  const sheets = SHEETS[inside]!;
  const low = placeOf(grid, cube);
  const half = grid.step / 2;
  const middle = [low[0] + half, low[1] + half, low[2] + half] as const;
  for (let sheet = 0; sheet < sheets.count; sheet += 1) {
    _planes.count = 0;
    for (let edge = 0; edge < 12; edge += 1) {
      if (sheets.ofEdge[edge] !== sheet) continue;
      const [near] = EDGE_CORNERS[edge]!;
      const axis = edge >> 2;
      const corner = cornerOf(grid, cube, near);
      const key = 3 * corner + axis;
      let at = cuts.at.get(key);
      if (at === undefined) {
        at = findCut(tracing, cuts, corner, axis, ((inside >> near) & 1) === 1);
        cuts.at.set(key, at);
      }
      addPlane(_planes, cuts.numbers, at);
    }
    placeVertex(_planes, middle, half, _vertex);
    if (isCreased(_planes, _vertex)) settle(tracing, _vertex);
    for (let k = 0; k < 6; k += 1) vertices.push(_vertex[k]!);
  }
}

const _planes = createPlanes();
const _vertex = new Float64Array(6);

/** Number of the vertex in a cube whose sheet holds the edge. */
function vertexOn(tracing: Tracing, starts: Int32Array, cube: number, edge: number): number {
  const i = tracing.at.get(cube)!;
  return starts[i]! + SHEETS[tracing.insides[i]!]!.ofEdge[edge]!;
}

function squaredApart(vertices: readonly number[], a: number, b: number): number {
  let sum = 0;
  for (let k = 0; k < 3; k += 1) sum += (vertices[6 * a + k]! - vertices[6 * b + k]!) ** 2;
  return sum;
}

/** Joins the four cubes about every cut edge. */
function joinQuads(tracing: Tracing, starts: Int32Array, vertices: readonly number[]): number[] {
  const { grid, cubes, insides } = tracing;
  const triangles: number[] = [];
  for (let i = 0; i < cubes.length; i += 1) {
    const cube = cubes[i]!;
    const inside = insides[i]!;
    for (let axis = 0; axis < 3; axis += 1) {
      const isNear = inside & 1;
      if (isNear === ((inside >> (1 << axis)) & 1)) continue;
      const u = grid.stride[(axis + 1) % 3]!;
      const v = grid.stride[(axis + 2) % 3]!;
      const edge = 4 * axis;
      // Round the edge, counter-clockwise about its axis.
      const a = vertexOn(tracing, starts, cube, edge);
      const b = vertexOn(tracing, starts, cube - u, edge + 1);
      const c = vertexOn(tracing, starts, cube - u - v, edge + 3);
      const d = vertexOn(tracing, starts, cube - v, edge + 2);
      const quad = isNear === 1 ? [a, b, c, d] : [a, d, c, b];
      const [p, q, r, s] = quad as [number, number, number, number];
      if (squaredApart(vertices, p, r) <= squaredApart(vertices, q, s))
        triangles.push(p, q, r, p, r, s);
      else triangles.push(q, r, s, q, s, p);
    }
  }
  return triangles;
}

/** What a turn of work says: the part done, 0 to 1. */
export type Progress = number;

/** Cubes the surface is expected to pass through, from the grid's size: a box's surface, and somewhat more. */
function expected({ size }: Grid): number {
  const [x, y, z] = size;
  return 2 * (x * y + y * z + z * x);
}

/** Part of the work that is finding cubes; the rest is placing vertices. */
const FINDING = 0.3;

/**
 * Meshes the surface that lies `margin` mm outside of the swept tyre on a grid of `step` mm, a little at a time. Each
 * vertex is found to `tolerance` mm; between vertices the surface strays by what a chord of `step` mm does.
 */
export function* meshSwept(
  field: SweptField,
  margin: number,
  step: number,
  tolerance: number,
  shift?: number,
): Generator<Progress, SweptSurface> {
  const grid = layGrid(field, margin, step, shift);
  const tracing = startTracing(field, grid, margin, tolerance);
  const most = expected(grid);
  for (const count of traceCubes(tracing)) yield FINDING * Math.min(1, count / most);
  const { cubes } = tracing;
  const cuts: Cuts = { at: new Map(), numbers: new Float64Array(6 * 4096), count: 0 };
  const vertices: number[] = [];
  const starts = new Int32Array(cubes.length);
  for (let i = 0; i < cubes.length; i += 1) {
    starts[i] = vertices.length / 6;
    placeSheets(tracing, cuts, i, vertices);
    if (i % 16 === 0) yield FINDING + ((1 - FINDING) * i) / cubes.length;
  }
  const triangles = joinQuads(tracing, starts, vertices);
  const part = (from: number): Float32Array => {
    const out = new Float32Array(vertices.length / 2);
    for (let i = 0; i < out.length; i += 1)
      out[i] = vertices[6 * Math.floor(i / 3) + from + (i % 3)]!;
    return out;
  };
  return { positions: part(0), normals: part(3), triangles: Uint32Array.from(triangles) };
}
