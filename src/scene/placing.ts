/** Writes places of the pose buffer into transforms, in place. Whatever is not a number hides its object. */
import { Matrix4, type Object3D } from 'three';
import type { Vector3 as Point } from '../../solver/index.ts';
import type { Frame } from '../../solver/linkage/frames.ts';

type Flat = ArrayLike<number>;

const _frame = new Matrix4();

function isFinitePlace(elements: readonly number[]): boolean {
  let sum = 0;
  for (let i = 0; i < 16; i += 1) sum += elements[i]!;
  return Number.isFinite(sum);
}

function settle(object: Object3D, matrix: Matrix4): void {
  object.visible = isFinitePlace(matrix.elements);
  if (!object.visible) return;
  object.matrix.copy(matrix);
  object.matrixWorldNeedsUpdate = true;
}

/** Matrix of a design-pose frame, its inverse taken: what carries design-pose geometry into the body's own axes. */
export function inverseOf({ origin, axes }: Frame): Matrix4 {
  const [a, b, c] = axes;
  const matrix = new Matrix4();
  matrix.set(
    a[0],
    b[0],
    c[0],
    origin[0],
    a[1],
    b[1],
    c[1],
    origin[1],
    a[2],
    b[2],
    c[2],
    origin[2],
    0,
    0,
    0,
    1,
  );
  return matrix.invert();
}

/** Writes the frame whose origin and three axes stand at two places of a buffer. */
function readFrame(data: Flat, origin: number, frame: number, out: Matrix4): Matrix4 {
  const f = frame;
  return out.set(
    data[f]!,
    data[f + 3]!,
    data[f + 6]!,
    data[origin]!,
    data[f + 1]!,
    data[f + 4]!,
    data[f + 7]!,
    data[origin + 1]!,
    data[f + 2]!,
    data[f + 5]!,
    data[f + 8]!,
    data[origin + 2]!,
    0,
    0,
    0,
    1,
  );
}

/** Places an object at a frame of the buffer; `design`, if given, first carries design-pose geometry into that frame. */
export function placeInFrame(
  object: Object3D,
  data: Flat,
  origin: number,
  frame: number,
  design?: Matrix4,
): void {
  readFrame(data, origin, frame, _frame);
  if (design !== undefined) _frame.multiply(design);
  settle(object, _frame);
}

/** Places an object at (x, y, z) with z along a direction (any length) and x as near to the vehicle's x as may be. */
export function placeAlong(
  object: Object3D,
  x: number,
  y: number,
  z: number,
  dx: number,
  dy: number,
  dz: number,
): void {
  const size = Math.sqrt(dx * dx + dy * dy + dz * dz);
  const zx = dx / size;
  const zy = dy / size;
  const zz = dz / size;
  // Vehicle x made square to z; where they are nearly parallel, vehicle y instead.
  const useX = Math.abs(zx) < 0.96;
  const along = useX ? zx : zy;
  let ax = (useX ? 1 : 0) - along * zx;
  let ay = (useX ? 0 : 1) - along * zy;
  let az = -along * zz;
  const across = Math.sqrt(ax * ax + ay * ay + az * az);
  ax /= across;
  ay /= across;
  az /= across;
  _frame.set(
    ax,
    zy * az - zz * ay,
    zx,
    x,
    ay,
    zz * ax - zx * az,
    zy,
    y,
    az,
    zx * ay - zy * ax,
    zz,
    z,
    0,
    0,
    0,
    1,
  );
  settle(object, _frame);
}

/** A point or direction carried by a body: where the body's origin and frame stand, and the components in it. */
export interface Carried {
  readonly origin: number;
  readonly frame: number;
  readonly at: Float64Array;
}

/** Fixes a design-pose direction (of any length) or, with `isPoint`, a point to a body. */
export function carried(
  design: Frame,
  slots: { readonly origin: number; readonly frame: number },
  value: Point,
  isPoint: boolean,
): Carried {
  const base = isPoint ? design.origin : ([0, 0, 0] as const);
  const from = [value[0] - base[0], value[1] - base[1], value[2] - base[2]] as const;
  const at = Float64Array.from(
    design.axes.map((axis) => axis[0] * from[0] + axis[1] * from[1] + axis[2] * from[2]),
  );
  return { origin: slots.origin, frame: slots.frame, at };
}

/** Writes a carried direction into three places of `out`. */
export function carryDirection(
  { frame, at }: Carried,
  data: Flat,
  out: Float64Array,
  to: number,
): void {
  for (let k = 0; k < 3; k += 1) {
    out[to + k] =
      at[0]! * data[frame + k]! + at[1]! * data[frame + 3 + k]! + at[2]! * data[frame + 6 + k]!;
  }
}

/** Writes a carried point into three places of `out`. */
export function carryPoint(point: Carried, data: Flat, out: Float64Array, to: number): void {
  carryDirection(point, data, out, to);
  for (let k = 0; k < 3; k += 1) out[to + k] = out[to + k]! + data[point.origin + k]!;
}

/** Writes the unit direction from one buffer's place to another's, and returns the distance. */
export function directionBetween(
  from: Flat,
  a: number,
  to: Flat,
  b: number,
  out: Float64Array,
  at: number,
): number {
  const x = to[b]! - from[a]!;
  const y = to[b + 1]! - from[a + 1]!;
  const z = to[b + 2]! - from[a + 2]!;
  const size = Math.sqrt(x * x + y * y + z * z);
  out[at] = x / size;
  out[at + 1] = y / size;
  out[at + 2] = z / size;
  return size;
}
