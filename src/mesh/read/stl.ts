/** STL files, in both forms: triangles without shared corners and without a unit. */
import type { MeshTriangles } from '../data.ts';
import { MeshFault, MOST_TRIANGLES, shownWord, tooManyTriangles } from './fault.ts';
import { GrowingMesh } from './growing.ts';
import { createWordReader, numberOf, type WordReader } from './words.ts';

/** A binary file: 80 bytes of anything, the count, then 50 bytes a triangle. */
const HEADER = 84;
const RECORD = 50;

function statedCount(bytes: Uint8Array): number {
  if (bytes.length < HEADER) return 0;
  return new DataView(bytes.buffer, bytes.byteOffset).getUint32(80, true);
}

/** Whether the file's length is just what its count says. */
export function isBinaryStl(bytes: Uint8Array): boolean {
  return bytes.length >= HEADER && bytes.length === HEADER + RECORD * statedCount(bytes);
}

/** Whether the file begins as a text STL does. A binary one may too, but then zeros or its length give it away. */
export function isTextStl(bytes: Uint8Array): boolean {
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 512));
  return /^\s*solid\b/i.test(start) && !start.includes('\0') && !isBinaryStl(bytes);
}

function readBinary(bytes: Uint8Array): MeshTriangles {
  const count = statedCount(bytes);
  const held = Math.max(0, Math.floor((bytes.length - HEADER) / RECORD));
  if (held < count || bytes.length < HEADER) {
    throw new MeshFault(
      bytes.length < HEADER
        ? 'no STL, in neither of its two forms'
        : `a file cut off or damaged: it says ${count} triangles and holds ${held}`,
      'a whole STL file',
    );
  }
  if (count > MOST_TRIANGLES) throw tooManyTriangles(count);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const positions = new Float32Array(9 * count);
  for (let i = 0; i < count; i += 1) {
    const from = HEADER + RECORD * i + 12;
    for (let j = 0; j < 9; j += 1) positions[9 * i + j] = view.getFloat32(from + 4 * j, true);
  }
  return { positions, index: Uint32Array.from({ length: 3 * count }, (_, i) => i) };
}

function expect(words: WordReader, wanted: string, mesh: GrowingMesh): void {
  const word = words.next();
  if (word?.toLowerCase() === wanted) return;
  const triangle = mesh.triangles + 1;
  const { line } = words;
  // A wrong word with nothing behind it is half of the right one.
  if (words.next() === null) {
    throw new MeshFault(`a file cut off in triangle ${triangle}`, 'a whole STL file');
  }
  throw new MeshFault(
    `${shownWord(word ?? '')} in line ${line} (triangle ${triangle})`,
    `the word "${wanted}"`,
  );
}

function readFacet(words: WordReader, mesh: GrowingMesh): void {
  expect(words, 'normal', mesh);
  // The normal follows from the corners, and some programs write it wrong.
  for (let i = 0; i < 3; i += 1) words.next();
  expect(words, 'outer', mesh);
  expect(words, 'loop', mesh);
  const first = mesh.vertices;
  for (let i = 0; i < 3; i += 1) {
    expect(words, 'vertex', mesh);
    const [x, y, z] = [numberOf(words.next()), numberOf(words.next()), numberOf(words.next())];
    if (Number.isNaN(x + y + z)) {
      throw new MeshFault(
        `a corner without three numbers near line ${words.line} (triangle ${mesh.triangles + 1})`,
        'a whole STL file',
      );
    }
    mesh.vertex(x, y, z);
  }
  expect(words, 'endloop', mesh);
  expect(words, 'endfacet', mesh);
  mesh.triangle(first, first + 1, first + 2);
}

function readText(bytes: Uint8Array): MeshTriangles {
  const words = createWordReader(bytes);
  const mesh = new GrowingMesh();
  let isOpen = false;
  for (let word = words.next(); word !== null; word = words.next()) {
    const known = word.toLowerCase();
    if (known === 'facet' && isOpen) readFacet(words, mesh);
    else if (known === (isOpen ? 'endsolid' : 'solid')) {
      isOpen = !isOpen;
      words.skipLine();
    } else {
      throw new MeshFault(`${shownWord(word)} in line ${words.line}`, 'the word "facet"');
    }
  }
  if (isOpen) {
    throw new MeshFault(
      `a file cut off after triangle ${mesh.triangles}`,
      'a whole STL file, to its "endsolid"',
    );
  }
  return mesh.taken();
}

export function readStl(bytes: Uint8Array): MeshTriangles {
  return isTextStl(bytes) ? readText(bytes) : readBinary(bytes);
}
