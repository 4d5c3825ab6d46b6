/** The frame of a GLB file: its header, its JSON chunk and its binary chunk. */
import { MeshFault, shownWord } from './fault.ts';

type Extensions = Readonly<Record<string, unknown>>;

export interface GlbNode {
  readonly mesh?: number;
  readonly skin?: number;
  readonly children?: readonly number[];
  readonly matrix?: readonly number[];
  readonly translation?: readonly [number, number, number];
  readonly rotation?: readonly [number, number, number, number];
  readonly scale?: readonly [number, number, number];
  readonly extensions?: Extensions;
}

export interface GlbPrimitive {
  readonly attributes?: Readonly<Record<string, number>>;
  readonly indices?: number;
  readonly mode?: number;
  readonly extensions?: Extensions;
}

export interface GlbAccessor {
  readonly bufferView?: number;
  readonly byteOffset?: number;
  readonly componentType?: number;
  readonly count?: number;
  readonly type?: string;
  readonly normalized?: boolean;
  readonly sparse?: unknown;
}

export interface GlbView {
  readonly buffer?: number;
  readonly byteOffset?: number;
  readonly byteLength?: number;
  readonly byteStride?: number;
  readonly extensions?: Extensions;
}

/** What is read of the JSON; it may hold anything else. */
export interface GlbJson {
  readonly scene?: number;
  readonly scenes?: readonly { readonly nodes?: readonly number[] }[];
  readonly nodes?: readonly GlbNode[];
  readonly meshes?: readonly { readonly primitives?: readonly GlbPrimitive[] }[];
  readonly accessors?: readonly GlbAccessor[];
  readonly bufferViews?: readonly GlbView[];
  readonly buffers?: readonly { readonly uri?: string }[];
  readonly extensionsRequired?: readonly string[];
}

export interface Glb {
  readonly json: GlbJson;
  /** The binary chunk, which views point into; empty when there is none. */
  readonly body: Uint8Array;
}

const VERSION = 2;
const JSON_CHUNK = 0x4e4f534a;
const BINARY_CHUNK = 0x004e4942;

/** Extensions that change how a surface looks, or that are read here: needed by a file, but not in the way. */
const HARMLESS =
  /^(KHR_materials_|KHR_texture_|EXT_texture_|MSFT_texture_|KHR_lights_|KHR_mesh_quantization$)/;

export function isGlb(bytes: Uint8Array): boolean {
  return new TextDecoder('latin1').decode(bytes.subarray(0, 4)) === 'glTF';
}

function cutOff(): MeshFault {
  return new MeshFault('a file cut off: shorter than its header says', 'a whole GLB file');
}

function parse(bytes: Uint8Array): GlbJson {
  let json: unknown;
  try {
    json = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    throw new MeshFault('contents that are not readable as JSON', 'a GLB file that is not damaged');
  }
  if (typeof json !== 'object' || json === null) {
    throw new MeshFault('contents that are no JSON object', 'a GLB file that is not damaged');
  }
  return json;
}

function check(json: GlbJson): void {
  if (json.buffers?.some(({ uri }) => uri !== undefined)) {
    throw new MeshFault('numbers in a file beside it', 'a GLB file that holds everything itself');
  }
  const strange = json.extensionsRequired?.find((name) => !HARMLESS.test(name));
  if (strange !== undefined) {
    throw new MeshFault(
      `the extension ${shownWord(strange)}, which the file needs`,
      'a GLB file without compression or extensions',
    );
  }
}

export function openGlb(bytes: Uint8Array): Glb {
  if (bytes.length < 20) throw cutOff();
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const version = view.getUint32(4, true);
  if (version !== VERSION) throw new MeshFault(`glTF version ${version}`, `version ${VERSION}`);
  const length = view.getUint32(8, true);
  if (length > bytes.length) throw cutOff();
  const chunks = new Map<number, Uint8Array>();
  for (let at = 12; at + 8 <= length; ) {
    const size = view.getUint32(at, true);
    const kind = view.getUint32(at + 4, true);
    if (at + 8 + size > length) throw cutOff();
    if (!chunks.has(kind)) chunks.set(kind, bytes.subarray(at + 8, at + 8 + size));
    at += 8 + size;
  }
  const text = chunks.get(JSON_CHUNK);
  if (text === undefined) throw new MeshFault('no contents', 'a GLB file that is not damaged');
  const json = parse(text);
  check(json);
  return { json, body: chunks.get(BINARY_CHUNK) ?? new Uint8Array() };
}
