/** OBJ files: their vertices and faces. Materials, textures, normals, lines and points say nothing of a surface's place. */
import type { MeshTriangles } from '../data.ts';
import { MeshFault, shownWord } from './fault.ts';
import { GrowingMesh } from './growing.ts';
import { addPolygon } from './polygon.ts';
import { createWordReader, numberOf, type WordReader } from './words.ts';

/** Statements of curved surfaces: leaving them out would leave a hole in the obstacle. */
const CURVED = new Set(['surf', 'cstype', 'curv', 'curv2', 'vp', 'bzp', 'bsp', 'cdc', 'cdp']);

function readVertex(words: WordReader, mesh: GrowingMesh): void {
  const [x, y, z] = [
    numberOf(words.nextOnLine()),
    numberOf(words.nextOnLine()),
    numberOf(words.nextOnLine()),
  ];
  if (Number.isNaN(x + y + z)) {
    throw new MeshFault(`a vertex without three numbers in line ${words.line}`, 'v x y z');
  }
  mesh.vertex(x, y, z);
}

/** The vertex a corner such as 7/2/5 names: from 1, or from the last one backwards. */
function cornerOf(word: string, words: WordReader, mesh: GrowingMesh): number {
  const number = numberOf(word.split('/', 1)[0] ?? '');
  const vertex = number < 0 ? mesh.vertices + number : number - 1;
  if (!Number.isInteger(number) || !(vertex >= 0 && vertex < mesh.vertices)) {
    throw new MeshFault(
      `the corner ${shownWord(word)} in line ${words.line}`,
      `one of the ${mesh.vertices} vertices above it`,
    );
  }
  return vertex;
}

function readFace(words: WordReader, mesh: GrowingMesh): void {
  const face: number[] = [];
  for (let word = words.nextOnLine(); word !== null; word = words.nextOnLine()) {
    face.push(cornerOf(word, words, mesh));
  }
  if (face.length < 3) {
    throw new MeshFault(
      `a face of ${face.length} corners in line ${words.line}`,
      'at least three corners',
    );
  }
  addPolygon(mesh, face);
}

export function readObj(bytes: Uint8Array): MeshTriangles {
  const words = createWordReader(bytes);
  const mesh = new GrowingMesh();
  do {
    const word = words.nextOnLine();
    if (word === 'v') readVertex(words, mesh);
    else if (word === 'f' || word === 'fo') readFace(words, mesh);
    else if (word !== null && CURVED.has(word)) {
      throw new MeshFault(
        `a curved surface ("${word}" in line ${words.line})`,
        'flat faces only: export the part as triangles',
      );
    }
  } while (words.skipLine());
  if (mesh.vertices === 0) throw new MeshFault('no vertices', 'an OBJ file with faces');
  return mesh.taken();
}
