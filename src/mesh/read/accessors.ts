/** Lists of numbers in a GLB file: accessors over views of its binary chunk. */
import { MeshFault } from './fault.ts';
import type { GlbAccessor, GlbJson } from './glbFile.ts';

/** Most vertices or corners of one list; the triangles are counted elsewhere. */
const MOST_ITEMS = 12_000_000;

interface Component {
  readonly size: number;
  readonly read: (view: DataView, at: number) => number;
  /** What a normalised whole number is divided by. */
  readonly full: number;
}

const COMPONENTS: Readonly<Record<number, Component>> = {
  5120: { size: 1, read: (view, at) => view.getInt8(at), full: 127 },
  5121: { size: 1, read: (view, at) => view.getUint8(at), full: 255 },
  5122: { size: 2, read: (view, at) => view.getInt16(at, true), full: 32767 },
  5123: { size: 2, read: (view, at) => view.getUint16(at, true), full: 65535 },
  5125: { size: 4, read: (view, at) => view.getUint32(at, true), full: 1 },
  5126: { size: 4, read: (view, at) => view.getFloat32(at, true), full: 1 },
};

const WIDTHS = { SCALAR: 1, VEC3: 3 } as const;

function damaged(found: string): MeshFault {
  return new MeshFault(found, 'a GLB file that is not damaged');
}

/** One list, looked up and found to lie inside the file. */
interface Place {
  readonly component: Component;
  readonly count: number;
  readonly from: number;
  readonly stride: number;
  readonly full: number;
}

function statedOf(
  json: GlbJson,
  at: number,
  type: keyof typeof WIDTHS,
): { readonly accessor: GlbAccessor; readonly component: Component; readonly count: number } {
  const accessor = json.accessors?.[at];
  const component = COMPONENTS[accessor?.componentType ?? 0];
  if (accessor === undefined || component === undefined || accessor.type !== type) {
    throw damaged('a list of numbers that is not stated as such');
  }
  const count = accessor.count ?? -1;
  if (!(Number.isInteger(count) && count >= 0 && count <= MOST_ITEMS)) {
    throw damaged(`a list of ${count} items`);
  }
  return { accessor, component, count };
}

function placeOf(json: GlbJson, body: Uint8Array, at: number, type: keyof typeof WIDTHS): Place {
  const { accessor, component, count } = statedOf(json, at, type);
  const view = json.bufferViews?.[accessor.bufferView ?? -1];
  if (view === undefined || accessor.sparse !== undefined || view.extensions !== undefined) {
    throw new MeshFault('compressed or sparse numbers', 'a GLB file without compression');
  }
  const size = WIDTHS[type] * component.size;
  const { byteOffset: start = 0, byteLength: length = 0, byteStride: stride = size } = view;
  const from = start + (accessor.byteOffset ?? 0);
  const end = from + (count - 1) * stride + size;
  if (count > 0 && !(from >= 0 && end <= Math.min(start + length, body.length))) {
    throw damaged('a list of numbers longer than the file');
  }
  const full = accessor.normalized === true ? component.full : 1;
  return { component, count, from, stride, full };
}

/** A reader of accessors by number: all components in order, normalised ones between −1 and 1. */
export function createAccessors(json: GlbJson, body: Uint8Array) {
  const data = new DataView(body.buffer, body.byteOffset, body.byteLength);

  return (at: number, type: keyof typeof WIDTHS): Float64Array => {
    const { component, count, from, stride, full } = placeOf(json, body, at, type);
    const width = WIDTHS[type];
    const items = new Float64Array(width * count);
    for (let i = 0; i < count; i += 1) {
      for (let j = 0; j < width; j += 1) {
        const value = component.read(data, from + i * stride + j * component.size);
        items[width * i + j] = full === 1 ? value : Math.max(-1, value / full);
      }
    }
    return items;
  };
}
