import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, EdgesGeometry, Matrix4, Sphere, Vector3 } from 'three';
import { useStore } from 'zustand';
import { type MeshObstacle, placingOf } from '../../mesh/placing.ts';
import { meshes, meshKey } from '../../state/meshes.ts';
import type { PreparedMesh } from '../../worker/meshJob.ts';
import { materials, useMaterial } from './Pieces.tsx';

/** The surface as it is in memory: the tree's own corners, drawn in one go. */
function geometryOf({ positions, normals, tree, box }: PreparedMesh): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(normals, 3));
  if (tree.index !== null) geometry.setIndex(new BufferAttribute(tree.index, 1));
  const [least, most] = [new Vector3(...box.min), new Vector3(...box.max)];
  const middle = least.clone().add(most).multiplyScalar(0.5);
  geometry.boundingSphere = new Sphere(middle, middle.distanceTo(most));
  return geometry;
}

/** Above so many triangles a mesh is a scan, whose edges would cover it. */
const MOST_EDGED = 20_000;

/** Degrees between two triangles from which on they meet in an edge. */
const SHARP = 35;

/** The surface and, of a part that was drawn rather than scanned, its edges. */
function shapeOf(mesh: PreparedMesh) {
  const surface = geometryOf(mesh);
  const edges = mesh.triangles <= MOST_EDGED ? new EdgesGeometry(surface, SHARP) : null;
  return { surface, edges };
}

function matrixOf(mesh: MeshObstacle): Matrix4 {
  const { turn: t, position: p } = placingOf(mesh);
  return new Matrix4().set(
    ...([t[0]!, t[1]!, t[2]!, p[0]] as const),
    ...([t[3]!, t[4]!, t[5]!, p[1]] as const),
    ...([t[6]!, t[7]!, t[8]!, p[2]] as const),
    ...([0, 0, 0, 1] as const),
  );
}

/** A mesh obstacle where it stands; nothing while its file is not ready. Moving it moves its matrix alone. */
export default function MeshPart({ mesh }: { readonly mesh: MeshObstacle }) {
  const status = useStore(meshes, ({ files }) => files.get(meshKey(mesh)));
  const ready = status?.state === 'ready' ? status.mesh : null;
  const shape = useMemo(() => (ready === null ? null : shapeOf(ready)), [ready]);
  const material = useMaterial('scan', 'obstacle');
  const invalidate = useThree((state) => state.invalidate);
  useEffect(
    () => () => {
      shape?.surface.dispose();
      shape?.edges?.dispose();
    },
    [shape],
  );
  useLayoutEffect(() => {
    if (shape !== null) invalidate();
  }, [shape, invalidate]);
  if (shape === null) return null;
  return (
    <group matrixAutoUpdate={false} matrix={matrixOf(mesh)}>
      <mesh name={`obstacle:${mesh.name}`} geometry={shape.surface} material={material} />
      {shape.edges !== null && <lineSegments geometry={shape.edges} material={materials.edge} />}
    </group>
  );
}
