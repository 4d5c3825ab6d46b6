// Shapes made of many triangles, for distances of meshes.
import type { MeshTriangles } from '../../src/mesh/data.ts';
import { boxShape, type Shape, trianglesOf } from './meshFiles.ts';

export function meshOf(shape: Shape): MeshTriangles {
  return {
    positions: Float32Array.from(shape.vertices.flat()),
    index: Uint32Array.from(trianglesOf(shape).flat()),
  };
}

export function boxMesh(
  min: readonly [number, number, number],
  max: readonly [number, number, number],
): MeshTriangles {
  return meshOf(boxShape(min, max));
}

/** A sheet over a rectangle in x and y, its height z given for each place, in steps of equal size. */
export function sheetMesh(
  span: readonly [number, number],
  steps: readonly [number, number],
  height: (x: number, y: number) => number,
): MeshTriangles {
  const [columns, rows] = steps;
  const positions = new Float32Array(3 * (columns + 1) * (rows + 1));
  const index = new Uint32Array(6 * columns * rows);
  for (let row = 0, at = 0; row <= rows; row += 1) {
    for (let column = 0; column <= columns; column += 1, at += 3) {
      const x = (column / columns - 0.5) * span[0];
      const y = (row / rows - 0.5) * span[1];
      positions.set([x, y, height(x, y)], at);
    }
  }
  for (let row = 0, at = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1, at += 6) {
      const corner = row * (columns + 1) + column;
      const above = corner + columns + 1;
      index.set([corner, corner + 1, above, above, corner + 1, above + 1], at);
    }
  }
  return { positions, index };
}

/** A tube about the x axis, open at its ends, as flat strips whose corners lie on the tube. */
export function tubeMesh(length: number, radius: number, sides: number): MeshTriangles {
  const vertices = Array.from({ length: 2 * sides }, (_, i) => {
    const angle = (2 * Math.PI * Math.floor(i / 2)) / sides;
    const x = i % 2 === 0 ? -length / 2 : length / 2;
    return [x, radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  });
  const faces = Array.from({ length: sides }, (_, i) => {
    const next = (i + 1) % sides;
    return [2 * i, 2 * i + 1, 2 * next + 1, 2 * next];
  });
  return meshOf({ vertices, faces });
}
