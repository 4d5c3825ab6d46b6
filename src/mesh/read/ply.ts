/** PLY files: text, and binary in either byte order. */
import type { MeshTriangles } from '../data.ts';
import { MeshFault, shownWord } from './fault.ts';
import { GrowingMesh } from './growing.ts';
import { addPolygon } from './polygon.ts';
import { createWordReader, numberOf } from './words.ts';

interface Property {
  readonly name: string;
  readonly type: NumberType;
  /** Type of the count before a list; null for a single number. */
  readonly count: NumberType | null;
}

interface Element {
  readonly name: string;
  readonly count: number;
  readonly properties: Property[];
}

interface Header {
  readonly format: string;
  readonly elements: readonly Element[];
  /** Where the body begins. */
  readonly end: number;
}

type Getter = 'getInt8' | 'getUint8' | 'getInt16' | 'getUint16' | 'getInt32' | 'getUint32';
type NumberType = readonly [getter: Getter | 'getFloat32' | 'getFloat64', size: number];

const TYPES: Readonly<Record<string, NumberType>> = {
  char: ['getInt8', 1],
  uchar: ['getUint8', 1],
  short: ['getInt16', 2],
  ushort: ['getUint16', 2],
  int: ['getInt32', 4],
  uint: ['getUint32', 4],
  float: ['getFloat32', 4],
  double: ['getFloat64', 8],
  int8: ['getInt8', 1],
  uint8: ['getUint8', 1],
  int16: ['getInt16', 2],
  uint16: ['getUint16', 2],
  int32: ['getInt32', 4],
  uint32: ['getUint32', 4],
  float32: ['getFloat32', 4],
  float64: ['getFloat64', 8],
};

/** Longest header looked through, bytes. */
const LONGEST_HEADER = 100_000;

function typeNamed(name: string | undefined): NumberType {
  const type = TYPES[name ?? ''];
  if (type === undefined) {
    throw new MeshFault(`the number type ${shownWord(name ?? '')}`, "one of PLY's own types");
  }
  return type;
}

function propertyOf(words: readonly string[]): Property {
  if (words[0] !== 'list') return { name: words[1] ?? '', type: typeNamed(words[0]), count: null };
  return { name: words[3] ?? '', type: typeNamed(words[2]), count: typeNamed(words[1]) };
}

function elementOf(words: readonly string[]): Element {
  const count = numberOf(words[1] ?? null);
  if (!Number.isInteger(count) || count < 0) {
    throw new MeshFault(`${shownWord(words[1] ?? '')} as a count`, 'a whole number');
  }
  return { name: words[0] ?? '', count, properties: [] };
}

function readHeader(bytes: Uint8Array): Header {
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, LONGEST_HEADER));
  const match = /^ply\s*?(?:\r\n|\r|\n)([\s\S]*?)(?:^|[\r\n])end_header[ \t]*(\r\n|\r|\n)/.exec(
    start,
  );
  if (match === null) throw new MeshFault('no PLY header, or a header cut off', 'a PLY file');
  const elements: Element[] = [];
  let format = '';
  for (const line of match[1]!.split(/\r\n|\r|\n/)) {
    const [word, ...rest] = line.trim().split(/\s+/);
    if (word === 'format') format = rest[0] ?? '';
    if (word === 'element') elements.push(elementOf(rest));
    if (word === 'property') elements.at(-1)?.properties.push(propertyOf(rest));
  }
  return { format, elements, end: match[0].length };
}

/** Hands out the body's numbers one after another. */
type Take = (type: NumberType) => number;

function cutOff(): MeshFault {
  return new MeshFault('a file cut off: fewer numbers than its header says', 'a whole PLY file');
}

function binaryTake(bytes: Uint8Array, start: number, isLittle: boolean): Take {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = start;
  return ([getter, size]) => {
    if (at + size > view.byteLength) throw cutOff();
    const value = view[getter](at, isLittle);
    at += size;
    return value;
  };
}

function textTake(bytes: Uint8Array, start: number): Take {
  const words = createWordReader(bytes, start);
  return () => {
    const word = words.next();
    if (word === null) throw cutOff();
    const value = numberOf(word);
    if (Number.isNaN(value)) throw new MeshFault(shownWord(word), 'a number');
    return value;
  };
}

function takerOf({ format, end }: Header, bytes: Uint8Array): Take {
  if (format === 'ascii') return textTake(bytes, end);
  if (format === 'binary_little_endian') return binaryTake(bytes, end, true);
  if (format === 'binary_big_endian') return binaryTake(bytes, end, false);
  throw new MeshFault(`the PLY form ${shownWord(format)}`, 'ascii or binary');
}

/** More corners than any face has: a count of the kind means that the file is damaged. */
const MOST_CORNERS = 10_000;

function takeList(take: Take, type: NumberType, count: NumberType): number[] {
  const length = take(count);
  if (!(length >= 0 && length <= MOST_CORNERS)) {
    throw new MeshFault(`a face of ${length} corners`, 'a PLY file that is not damaged');
  }
  return Array.from({ length }, () => take(type));
}

const PLACES = ['x', 'y', 'z'];
const CORNERS = new Set(['vertex_indices', 'vertex_index']);

function readVertices(element: Element, take: Take, mesh: GrowingMesh): void {
  const slots = element.properties.map(({ name }) => PLACES.indexOf(name));
  if (PLACES.some((_, i) => !slots.includes(i))) {
    throw new MeshFault('vertices without x, y and z', 'vertices with x, y and z');
  }
  const place = [0, 0, 0];
  for (let i = 0; i < element.count; i += 1) {
    element.properties.forEach(({ type, count }, j) => {
      if (count !== null) takeList(take, type, count);
      else place[slots[j]!] = take(type);
    });
    mesh.vertex(place[0]!, place[1]!, place[2]!);
  }
}

function readFaces(element: Element, take: Take, mesh: GrowingMesh): void {
  for (let i = 0; i < element.count; i += 1) {
    for (const { name, type, count } of element.properties) {
      if (count === null) take(type);
      else {
        const list = takeList(take, type, count);
        if (CORNERS.has(name)) addFace(mesh, list, i);
      }
    }
  }
}

function addFace(mesh: GrowingMesh, face: readonly number[], at: number): void {
  const wrong = face.find(
    (corner) => !(Number.isInteger(corner) && corner >= 0 && corner < mesh.vertices),
  );
  if (wrong !== undefined) {
    throw new MeshFault(
      `the corner ${wrong} in face ${at + 1}`,
      `one of the ${mesh.vertices} vertices, counted from 0`,
    );
  }
  addPolygon(mesh, face);
}

function skip(element: Element, take: Take): void {
  for (let i = 0; i < element.count; i += 1) {
    for (const { type, count } of element.properties) {
      if (count === null) take(type);
      else takeList(take, type, count);
    }
  }
}

export function readPly(bytes: Uint8Array): MeshTriangles {
  const header = readHeader(bytes);
  if (header.elements.some(({ name, count }) => name === 'tristrips' && count > 0)) {
    throw new MeshFault('triangle strips', 'faces');
  }
  const faces = header.elements.find(({ name }) => name === 'face');
  if (faces === undefined || faces.count === 0) {
    throw new MeshFault(
      'points without faces (a point cloud)',
      'a surface: mesh the scan in its own program first',
    );
  }
  const take = takerOf(header, bytes);
  const mesh = new GrowingMesh();
  for (const element of header.elements) {
    if (element.name === 'vertex') readVertices(element, take, mesh);
    else if (element.name === 'face') readFaces(element, take, mesh);
    else skip(element, take);
  }
  return mesh.taken();
}
