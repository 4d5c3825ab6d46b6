/** The one door for mesh files: bytes in, triangles or a fault in words out. Never throws, whatever it is given. */
import type { MeshTriangles } from '../data.ts';
import { endingOf } from '../names.ts';
import { MeshFault, tooLarge } from './fault.ts';
import { readGlb } from './glb.ts';
import { isGlb } from './glbFile.ts';
import { readObj } from './obj.ts';
import { readPly } from './ply.ts';
import { isBinaryStl, isTextStl, readStl } from './stl.ts';

export type MeshReading =
  | { readonly ok: true; readonly mesh: MeshTriangles }
  | { readonly ok: false; readonly found: string; readonly wanted: string };

const WANTED = 'an STL, PLY, OBJ or GLB file';

const READERS: Readonly<Record<string, (bytes: Uint8Array) => MeshTriangles>> = {
  stl: readStl,
  ply: readPly,
  obj: readObj,
  glb: readGlb,
};

/** Text may begin with a byte order mark. */
function withoutMark(bytes: Uint8Array): Uint8Array {
  const hasMark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  return hasMark ? bytes.subarray(3) : bytes;
}

/** What the bytes themselves say they are; else the name's ending. */
function kindOf(name: string, bytes: Uint8Array): string {
  if (isGlb(bytes)) return 'glb';
  if (/^ply\s/.test(new TextDecoder('latin1').decode(bytes.subarray(0, 4)))) return 'ply';
  if (isBinaryStl(bytes) || isTextStl(bytes)) return 'stl';
  return endingOf(name);
}

/** Whether any triangle has a surface. */
function hasSurface({ positions, index }: MeshTriangles): boolean {
  for (let at = 0; at + 2 < index.length; at += 3) {
    const [a, b, c] = [3 * index[at]!, 3 * index[at + 1]!, 3 * index[at + 2]!];
    const side = (from: number, to: number, i: number) => positions[to + i]! - positions[from + i]!;
    const [ux, uy, uz] = [side(a, b, 0), side(a, b, 1), side(a, b, 2)];
    const [vx, vy, vz] = [side(a, c, 0), side(a, c, 1), side(a, c, 2)];
    if (Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) > 0) return true;
  }
  return false;
}

/** Refuses what no distance can be measured to. */
function check(mesh: MeshTriangles): void {
  if (mesh.index.length === 0) {
    throw new MeshFault('no triangles', 'a surface made of triangles');
  }
  const wrong = mesh.positions.findIndex((value) => !Number.isFinite(value));
  if (wrong >= 0) {
    throw new MeshFault(
      `a coordinate that is not a number, in vertex ${Math.floor(wrong / 3) + 1}`,
      'finite coordinates',
    );
  }
  if (!hasSurface(mesh)) {
    throw new MeshFault('only triangles without any area', 'a surface made of triangles');
  }
}

function read(name: string, bytes: Uint8Array): MeshTriangles {
  if (bytes.length === 0) throw new MeshFault('an empty file', WANTED);
  const large = tooLarge(bytes.length);
  if (large !== null) throw large;
  const bare = withoutMark(bytes);
  const reader = READERS[kindOf(name, bare)];
  if (reader === undefined) throw new MeshFault('another kind of file', WANTED);
  const mesh = reader(bare);
  check(mesh);
  return mesh;
}

/**
 * The triangles in a file, in the file's own unit. STL, PLY and OBJ keep their axes; GLB's are turned into the vehicle's.
 * `name` matters by its ending only, where the bytes do not say what they are.
 */
export function readMesh(name: string, bytes: Uint8Array): MeshReading {
  try {
    return { ok: true, mesh: read(name, bytes) };
  } catch (thrown) {
    if (thrown instanceof MeshFault) {
      return { ok: false, found: thrown.found, wanted: thrown.wanted };
    }
    throw thrown;
  }
}
