/** The swept surface in three geometries that share their vertices: clear, nearer than wanted, cut by a fixed part. */
import { BufferAttribute, BufferGeometry } from 'three';
import type { ShownSweep } from '../../state/swept.ts';

export interface SplitSurface {
  readonly clear: BufferGeometry;
  readonly near: BufferGeometry;
  readonly touch: BufferGeometry;
}

type State = keyof SplitSurface;

/** The state of a triangle: that of its worst corner. */
function stateOf(room: Float32Array, corners: readonly number[]): State {
  let state: State = 'clear';
  for (const corner of corners) {
    const left = room[2 * corner]!;
    if (left < 0) return 'touch';
    if (left < room[2 * corner + 1]!) state = 'near';
  }
  return state;
}

export function splitSurface({ surface, room }: ShownSweep): SplitSurface {
  const { positions, normals, triangles } = surface;
  const indices: Record<State, number[]> = { clear: [], near: [], touch: [] };
  for (let at = 0; at < triangles.length; at += 3) {
    const corners = [triangles[at]!, triangles[at + 1]!, triangles[at + 2]!];
    indices[stateOf(room, corners)].push(...corners);
  }
  const position = new BufferAttribute(positions, 3);
  const normal = new BufferAttribute(normals, 3);
  const geometryOf = (state: State): BufferGeometry => {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', position);
    geometry.setAttribute('normal', normal);
    geometry.setIndex(new BufferAttribute(Uint32Array.from(indices[state]), 1));
    return geometry;
  };
  return { clear: geometryOf('clear'), near: geometryOf('near'), touch: geometryOf('touch') };
}
