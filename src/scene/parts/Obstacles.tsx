import { lazy, Suspense, useEffect, useMemo } from 'react';
import type { Obstacle as ObstacleModel } from '../../../solver/index.ts';
import { afterFirstPicture } from '../../state/firstPicture.ts';
import { usePartCorner } from '../design.ts';
import { buildObstacle } from '../geometry/obstacle.ts';
import { materials, useMaterial } from './Pieces.tsx';

// A mesh is read behind the first picture, and so is what draws it.
const MeshPart = lazy(() => afterFirstPicture(() => import('./MeshPart.tsx')));

/** Obstacles as quiet see-through solids; the mesh's name is `obstacle:` and the obstacle's own. */
export function Obstacles() {
  const { model } = usePartCorner();
  return (model.obstacles ?? []).map((obstacle) =>
    obstacle.shape === 'mesh' ? (
      <Suspense key={obstacle.name} fallback={null}>
        <MeshPart mesh={obstacle} />
      </Suspense>
    ) : (
      <Obstacle key={obstacle.name} obstacle={obstacle} />
    ),
  );
}

function Obstacle({ obstacle }: { obstacle: ObstacleModel }) {
  const key = JSON.stringify(obstacle);
  // biome-ignore lint/correctness/useExhaustiveDependencies: an edit makes the obstacle anew; its value counts.
  const shape = useMemo(() => buildObstacle(obstacle), [key]);
  const material = useMaterial('obstacle', 'obstacle');
  useEffect(
    () => () => {
      shape?.solid.dispose();
      shape?.edges.dispose();
    },
    [shape],
  );
  if (shape === null) return null;
  return (
    <group name={`obstacle:${shape.name}`}>
      <mesh name={`obstacle:${shape.name}`} geometry={shape.solid} material={material} />
      <lineSegments geometry={shape.edges} material={materials.edge} />
    </group>
  );
}
