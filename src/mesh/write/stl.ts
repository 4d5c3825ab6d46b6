/** Writes closed surfaces as binary STL: millimetres in vehicle axes, as the header says. */

export interface Triangulated {
  /** Three numbers a vertex, mm. */
  readonly positions: Float32Array;
  /** Three vertices a triangle, counter-clockwise from outside. */
  readonly triangles: Uint32Array;
}

const HEADER = 80;
const RECORD = 50;

/** The header's text in 80 bytes; letters it cannot hold become "?". It never begins with "solid", which means text. */
function writeHeader(view: DataView, name: string): void {
  const text = `mm, x forward, y left, z up: ${name}`;
  const bytes = [...text].map((letter) => {
    const code = letter.codePointAt(0)!;
    return code >= 32 && code < 127 ? code : 63;
  });
  for (let i = 0; i < HEADER; i += 1) view.setUint8(i, bytes[i] ?? 32);
}

/** Binary STL, little-endian: header, count, then normal, three corners and two empty bytes a triangle. */
export function writeStl(
  { positions, triangles }: Triangulated,
  name: string,
): Uint8Array<ArrayBuffer> {
  const count = triangles.length / 3;
  const view = new DataView(new ArrayBuffer(HEADER + 4 + RECORD * count));
  writeHeader(view, name);
  view.setUint32(HEADER, count, true);
  const edge = new Float64Array(6);
  for (let i = 0; i < count; i += 1) {
    const to = HEADER + 4 + RECORD * i;
    const a = 3 * triangles[3 * i]!;
    const b = 3 * triangles[3 * i + 1]!;
    const c = 3 * triangles[3 * i + 2]!;
    for (let k = 0; k < 3; k += 1) {
      edge[k] = positions[b + k]! - positions[a + k]!;
      edge[3 + k] = positions[c + k]! - positions[a + k]!;
      view.setFloat32(to + 12 + 4 * k, positions[a + k]!, true);
      view.setFloat32(to + 24 + 4 * k, positions[b + k]!, true);
      view.setFloat32(to + 36 + 4 * k, positions[c + k]!, true);
    }
    const nx = edge[1]! * edge[5]! - edge[2]! * edge[4]!;
    const ny = edge[2]! * edge[3]! - edge[0]! * edge[5]!;
    const nz = edge[0]! * edge[4]! - edge[1]! * edge[3]!;
    const size = Math.hypot(nx, ny, nz) || 1;
    view.setFloat32(to, nx / size, true);
    view.setFloat32(to + 4, ny / size, true);
    view.setFloat32(to + 8, nz / size, true);
  }
  return new Uint8Array(view.buffer);
}
