/** Why a mesh file is not taken: what it holds and what is wanted, as pieces of a sentence. Thrown by readers, caught at their door. */
export class MeshFault extends Error {
  readonly found: string;
  readonly wanted: string;

  constructor(found: string, wanted: string) {
    super(`found ${found}, wanted ${wanted}`);
    this.found = found;
    this.wanted = wanted;
  }
}

/** Most bytes of a file: scans beyond are thinned out in the scanner's own program. */
export const LARGEST_MESH_FILE = 200_000_000;

/** Why a file of so many bytes is not even looked at; null where it may be. */
export function tooLarge(size: number): MeshFault | null {
  if (size <= LARGEST_MESH_FILE) return null;
  return new MeshFault(
    `a file of ${(size / 1e6).toFixed(0)} MB`,
    'at most 200 MB: thin the mesh out first',
  );
}

/** Most triangles of a file. */
export const MOST_TRIANGLES = 2_000_000;

export function tooManyTriangles(count: number): MeshFault {
  const shown = count.toLocaleString('en').replaceAll(',', ' ');
  return new MeshFault(`${shown} triangles`, 'at most 2 000 000: thin the mesh out first');
}

/** A word of a file as a message shows it: short, and nothing a terminal would obey. */
export function shownWord(word: string): string {
  const plain = word.replace(/[^\x20-\x7e]/g, '?');
  return JSON.stringify(plain.length > 40 ? `${plain.slice(0, 40)}…` : plain);
}
