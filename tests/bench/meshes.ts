/** Mesh queries: a wheel-house liner of half a million triangles over the tyre, read, made ready, asked in neighbouring poses. */
import {
  type Corner,
  createMeshGap,
  createPose,
  placeParts,
  placeRod,
  rodPointCount,
  Slot,
  solve,
  tyreSections,
  wheelSections,
} from '../../solver/index.ts';
import { placingOf } from '../../src/mesh/placing.ts';
import { readMesh } from '../../src/mesh/read/read.ts';
import { createMeshSurface } from '../../src/mesh/surface.ts';
import { buildTree } from '../../src/mesh/tree.ts';
import { sheetMesh } from '../support/meshShapes.ts';
import { nanoseconds } from './measure.ts';

const POSES = 200;
const ROUNDS = 7;

/** A binary STL of the triangles. */
function stlOf({ positions, index }: ReturnType<typeof sheetMesh>): Uint8Array {
  const data = new DataView(new ArrayBuffer(84 + (50 * index.length) / 3));
  data.setUint32(80, index.length / 3, true);
  index.forEach((vertex, i) => {
    const at = 84 + 50 * Math.floor(i / 3) + 12 + 12 * (i % 3);
    for (let k = 0; k < 3; k += 1) data.setFloat32(at + 4 * k, positions[3 * vertex + k]!, true);
  });
  return new Uint8Array(data.buffer);
}

/** Rows of a label and nanoseconds; the last numbers are those of one query. */
export function meshRows(corner: Corner): readonly (readonly [string, number])[] {
  const pose = createPose();
  solve(corner, pose, 0, 0);
  placeParts(corner, pose.data);
  const [x, y, z] = [0, 1, 2].map((i) => pose.data[Slot.centre + i]!);
  const sheet = sheetMesh(
    [760, 420],
    [707, 354],
    (along, across) =>
      Math.sqrt(Math.max(1, 470 ** 2 - along ** 2)) +
      8 * Math.sin(along / 20) * Math.sin(across / 15),
  );
  const file = stlOf(sheet);
  const reading = nanoseconds(1, 3, () => void readMesh('liner.stl', file));
  const building = nanoseconds(1, 3, () => void buildTree(sheet, 1));
  const placing = placingOf({
    name: 'liner',
    shape: 'mesh',
    file: 'liner.stl',
    position: [x!, y!, z!],
  });
  const surface = createMeshSurface(buildTree(sheet, 1), placing);
  const gap = createMeshGap();
  const axle = new Float64Array(6);
  const rod = new Float64Array(3 * rodPointCount(corner));
  const radii = new Float64Array(rodPointCount(corner) - 1).fill(11);

  /** Asks in poses along the travel, each next to the last. */
  const asked = (query: () => void): number =>
    nanoseconds(POSES, ROUNDS, () => {
      for (let i = 0; i < POSES; i += 1) {
        solve(corner, pose, -60 + (120 * i) / POSES, 20);
        placeParts(corner, pose.data);
        axle.set(pose.data.subarray(Slot.centre, Slot.centre + 3));
        axle.set(pose.data.subarray(Slot.hubAxis, Slot.hubAxis + 3), 3);
        query();
      }
    });
  const [tyre, wheel] = [tyreSections(corner.model), wheelSections(corner.model)];
  return [
    [`mesh of ${surface.triangles} triangles: reading the STL`, reading],
    ['mesh: building its tree', building],
    ['mesh query: the tyre’s gap', asked(() => surface.gapToRevolved(tyre, axle, gap))],
    ['mesh query: the wheel’s gap', asked(() => surface.gapToRevolved(wheel, axle, gap))],
    [
      'mesh query: the tyre’s gap, where only less than 20 mm matters',
      asked(() => surface.gapToRevolved(tyre, axle, gap, 20)),
    ],
    [
      'mesh query: the tie rod’s gap',
      asked(() => {
        placeRod(corner, pose.data, rod);
        surface.gapToChain(rod, radii, gap);
      }),
    ],
  ];
}
