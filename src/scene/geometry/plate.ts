/** Flat plates and blocks: an outline in local x, y given a thickness along local z. */
import { type Matrix4, ShapeUtils, Vector2, type Vector3 } from 'three';
import type { SectionPoint } from '../../../solver/index.ts';
import { addQuad, addVertex, type Solid } from './solid.ts';

/** Adds a plate between z = low and z = high; the outline runs counter-clockwise and is not closed. */
export function addPlate(
  solid: Solid,
  at: Matrix4,
  outline: readonly SectionPoint[],
  low: number,
  high: number,
): void {
  outline.forEach(([x, y], i) => {
    const [x1, y1] = outline[(i + 1) % outline.length]!;
    const size = Math.hypot(x1 - x, y1 - y) || 1;
    const nx = (y1 - y) / size;
    const ny = -(x1 - x) / size;
    addQuad(
      solid,
      addVertex(solid, at, x, y, low, nx, ny, 0),
      addVertex(solid, at, x1, y1, low, nx, ny, 0),
      addVertex(solid, at, x1, y1, high, nx, ny, 0),
      addVertex(solid, at, x, y, high, nx, ny, 0),
    );
  });
  addFace(solid, at, outline, high, 1);
  addFace(solid, at, outline, low, -1);
}

/** Fills an outline at height z; `side` +1 faces along local z, −1 against it. */
export function addFace(
  solid: Solid,
  at: Matrix4,
  outline: readonly SectionPoint[],
  z: number,
  side: 1 | -1,
): void {
  const start = solid.positions.length / 3;
  for (const [x, y] of outline) addVertex(solid, at, x, y, z, 0, 0, side);
  const contour = outline.map(([x, y]) => new Vector2(x, y));
  for (const [a, b, c] of ShapeUtils.triangulateShape(contour, []) as [number, number, number][]) {
    const area = ShapeUtils.area([contour[a]!, contour[b]!, contour[c]!]);
    const forward = area > 0 === side > 0;
    solid.indices.push(start + a, start + (forward ? b : c), start + (forward ? c : b));
  }
}

/** Rectangle with cut corners, centred. */
export function block(width: number, height: number, corner: number): SectionPoint[] {
  const x = width / 2;
  const y = height / 2;
  const c = Math.min(corner, x, y);
  return [
    [-x + c, -y],
    [x - c, -y],
    [x, -y + c],
    [x, y - c],
    [x - c, y],
    [-x + c, y],
    [-x, y - c],
    [-x, -y + c],
  ];
}

/** A plate given by points that lie in one plane (as nearly as they do), `normal` pointing to its upper side. */
export function addPlateThrough(
  solid: Solid,
  at: Matrix4,
  points: readonly Vector3[],
  thickness: number,
): void {
  const inverse = at.clone().invert();
  const outline = points.map((point): SectionPoint => {
    const local = point.clone().applyMatrix4(inverse);
    return [local.x, local.y];
  });
  const area = ShapeUtils.area(outline.map(([x, y]) => new Vector2(x, y)));
  if (area < 0) outline.reverse();
  addPlate(solid, at, outline, -thickness / 2, thickness / 2);
}
