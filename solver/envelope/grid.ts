/** The cubes of a grid that the swept surface passes through, found by following it from one cube to the next. */

import { Cell } from './cell.ts';
import { isSwept, type SweptField } from './field.ts';

/** Corners are counted x fastest, then y, then z. */
export interface Grid {
  /** Edge of a cube, mm. */
  readonly step: number;
  /** Place of corner 0, mm. */
  readonly low: readonly [number, number, number];
  /** Corners along each axis. */
  readonly size: readonly [number, number, number];
  /** Corner number per step along x, y, z. */
  readonly stride: readonly [number, number, number];
}

/** Corners that were looked at. */
const OUTSIDE = 1;
const INSIDE = 2;

/** Keeps round numbers of a model, such as a tread at a whole mm, off the grid's planes. */
const SHIFT = 0.377;

export interface Tracing {
  readonly field: SweptField;
  readonly grid: Grid;
  readonly margin: number;
  readonly tolerance: number;
  readonly state: Uint8Array;
  /** Cubes the surface passes through, by their lowest corner, and which of their corners are inside. */
  readonly cubes: number[];
  readonly insides: number[];
  /** Place in `cubes` by lowest corner. */
  readonly at: Map<number, number>;
}

/** Room the tyre takes over all leaves of its poses, [least, greatest] along each axis, mm. */
function extentOf({ poses, profile }: SweptField): [number[], number[]] {
  const { cells, firsts } = poses;
  const low = [1, 1, 1].map(() => Number.POSITIVE_INFINITY);
  const high = [1, 1, 1].map(() => Number.NEGATIVE_INFINITY);
  for (let cell = 0; cell < firsts.length; cell += 1) {
    if (firsts[cell]! >= 0) continue;
    const at = cell * Cell.size;
    const turned = profile.reach * (cells[at + Cell.turnA]! + cells[at + Cell.turnB]!);
    const moved =
      cells[at + Cell.speedA]! + cells[at + Cell.speedB]! + turned + cells[at + Cell.stray]!;
    for (let i = 0; i < 3; i += 1) {
      const along = Math.min(1, Math.abs(cells[at + Cell.axis + i]!));
      const aside = Math.sqrt(1 - along * along);
      let reach = 0;
      for (let k = 0; k < profile.line.length; k += 2) {
        reach = Math.max(reach, Math.abs(profile.line[k]!) * along + profile.line[k + 1]! * aside);
      }
      const centre = cells[at + i]!;
      low[i] = Math.min(low[i]!, centre - reach - moved);
      high[i] = Math.max(high[i]!, centre + reach + moved);
    }
  }
  return [low, high];
}

/** Lays a grid of cubes of `step` mm around everything within `margin` of the swept tyre. */
export function layGrid(
  field: SweptField,
  margin: number,
  step: number,
  shift: number = SHIFT,
): Grid {
  const [least, most] = extentOf(field);
  const low = least.map((value) => value - margin - (1 + shift) * step);
  const size = low.map((value, i) => Math.ceil((most[i]! + margin - value) / step) + 3);
  const [x, y, z] = size as [number, number, number];
  return {
    step,
    low: low as [number, number, number],
    size: [x, y, z],
    stride: [1, x, x * y],
  };
}

export function startTracing(
  field: SweptField,
  grid: Grid,
  margin: number,
  tolerance: number,
): Tracing {
  const { size } = grid;
  return {
    field,
    grid,
    margin,
    tolerance,
    state: new Uint8Array(size[0] * size[1] * size[2]),
    cubes: [],
    insides: [],
    at: new Map(),
  };
}

function isInside(tracing: Tracing, corner: number): boolean {
  const { state, grid, field, margin, tolerance } = tracing;
  const known = state[corner]!;
  if (known !== 0) return known === INSIDE;
  const [nx, ny] = grid.size;
  const x = grid.low[0] + grid.step * (corner % nx);
  const y = grid.low[1] + grid.step * (Math.floor(corner / nx) % ny);
  const z = grid.low[2] + grid.step * Math.floor(corner / (nx * ny));
  const inside = isSwept(field, x, y, z, margin, tolerance);
  state[corner] = inside ? INSIDE : OUTSIDE;
  return inside;
}

/** A cube on the outermost surface: that of the first inside corner met from outside along y, through a posed tyre's tread. */
function seedOf(tracing: Tracing): number {
  const { grid, field } = tracing;
  const { cells, firsts } = field.poses;
  const leaf = firsts.findIndex((first) => first < 0) * Cell.size;
  const { line } = field.profile;
  let low = Number.POSITIVE_INFINITY;
  let high = 0;
  for (let k = 1; k < line.length; k += 2) {
    low = Math.min(low, line[k]!);
    high = Math.max(high, line[k]!);
  }
  // The middle of the tread's section, above the wheel centre in the wheel's own plane.
  const up = cells[leaf + Cell.axis + 2]!;
  const aside = Math.sqrt(1 - up * up);
  const at = [0, 1, 2].map((i) => {
    const towards = ((i === 2 ? 1 : 0) - up * cells[leaf + Cell.axis + i]!) / aside;
    const place = cells[leaf + i]! + ((low + high) / 2) * towards;
    return Math.round((place - grid.low[i]!) / grid.step);
  }) as [number, number, number];
  const [, sy] = grid.stride;
  const base = at[0] + at[2] * grid.stride[2];
  for (let y = grid.size[1] - 1; y > 0; y -= 1) {
    if (isInside(tracing, base + y * sy)) return base + y * sy;
  }
  return base + at[1] * sy;
}

/** Which corners of the cube are inside, corner 0 in bit 0. */
function insideOf(tracing: Tracing, cube: number): number {
  const [sx, sy, sz] = tracing.grid.stride;
  let inside = 0;
  for (let corner = 0; corner < 8; corner += 1) {
    const at = cube + (corner & 1) * sx + ((corner >> 1) & 1) * sy + (corner >> 2) * sz;
    if (isInside(tracing, at)) inside |= 1 << corner;
  }
  return inside;
}

/** Corners of the far face along x, y, z, as bits; the near face has the others. */
const FAR = [0b10101010, 0b11001100, 0b11110000] as const;

/** Follows the surface from cube to cube, some at a time; the answer of each turn is how many were found so far. */
export function* traceCubes(tracing: Tracing): Generator<number> {
  const { grid, cubes, insides, at } = tracing;
  const open = [seedOf(tracing)];
  const seen = new Set(open);
  while (open.length > 0) {
    const cube = open.pop()!;
    const inside = insideOf(tracing, cube);
    if (inside === 0 || inside === 255) continue;
    at.set(cube, cubes.length);
    cubes.push(cube);
    insides.push(inside);
    for (let axis = 0; axis < 3; axis += 1) {
      const far = FAR[axis]!;
      for (const [face, next] of [
        [far, cube + grid.stride[axis]!],
        [~far & 255, cube - grid.stride[axis]!],
      ] as const) {
        const cut = inside & face;
        if (cut === 0 || cut === face || seen.has(next)) continue;
        seen.add(next);
        open.push(next);
      }
    }
    if (cubes.length % 64 === 0) yield cubes.length;
  }
}
