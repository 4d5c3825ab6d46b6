/** The swept surface as three reads it. */
import { BufferAttribute, BufferGeometry } from 'three';
import type { ShownSweep } from '../../state/swept.ts';

/** Stands for no solid at all, mm: infinity is no number a picture can interpolate. */
const FAR = 1e6;

export function sweptGeometry({ surface, room }: ShownSweep): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(surface.positions, 3));
  const near = room.map((value) => Math.min(FAR, value));
  geometry.setAttribute('room', new BufferAttribute(near, 2));
  geometry.setIndex(new BufferAttribute(surface.triangles, 1));
  // The mesh's own normals: the tyre's turn abruptly where one pose hands over to another.
  geometry.computeVertexNormals();
  geometry.computeBoundingSphere();
  return geometry;
}
