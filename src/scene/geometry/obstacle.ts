/** Obstacles fixed to the body: boxes and tubes as stated. Meshes are drawn by their own part. */
import { BufferAttribute, BufferGeometry, EdgesGeometry, Matrix4, type Vector3 } from 'three';
import type { Obstacle } from '../../../solver/index.ts';
import { addPlate } from './plate.ts';
import { axisFrame, createSolid, toGeometry, toVector } from './solid.ts';
import { addTube } from './sweep.ts';

export interface ObstacleShape {
  readonly name: string;
  readonly solid: BufferGeometry;
  readonly edges: BufferGeometry;
}

type Box = Extract<Obstacle, { shape: 'box' }>;
type Tube = Extract<Obstacle, { shape: 'tube' }>;

function buildBox({ name, min, max }: Box): ObstacleShape {
  const solid = createSolid();
  const low = toVector(min);
  const half = toVector(max).sub(low).multiplyScalar(0.5);
  const at = new Matrix4().setPosition(low.clone().add(half));
  const outline = [
    [-half.x, -half.y],
    [half.x, -half.y],
    [half.x, half.y],
    [-half.x, half.y],
  ] as const;
  addPlate(solid, at, outline, -half.z, half.z);
  const geometry = toGeometry(solid);
  return { name, solid: geometry, edges: new EdgesGeometry(geometry, 35) };
}

const RING_STEPS = 28;

/** Circles about a tube's two ends, as pairs of points. */
function endRings(path: readonly Vector3[], radius: number): BufferGeometry {
  const places: number[] = [];
  for (const [end, next] of [
    [path[0]!, path[1]!],
    [path.at(-1)!, path.at(-2)!],
  ] as const) {
    const frame = axisFrame(end, next.clone().sub(end));
    const point = (step: number): number[] => {
      const angle = (2 * Math.PI * step) / RING_STEPS;
      const place = end.clone().set(radius * Math.cos(angle), radius * Math.sin(angle), 0);
      return place.applyMatrix4(frame).toArray();
    };
    for (let i = 0; i < RING_STEPS; i += 1) places.push(...point(i), ...point(i + 1));
  }
  return new BufferGeometry().setAttribute(
    'position',
    new BufferAttribute(Float32Array.from(places), 3),
  );
}

function buildTube({ name, points, diameter }: Tube): ObstacleShape {
  const solid = createSolid();
  const path = points.map(toVector);
  addTube(solid, path, diameter / 2, { segments: RING_STEPS, bend: diameter });
  return { name, solid: toGeometry(solid), edges: endRings(path, diameter / 2) };
}

/** null where the obstacle is a mesh file. */
export function buildObstacle(obstacle: Obstacle): ObstacleShape | null {
  if (obstacle.shape === 'mesh') return null;
  return obstacle.shape === 'box' ? buildBox(obstacle) : buildTube(obstacle);
}
