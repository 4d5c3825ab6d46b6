/** Faces of more than three corners, cut into triangles. */
import { ShapeUtils, Vector2, Vector3 } from 'three';
import type { GrowingMesh } from './growing.ts';

/** The plane of a face by the sum over its edges (Newell), which holds for bent and hollow faces too. */
function normalOf(corners: readonly Vector3[]): Vector3 {
  const normal = new Vector3();
  corners.forEach((corner, i) => {
    const next = corners[(i + 1) % corners.length]!;
    normal.x += (corner.y - next.y) * (corner.z + next.z);
    normal.y += (corner.z - next.z) * (corner.x + next.x);
    normal.z += (corner.x - next.x) * (corner.y + next.y);
  });
  return normal.normalize();
}

/** Whether no corner turns against the others: then a fan covers the face and nothing else. */
function isConvex(corners: readonly Vector3[], normal: Vector3): boolean {
  const [before, after] = [new Vector3(), new Vector3()];
  return corners.every((corner, i) => {
    before.subVectors(corner, corners[(i + corners.length - 1) % corners.length]!);
    after.subVectors(corners[(i + 1) % corners.length]!, corner);
    return before.cross(after).dot(normal) >= 0;
  });
}

/** The axis most nearly in the plane normal to a direction. */
function axisAcross({ x, y, z }: Vector3): Vector3 {
  const [sizeX, sizeY, sizeZ] = [Math.abs(x), Math.abs(y), Math.abs(z)];
  if (sizeX <= sizeY && sizeX <= sizeZ) return new Vector3(1, 0, 0);
  return sizeY <= sizeZ ? new Vector3(0, 1, 0) : new Vector3(0, 0, 1);
}

/** Corners in the face's own plane. */
function flattened(corners: readonly Vector3[], normal: Vector3): Vector2[] {
  const across = axisAcross(normal).cross(normal).normalize();
  const up = new Vector3().crossVectors(normal, across);
  return corners.map((corner) => new Vector2(corner.dot(across), corner.dot(up)));
}

/** Adds a face given by its corners' places among the vertices. Faces of fewer than three corners have no surface. */
export function addPolygon(mesh: GrowingMesh, face: readonly number[]): void {
  if (face.length > 3) {
    const corners = face.map((vertex) => new Vector3(...mesh.place(vertex)));
    const normal = normalOf(corners);
    if (!isConvex(corners, normal)) {
      for (const [a, b, c] of ShapeUtils.triangulateShape(flattened(corners, normal), [])) {
        mesh.triangle(face[a!]!, face[b!]!, face[c!]!);
      }
      return;
    }
  }
  for (let i = 2; i < face.length; i += 1) mesh.triangle(face[0]!, face[i - 1]!, face[i]!);
}
