/** Obstacles fixed to the body: tubes and boxes exactly as stated. A mesh obstacle is not drawn. */
import { type BufferGeometry, EdgesGeometry, Matrix4, Vector3 } from 'three';
import type { Obstacle } from '../../../solver/index.ts';
import { addPlate } from './plate.ts';
import { addBall } from './revolve.ts';
import { createSolid, toGeometry, toVector } from './solid.ts';
import { addTube } from './sweep.ts';

export interface ObstacleShape {
  readonly name: string;
  readonly solid: BufferGeometry;
  readonly edges: BufferGeometry;
}

/** null where the obstacle is a mesh file. */
export function buildObstacle(obstacle: Obstacle): ObstacleShape | null {
  if (obstacle.shape === 'mesh') return null;
  const solid = createSolid();
  if (obstacle.shape === 'box') {
    const low = toVector(obstacle.min);
    const half = toVector(obstacle.max).sub(low).multiplyScalar(0.5);
    const at = new Matrix4().setPosition(low.clone().add(half));
    const outline = [
      [-half.x, -half.y],
      [half.x, -half.y],
      [half.x, half.y],
      [-half.x, half.y],
    ] as const;
    addPlate(solid, at, outline, -half.z, half.z);
  } else {
    const path = obstacle.points.map(toVector);
    for (let i = 1; i < path.length; i += 1)
      addTube(solid, [path[i - 1] ?? new Vector3(), path[i]!], obstacle.diameter / 2, {
        segments: 28,
      });
    for (const corner of path.slice(1, -1)) addBall(solid, corner, obstacle.diameter / 2, 24);
  }
  const geometry = toGeometry(solid);
  return { name: obstacle.name, solid: geometry, edges: new EdgesGeometry(geometry, 35) };
}
