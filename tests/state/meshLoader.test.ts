import { afterEach, describe, expect, it, vi } from 'vitest';
import { type Model, type Obstacle, parseModel } from '../../solver/index.ts';
import { boxOf } from '../../src/mesh/data.ts';
import { fingerprint } from '../../src/mesh/fingerprint.ts';
import { readMesh } from '../../src/mesh/read/read.ts';
import { buildTree } from '../../src/mesh/tree.ts';
import { createDocument } from '../../src/state/document.ts';
import type { KeptMesh, MeshArchive } from '../../src/state/meshArchive.ts';
import { meshes, readyMeshes, uncheckedMeshes } from '../../src/state/meshes.ts';
import { type MeshChoice, type MeshLoader, startMeshLoader } from '../../src/state/meshLoader.ts';
import { createNotices } from '../../src/state/notices.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { boxShape, stlBinary } from '../support/meshFiles.ts';

const BOX = stlBinary(boxShape([0, 0, 0], [1, 2, 3]));
const OTHER = stlBinary(boxShape([0, 0, 0], [4, 5, 6]));
const DAY = 86_400_000;

type Mesh = Extract<Obstacle, { shape: 'mesh' }>;

function modelWith(...obstacles: Mesh[]): Model {
  const { required: _, tolerance: __, ...rest } = FULL_MODEL;
  const read = parseModel(JSON.stringify({ ...rest, obstacles }), 'test');
  if (!read.ok) throw new Error(read.error.found);
  return read.model;
}

const guard = (more: Partial<Mesh> = {}): Mesh => ({
  name: 'guard',
  shape: 'mesh',
  file: 'guard.stl',
  unit: 'mm',
  ...more,
});

const CHOICE: MeshChoice = {
  name: 'guard',
  unit: 'cm',
  rotation: [0, 0, 90],
  position: [1, 2, 3],
  replaces: null,
};

function memoryArchive(kept: KeptMesh[] = [], isOpen = true) {
  const archive: MeshArchive = {
    read: async () => [...kept].sort((a, b) => b.opened - a.opened),
    write: async (mesh) => {
      if (isOpen) kept.push(mesh);
      return isOpen;
    },
    remove: async (contents) => {
      kept.splice(0, kept.length, ...kept.filter(({ content }) => !contents.includes(content)));
    },
  };
  return { archive, kept };
}

let loader: MeshLoader | undefined;

afterEach(() => {
  loader?.stop();
  meshes.setState({ files: new Map(), offered: [] });
});

function start(model: Model, memory = memoryArchive(), shipped: Record<string, typeof BOX> = {}) {
  const documentStore = createDocument(model, 'test.json');
  const notices = createNotices();
  loader = startMeshLoader({
    documentStore,
    meshes,
    notices,
    archive: memory.archive,
    read: async (name, bytes) => {
      const reading = readMesh(name, bytes);
      if (!reading.ok) return reading;
      const box = boxOf(reading.mesh.positions);
      return { ...reading, box, content: fingerprint(bytes) };
    },
    prepare: async (mesh, scale) => {
      const tree = buildTree(mesh, scale);
      const box = boxOf(tree.positions);
      return { ...tree, box, normals: new Float32Array(), triangles: mesh.index.length / 3 };
    },
    shipped: async (name) => shipped[name] ?? null,
    restored: Promise.resolve(),
    now: () => 10 * DAY,
  });
  const ready = () => [...readyMeshes(documentStore.getState().model, meshes.getState())];
  const said = () => notices.getState().list.map(({ text }) => text);
  return { documentStore, loader, ready, said, kept: memory.kept };
}

const fileOf = (name: string, bytes: typeof BOX) => new File([bytes], name);
const kept = (name: string, bytes: typeof BOX, opened: number): KeptMesh => ({
  content: fingerprint(bytes),
  name,
  opened,
  bytes: new Blob([bytes]),
});

async function shows<T>(read: () => T, value: T): Promise<void> {
  await vi.waitFor(() => expect(read()).toEqual(value));
}

describe('a mesh file that is opened', () => {
  it('is asked about, becomes an obstacle, is kept once, and undo and redo take it along', async () => {
    const { documentStore, loader: bench, ready, kept: shelf } = start(modelWith());
    await bench.open([fileOf('guard.stl', BOX)]);
    const [offered] = meshes.getState().offered;
    expect(offered?.name).toBe('guard.stl');
    expect(bench.place(offered!, CHOICE)).toBeNull();
    expect(meshes.getState().offered).toEqual([]);
    expect(documentStore.getState().model.obstacles).toEqual([
      {
        name: 'guard',
        shape: 'mesh',
        file: 'guard.stl',
        unit: 'cm',
        position: [1, 2, 3],
        rotation: [0, 0, 90],
        content: fingerprint(BOX),
      },
    ]);
    await vi.waitFor(() => expect(ready().map(([name]) => name)).toEqual(['guard']));
    expect(ready()[0]![1].box.max).toEqual([10, 20, 30]);
    expect(shelf.map(({ name }) => name)).toEqual(['guard.stl']);
    documentStore.undo();
    expect(ready()).toEqual([]);
    documentStore.redo();
    await vi.waitFor(() => expect(ready()).toHaveLength(1));
    expect(shelf).toHaveLength(1);
  });

  it('may take the place of an obstacle’s file, which keeps where it stands', async () => {
    const before = guard({ position: [7, 8, 9], rotation: [0, 0, 45] });
    const { documentStore, loader: bench } = start(modelWith(before), memoryArchive(), {
      'guard.stl': BOX,
    });
    await bench.open([fileOf('guard.stl', OTHER)]);
    const [offered] = meshes.getState().offered;
    expect(bench.place(offered!, { ...CHOICE, replaces: 'guard' })).toBeNull();
    expect(documentStore.getState().model.obstacles).toEqual([
      { ...before, unit: 'cm', content: fingerprint(OTHER) },
    ]);
  });

  it('is not placed under a name that is taken, in the document’s words', async () => {
    const { loader: bench, documentStore } = start(modelWith());
    await bench.open([fileOf('guard.stl', BOX)]);
    const refusal = bench.place(meshes.getState().offered[0]!, { ...CHOICE, name: 'tyre' });
    expect(refusal).toContain('found "tyre", the name of a part');
    expect(documentStore.getState().model.obstacles).toEqual([]);
    expect(meshes.getState().offered).toHaveLength(1);
  });

  it('is refused in words where it is broken or too large', async () => {
    const { loader: bench, said } = start(modelWith());
    await bench.open([fileOf('half.stl', BOX.slice(0, -60))]);
    expect(said()).toEqual([
      'half.stl: found a file cut off or damaged: it says 12 triangles and holds 10, wanted a whole STL file.',
    ]);
    const huge = {
      name: 'huge.stl',
      size: 3e8,
      arrayBuffer: () => Promise.reject(new Error('read')),
    };
    await bench.open([huge]);
    expect(said()).toEqual([
      'huge.stl: found a file of 300 MB, wanted at most 200 MB: thin the mesh out first.',
    ]);
  });

  it('is said not to be kept where nothing can be', async () => {
    const { loader: bench, said } = start(modelWith(), memoryArchive([], false));
    await bench.open([fileOf('guard.stl', BOX)]);
    bench.place(meshes.getState().offered[0]!, CHOICE);
    await shows(said, [
      'This browser has no room to keep guard.stl: after a reload it must be opened again.',
    ]);
  });
});

describe('a mesh that a model names', () => {
  it('is taken from what was kept, by its fingerprint before its name', async () => {
    const memory = memoryArchive([kept('guard.stl', BOX, 1), kept('guard.stl', OTHER, 2)]);
    const { ready } = start(modelWith(guard({ content: fingerprint(BOX) })), memory);
    await vi.waitFor(() => expect(ready()[0]?.[1].box.max).toEqual([1, 2, 3]));
  });

  it('is the one last opened under its name where it states no fingerprint', async () => {
    const memory = memoryArchive([kept('guard.stl', BOX, 1), kept('guard.stl', OTHER, 2)]);
    const { ready } = start(modelWith(guard({ file: 'parts/guard.stl' })), memory);
    await vi.waitFor(() => expect(ready()[0]?.[1].box.max).toEqual([4, 5, 6]));
  });

  it('is taken from the shipped files', async () => {
    const { ready } = start(modelWith(guard()), memoryArchive(), { 'guard.stl': BOX });
    await vi.waitFor(() => expect(ready()).toHaveLength(1));
  });

  it('is said to be missing, and is filled in when its file is opened', async () => {
    const { documentStore, loader: bench, ready, said } = start(modelWith(guard()));
    const { model } = documentStore.getState();
    await shows(said, [
      'Not drawn and not checked: guard: the file guard.stl is not at hand. Open it, or drop it on the page.',
    ]);
    expect(uncheckedMeshes(model, meshes.getState())).toEqual(['guard']);
    await bench.open([fileOf('guard.stl', BOX)]);
    await vi.waitFor(() => expect(ready()).toHaveLength(1));
    expect(meshes.getState().offered).toEqual([]);
    expect(said()).toEqual(['guard.stl is the file of guard.']);
    expect(uncheckedMeshes(model, meshes.getState())).toEqual([]);
  });

  it('is missing where the file at hand is another one than was meant', async () => {
    const wanted = guard({ content: fingerprint(OTHER) });
    const { said } = start(modelWith(wanted), memoryArchive(), { 'guard.stl': BOX });
    await vi.waitFor(() => expect(said()[0]).toContain('is not at hand'));
  });

  it('is refused where its unit is not stated', async () => {
    const { unit: _, ...unitless } = guard();
    const { said } = start(modelWith(unitless), memoryArchive(), { 'guard.stl': BOX });
    await shows(said, [
      'Not drawn and not checked: guard: guard.stl states no unit. Choose it with the obstacle.',
    ]);
  });

  it('that was put away as missing is not said again by another edit', async () => {
    const { documentStore, said } = start(modelWith(guard()));
    await vi.waitFor(() => expect(said()).toHaveLength(1));
    loader?.stop();
    const { documentStore: store, said: told } = start(modelWith(guard({ file: 'else.stl' })));
    await vi.waitFor(() => expect(told()).toHaveLength(1));
    store.edit((model) => ({
      ...model,
      obstacles: [{ ...model.obstacles![0]!, position: [1, 1, 1] }] as Mesh[],
    }));
    await Promise.resolve();
    expect(told()).toHaveLength(1);
    expect(documentStore.getState().model.obstacles).toHaveLength(1);
  });
});

describe('kept files', () => {
  it('that nothing names any more go after a day', async () => {
    const memory = memoryArchive([
      kept('guard.stl', BOX, 1),
      kept('old.stl', OTHER, 2),
      kept('new.stl', stlBinary(boxShape([0, 0, 0], [1, 1, 1])), 9.5 * DAY),
    ]);
    start(modelWith(guard({ content: fingerprint(BOX) })), memory);
    await shows(() => memory.kept.map(({ name }) => name), ['guard.stl', 'new.stl']);
  });
});
