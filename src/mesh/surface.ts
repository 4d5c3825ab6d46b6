/** A placed mesh that answers how near a part of the corner comes: the solver's `MeshSurface` over a tree of triangles. */
import type { MeshSurface } from '../../solver/index.ts';
import type { MeshTree } from './data.ts';
import { createChainGap, createRevolvedGap } from './gaps.ts';
import { createNearSection, createNearSegment } from './patches.ts';
import { type Placing, placedBox } from './placing.ts';
import { openTree } from './tree.ts';

/** Places a mesh in the vehicle. Cheap: the tree is the mesh's own and stays as it is wherever the mesh stands. */
export function createMeshSurface(data: MeshTree, placing: Placing): MeshSurface {
  const tree = openTree(data);
  return {
    bounds: placedBox(data.positions, placing),
    triangles: tree.geometry.getIndex()!.count / 3,
    gapToChain: createChainGap(tree, placing),
    gapToRevolved: createRevolvedGap(tree, placing),
    leastNearSection: createNearSection(tree, placing),
    leastNearSegment: createNearSegment(tree, placing),
  };
}
