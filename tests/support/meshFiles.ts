// Mesh files of every form, written for tests from one description of a shape.

/** A shape: vertices, and faces of three or more corners. */
export interface Shape {
  readonly vertices: readonly (readonly [number, number, number])[];
  readonly faces: readonly (readonly number[])[];
}

/** A box of six faces with four corners each. */
export function boxShape(
  min: readonly [number, number, number],
  max: readonly [number, number, number],
): Shape {
  const vertices = [0, 1, 2, 3, 4, 5, 6, 7].map(
    (i) => [i & 1 ? max[0] : min[0], i & 2 ? max[1] : min[1], i & 4 ? max[2] : min[2]] as const,
  );
  const faces = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  return { vertices, faces };
}

/** Its faces fanned into triangles. */
export function trianglesOf({ faces }: Shape): number[][] {
  return faces.flatMap((face) =>
    face.slice(2).map((corner, i) => [face[0]!, face[i + 1]!, corner]),
  );
}

const bytes = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

export function stlText(shape: Shape, name = 'part'): Uint8Array<ArrayBuffer> {
  const facets = trianglesOf(shape).map(
    (triangle) =>
      `facet normal 0 0 0\n outer loop\n${triangle
        .map((i) => `  vertex ${shape.vertices[i]!.join(' ')}\n`)
        .join('')} endloop\nendfacet\n`,
  );
  return bytes(`solid ${name}\n${facets.join('')}endsolid ${name}\n`);
}

export function stlBinary(shape: Shape, header = 'binary'): Uint8Array<ArrayBuffer> {
  const triangles = trianglesOf(shape);
  const data = new DataView(new ArrayBuffer(84 + 50 * triangles.length));
  [...header].forEach((letter, i) => {
    data.setUint8(i, letter.charCodeAt(0));
  });
  data.setUint32(80, triangles.length, true);
  triangles.forEach((triangle, i) => {
    triangle.forEach((corner, j) => {
      shape.vertices[corner]!.forEach((value, k) => {
        data.setFloat32(84 + 50 * i + 12 + 12 * j + 4 * k, value, true);
      });
    });
  });
  return new Uint8Array(data.buffer);
}

export type PlyForm = 'ascii' | 'binary_little_endian' | 'binary_big_endian';

export function ply(shape: Shape, form: PlyForm, isDouble = false): Uint8Array<ArrayBuffer> {
  const type = isDouble ? 'double' : 'float';
  const header = bytes(
    `ply\nformat ${form} 1.0\ncomment a test\nelement vertex ${shape.vertices.length}\n` +
      `property ${type} x\nproperty ${type} y\nproperty ${type} z\nproperty uchar red\n` +
      `element face ${shape.faces.length}\nproperty uchar flags\nproperty list uchar int vertex_indices\nend_header\n`,
  );
  if (form === 'ascii') {
    const lines = [
      ...shape.vertices.map((vertex) => `${vertex.join(' ')} 7`),
      ...shape.faces.map((face) => `3 ${face.length} ${face.join(' ')}`),
    ];
    return joined([header, bytes(`${lines.join('\n')}\n`)]);
  }
  const isLittle = form === 'binary_little_endian';
  const width = isDouble ? 8 : 4;
  const size =
    shape.vertices.length * (3 * width + 1) +
    shape.faces.reduce((sum, face) => sum + 2 + 4 * face.length, 0);
  const data = new DataView(new ArrayBuffer(size));
  let at = 0;
  for (const vertex of shape.vertices) {
    for (const value of vertex) {
      if (isDouble) data.setFloat64(at, value, isLittle);
      else data.setFloat32(at, value, isLittle);
      at += width;
    }
    data.setUint8(at, 7);
    at += 1;
  }
  for (const face of shape.faces) {
    data.setUint8(at, 3);
    data.setUint8(at + 1, face.length);
    at += 2;
    for (const corner of face) {
      data.setInt32(at, corner, isLittle);
      at += 4;
    }
  }
  return joined([header, new Uint8Array(data.buffer)]);
}

/** Faces name their corners from the first vertex on, or from the last back. */
export function obj(shape: Shape, isBackwards = false): Uint8Array<ArrayBuffer> {
  const count = shape.vertices.length;
  const lines = [
    '# a test',
    'mtllib none.mtl',
    'o part',
    ...shape.vertices.map((vertex) => `v ${vertex.join(' ')}`),
    'vn 0 0 1',
    'usemtl grey',
    's off',
    ...shape.faces.map(
      (face) => `f ${face.map((i) => `${isBackwards ? i - count : i + 1}//1`).join(' ')}`,
    ),
  ];
  return bytes(`${lines.join('\n')}\n`);
}

/** A GLB file from its JSON and its binary chunk. */
export function glbFile(json: unknown, body: Uint8Array): Uint8Array<ArrayBuffer> {
  const text = bytes(JSON.stringify(json));
  const padded = (chunk: Uint8Array, by: number): Uint8Array => {
    const whole = new Uint8Array(Math.ceil(chunk.length / 4) * 4).fill(by);
    whole.set(chunk);
    return whole;
  };
  const [first, second] = [padded(text, 32), padded(body, 0)];
  const head = new DataView(new ArrayBuffer(20));
  head.setUint32(0, 0x46546c67, true);
  head.setUint32(4, 2, true);
  head.setUint32(8, 28 + first.length + second.length, true);
  head.setUint32(12, first.length, true);
  head.setUint32(16, 0x4e4f534a, true);
  const next = new DataView(new ArrayBuffer(8));
  next.setUint32(0, second.length, true);
  next.setUint32(4, 0x004e4942, true);
  return joined([new Uint8Array(head.buffer), first, new Uint8Array(next.buffer), second]);
}

/** JSON and body of a GLB file that holds one indexed shape, under `nodes`. */
export function glbParts(shape: Shape, nodes: readonly object[] = [{ mesh: 0 }]) {
  const positions = Float32Array.from(shape.vertices.flat());
  const corners = Uint16Array.from(trianglesOf(shape).flat());
  const body = joined([new Uint8Array(positions.buffer), new Uint8Array(corners.buffer)]);
  const json = {
    asset: { version: '2.0' },
    scene: 0,
    scenes: [{ nodes: nodes.map((_, i) => i).filter((i) => !isChild(nodes, i)) }],
    nodes,
    meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1 }] }],
    accessors: [
      {
        bufferView: 0,
        componentType: 5126,
        count: shape.vertices.length,
        type: 'VEC3',
        min: [0, 1, 2].map((i) => Math.min(...shape.vertices.map((vertex) => vertex[i]!))),
        max: [0, 1, 2].map((i) => Math.max(...shape.vertices.map((vertex) => vertex[i]!))),
      },
      { bufferView: 1, componentType: 5123, count: corners.length, type: 'SCALAR' },
    ],
    bufferViews: [
      { buffer: 0, byteOffset: 0, byteLength: positions.byteLength },
      { buffer: 0, byteOffset: positions.byteLength, byteLength: corners.byteLength },
    ],
    buffers: [{ byteLength: body.length }],
  };
  return { json, body };
}

function isChild(nodes: readonly { children?: readonly number[] }[], at: number): boolean {
  return nodes.some(({ children }) => children?.includes(at));
}

export function glb(shape: Shape, nodes?: readonly object[]): Uint8Array<ArrayBuffer> {
  const { json, body } = glbParts(shape, nodes);
  return glbFile(json, body);
}

export function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
