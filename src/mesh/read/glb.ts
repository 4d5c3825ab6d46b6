/**
 * GLB files (glTF 2.0 in one file): the surfaces of every body in the file's scene, each where its nodes put it.
 * Its axes are turned into the vehicle's: glTF's z is forward, its x left, its y up.
 */
import { Matrix4, Quaternion, Vector3 } from 'three';
import type { MeshTriangles } from '../data.ts';
import { createAccessors } from './accessors.ts';
import { MeshFault } from './fault.ts';
import { type Glb, type GlbNode, type GlbPrimitive, openGlb } from './glbFile.ts';
import { GrowingMesh } from './growing.ts';

/** How a primitive's corners make triangles. */
const TRIANGLES = 4;
const STRIP = 5;
const FAN = 6;

function matrixOf(node: GlbNode): Matrix4 {
  if (node.matrix !== undefined) return new Matrix4().fromArray(node.matrix);
  return new Matrix4().compose(
    new Vector3(...(node.translation ?? [0, 0, 0])),
    new Quaternion(...(node.rotation ?? [0, 0, 0, 1])),
    new Vector3(...(node.scale ?? [1, 1, 1])),
  );
}

type Corner = (at: number) => number;

function addTriangles(mesh: GrowingMesh, mode: number, count: number, corner: Corner): void {
  if (mode === TRIANGLES) {
    for (let i = 0; i + 2 < count; i += 3) mesh.triangle(corner(i), corner(i + 1), corner(i + 2));
  } else if (mode === STRIP) {
    // Every other triangle of a strip runs the other way round; for distances it is the same triangle.
    for (let i = 0; i + 2 < count; i += 1) mesh.triangle(corner(i), corner(i + 1), corner(i + 2));
  } else if (mode === FAN) {
    for (let i = 1; i + 1 < count; i += 1) mesh.triangle(corner(0), corner(i), corner(i + 1));
  }
}

/** Reads the scene of one file into a mesh. */
function createReader({ json, body }: Glb) {
  const mesh = new GrowingMesh();
  const accessors = createAccessors(json, body);
  const place = new Vector3();
  const seen = new Set<number>();

  function addPrimitive(primitive: GlbPrimitive, matrix: Matrix4): void {
    const mode = primitive.mode ?? TRIANGLES;
    const at = primitive.attributes?.['POSITION'];
    if (at === undefined || mode < TRIANGLES) return;
    if (primitive.extensions?.['KHR_draco_mesh_compression'] !== undefined) {
      throw new MeshFault('compressed surfaces', 'a GLB file without compression');
    }
    const first = mesh.vertices;
    const positions = accessors(at, 'VEC3');
    for (let i = 0; i + 2 < positions.length; i += 3) {
      place.set(positions[i]!, positions[i + 1]!, positions[i + 2]!).applyMatrix4(matrix);
      mesh.vertex(place.z, place.x, place.y);
    }
    const vertices = positions.length / 3;
    if (primitive.indices === undefined) {
      addTriangles(mesh, mode, vertices, (i) => first + i);
      return;
    }
    const corners = accessors(primitive.indices, 'SCALAR');
    const wrong = corners.find((corner) => corner >= vertices);
    if (wrong !== undefined) {
      throw new MeshFault(`the corner ${wrong}`, `one of the ${vertices} vertices of its body`);
    }
    addTriangles(mesh, mode, corners.length, (i) => first + corners[i]!);
  }

  function addNode(at: number, outer: Matrix4): void {
    const node = json.nodes?.[at];
    if (node === undefined || seen.has(at)) {
      throw new MeshFault(
        'nodes that lead nowhere or in a circle',
        'a GLB file that is not damaged',
      );
    }
    seen.add(at);
    if (node.skin !== undefined) throw new MeshFault('a body that bends (a skin)', 'rigid bodies');
    if (node.extensions?.['EXT_mesh_gpu_instancing'] !== undefined) {
      throw new MeshFault('instanced bodies', 'bodies of their own: export without instancing');
    }
    const matrix = new Matrix4().multiplyMatrices(outer, matrixOf(node));
    if (node.mesh !== undefined) {
      for (const primitive of json.meshes?.[node.mesh]?.primitives ?? []) {
        addPrimitive(primitive, matrix);
      }
    }
    for (const child of node.children ?? []) addNode(child, matrix);
  }

  return { mesh, addNode };
}

/** Nodes that no other has below it. */
function rootsOf({ json }: Glb): readonly number[] {
  const scene = json.scenes?.[json.scene ?? 0];
  if (scene !== undefined) return scene.nodes ?? [];
  const below = new Set((json.nodes ?? []).flatMap(({ children }) => children ?? []));
  return (json.nodes ?? []).map((_, i) => i).filter((i) => !below.has(i));
}

export function readGlb(bytes: Uint8Array): MeshTriangles {
  const file = openGlb(bytes);
  const { mesh, addNode } = createReader(file);
  try {
    for (const root of rootsOf(file)) addNode(root, new Matrix4());
  } catch (thrown) {
    if (thrown instanceof MeshFault) throw thrown;
    // The JSON may hold anything: a number where a list should be ends here.
    throw new MeshFault('contents of another form', 'a GLB file that is not damaged');
  }
  return mesh.taken();
}
