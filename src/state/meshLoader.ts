/** Brings the files of mesh obstacles to the bench: opened, kept from earlier, or shipped; and says which are missing. */
import type { MeshUnit, Vector3 } from '../../solver/index.ts';
import { meshUnit, unitInMillimetres } from '../../solver/model/defaults.ts';
import type { MeshTriangles } from '../mesh/data.ts';
import { baseOf } from '../mesh/names.ts';
import type { MeshObstacle } from '../mesh/placing.ts';
import { tooLarge } from '../mesh/read/fault.ts';
import type { MeshFileReading, PreparedMesh, ReadMesh } from '../worker/meshService.ts';
import type { DocumentStore } from './document.ts';
import type { MeshArchive } from './meshArchive.ts';
import {
  type MeshStatus,
  type MeshStore,
  meshKey,
  meshObstacles,
  type OfferedMesh,
} from './meshes.ts';
import type { Notices } from './notices.ts';

/** What is needed of a File. */
export interface OpenedMesh {
  readonly name: string;
  readonly size: number;
  arrayBuffer(): Promise<ArrayBuffer>;
}

/** How a person wants an offered file to become an obstacle. */
export interface MeshChoice {
  readonly name: string;
  readonly unit: MeshUnit;
  readonly rotation: Vector3;
  readonly position: Vector3;
  /** The obstacle whose file it replaces, keeping its place; null for a new one. */
  readonly replaces: string | null;
}

export interface MeshLoaderParts {
  readonly documentStore: DocumentStore;
  readonly meshes: MeshStore;
  readonly notices: Notices;
  readonly archive: MeshArchive;
  readonly read: (name: string, bytes: Uint8Array<ArrayBuffer>) => Promise<MeshFileReading>;
  readonly prepare: (mesh: MeshTriangles, scale: number) => Promise<PreparedMesh>;
  /** The bytes of a shipped file of this name; null where there is none. */
  readonly shipped: (name: string) => Promise<Uint8Array<ArrayBuffer> | null>;
  /** Settles when the work of an earlier visit is back. */
  readonly restored: Promise<void>;
  readonly now: () => number;
}

export interface MeshLoader {
  /** Takes files a person has opened: those the model waits for, and others to be asked about. */
  open(files: Iterable<OpenedMesh>): Promise<void>;
  /** Makes an offered file an obstacle; answers null, or why the document refused. */
  place(offered: OfferedMesh, choice: MeshChoice): string | null;
  /** Takes an offered file back. */
  decline(offered: OfferedMesh): void;
  stop(): void;
}

const OPENING = 'mesh-opening';
const MISSING = 'mesh-missing';
const UNKEPT = 'mesh-unkept';

/** Kept files that nothing names any more stay for a day, in case another tab has only just opened them. */
const STAYS = 86_400_000;

/** Prepared meshes that the present model does not use but an undo may. */
const MOST_IDLE = 2;

interface HeldFile {
  readonly name: string;
  readonly bytes: () => Promise<Uint8Array<ArrayBuffer>>;
}

/** The files at hand by fingerprint, the newest last. */
type Held = Map<string, HeldFile>;

/** The obstacle with the file's unit and fingerprint, placed or in another's place. */
function placed(
  offered: OfferedMesh,
  choice: MeshChoice,
  before: MeshObstacle | undefined,
): MeshObstacle {
  const { unit, position, rotation } = choice;
  return {
    name: before?.name ?? choice.name,
    shape: 'mesh',
    file: offered.name,
    unit,
    position: before?.position ?? position,
    rotation: before?.rotation ?? rotation,
    content: offered.reading.content,
  };
}

export function startMeshLoader(parts: MeshLoaderParts): MeshLoader {
  const { documentStore, meshes, notices, archive, read, prepare, shipped, now } = parts;
  const held: Held = new Map();
  /** Readings of files just opened, so that they are not read twice. */
  const fresh = new Map<string, ReadMesh>();
  /** What was last said to be missing. */
  let said: string | null = null;
  const keptBefore = takeKept();

  async function takeKept(): Promise<void> {
    const all = await archive.read();
    for (const { content, name, bytes } of [...all].reverse()) {
      if (held.has(content)) continue;
      held.set(content, { name, bytes: async () => new Uint8Array(await bytes.arrayBuffer()) });
    }
    await parts.restored;
    const named = namedFiles();
    const gone = all.filter(
      ({ content, name, opened }) =>
        now() - opened > STAYS && !named.has(content) && !named.has(name),
    );
    if (gone.length > 0) await archive.remove(gone.map(({ content }) => content));
  }

  /** Fingerprints, and names where there is none, of everything the work and its history use. */
  function namedFiles(): ReadonlySet<string> {
    const { model, held: yesterday, past, future } = documentStore.getState();
    const models = [model, yesterday, ...[...past, ...future].map((entry) => entry.model)];
    return new Set(
      models
        .filter((each) => each !== null)
        .flatMap(meshObstacles)
        .map(({ content, file }) => content ?? baseOf(file)),
    );
  }

  function setStatus(key: string, status: MeshStatus | null): void {
    const files = new Map(meshes.getState().files);
    files.delete(key);
    if (status !== null) files.set(key, status);
    meshes.setState({ files });
    sayMissing();
  }

  /** Says which obstacles of the present model are neither drawn nor checked. */
  function sayMissing(): void {
    const { files } = meshes.getState();
    const troubles = meshObstacles(documentStore.getState().model).flatMap((mesh) => {
      const status = files.get(meshKey(mesh));
      if (status?.state === 'missing') {
        return [
          `${mesh.name}: the file ${mesh.file} is not at hand. Open it, or drop it on the page.`,
        ];
      }
      return status?.state === 'refused' ? [`${mesh.name}: ${status.words}`] : [];
    });
    const text = troubles.length === 0 ? null : `Not drawn and not checked: ${troubles.join(' ')}`;
    // What was put away is not said again by the next edit.
    if (text === said) return;
    said = text;
    if (text === null) notices.dismiss(MISSING);
    else notices.say({ key: MISSING, kind: 'alert', text });
  }

  async function bytesFor(mesh: MeshObstacle): Promise<Uint8Array<ArrayBuffer> | null> {
    await keptBefore;
    const { content, file } = mesh;
    if (content !== undefined) {
      const known = held.get(content);
      return known === undefined ? shipped(baseOf(file)) : known.bytes();
    }
    const named = [...held.values()].reverse().find(({ name }) => name === baseOf(file));
    return named === undefined ? shipped(baseOf(file)) : named.bytes();
  }

  async function readingFor(mesh: MeshObstacle): Promise<MeshFileReading | null> {
    const bytes = await bytesFor(mesh);
    return bytes === null ? null : read(baseOf(mesh.file), bytes);
  }

  async function load(mesh: MeshObstacle): Promise<MeshStatus> {
    const unit = meshUnit(mesh);
    if (unit === null) {
      return {
        state: 'refused',
        words: `${mesh.file} states no unit. Choose it with the obstacle.`,
      };
    }
    const reading = fresh.get(mesh.content ?? '') ?? (await readingFor(mesh));
    fresh.clear();
    if (reading === null) return { state: 'missing' };
    if (!reading.ok) {
      const { found, wanted } = reading;
      return { state: 'refused', words: `${mesh.file}: found ${found}, wanted ${wanted}.` };
    }
    if (mesh.content !== undefined && mesh.content !== reading.content) return { state: 'missing' };
    return { state: 'ready', mesh: await prepare(reading.mesh, unitInMillimetres(unit)) };
  }

  /** Loads what the present model names and what is not there yet, or was missing. */
  async function ensure(isAgain = false): Promise<void> {
    const wanted = meshObstacles(documentStore.getState().model);
    forgetIdle(new Set(wanted.map(meshKey)));
    await Promise.all(
      wanted.map(async (mesh) => {
        const key = meshKey(mesh);
        const status = meshes.getState().files.get(key);
        if (status !== undefined && !(isAgain && status.state === 'missing')) return;
        setStatus(key, { state: 'reading' });
        try {
          setStatus(key, await load(mesh));
        } catch {
          const words = `${mesh.file} could not be read: it may be too large for this machine.`;
          setStatus(key, { state: 'refused', words });
        }
      }),
    );
    sayMissing();
  }

  function forgetIdle(used: ReadonlySet<string>): void {
    const { files } = meshes.getState();
    const idle = [...files.keys()].filter((key) => !used.has(key));
    for (const key of idle.slice(0, Math.max(0, idle.length - MOST_IDLE))) setStatus(key, null);
  }

  function keep(content: string, name: string, bytes: Uint8Array<ArrayBuffer>): void {
    // A blob of its own: the browser may put it on disk, and the file may change or go.
    const blob = new Blob([bytes]);
    held.delete(content);
    held.set(content, { name, bytes: async () => new Uint8Array(await blob.arrayBuffer()) });
    void archive.write({ content, name, opened: now(), bytes: blob }).then((isKept) => {
      if (isKept) notices.dismiss(UNKEPT);
      else {
        const text = `This browser has no room to keep ${name}: after a reload it must be opened again.`;
        notices.say({ key: UNKEPT, kind: 'alert', text });
      }
    });
  }

  /** Obstacles of the present model that wait for this very file. */
  function waiting(name: string, content: string): readonly MeshObstacle[] {
    const { files } = meshes.getState();
    return meshObstacles(documentStore.getState().model).filter(
      (mesh) =>
        files.get(meshKey(mesh))?.state === 'missing' &&
        (mesh.content === undefined ? baseOf(mesh.file) === name : mesh.content === content),
    );
  }

  async function openOne(file: OpenedMesh): Promise<void> {
    const refuse = (found: string, wanted: string): void =>
      notices.say({
        key: OPENING,
        kind: 'alert',
        text: `${file.name}: found ${found}, wanted ${wanted}.`,
      });
    const large = tooLarge(file.size);
    if (large !== null) return refuse(large.found, large.wanted);
    notices.say({ key: OPENING, kind: 'status', text: `${file.name} is being read.` });
    let bytes: Uint8Array<ArrayBuffer>;
    try {
      bytes = new Uint8Array(await file.arrayBuffer());
    } catch {
      return refuse(
        'a file that could not be read',
        'a file: it may be a folder, or have been moved',
      );
    }
    const reading = await read(file.name, bytes);
    if (!reading.ok) return refuse(reading.found, reading.wanted);
    notices.dismiss(OPENING);
    await keptBefore;
    const names = waiting(file.name, reading.content).map(({ name }) => name);
    if (names.length > 0) {
      keep(reading.content, file.name, bytes);
      const text = `${file.name} is the file of ${names.join(' and ')}.`;
      notices.say({ key: OPENING, kind: 'status', text });
      await ensure(true);
      return;
    }
    const offered = [...meshes.getState().offered, { name: file.name, bytes, reading }];
    meshes.setState({ offered });
  }

  function decline(offered: OfferedMesh): void {
    meshes.setState(({ offered: all }) => ({ offered: all.filter((each) => each !== offered) }));
  }

  function place(offered: OfferedMesh, choice: MeshChoice): string | null {
    // Kept first: the document's change makes the obstacle be looked for.
    keep(offered.reading.content, offered.name, offered.bytes);
    fresh.set(offered.reading.content, offered.reading);
    const isTaken = documentStore.edit((model) => {
      const obstacles = model.obstacles ?? [];
      const before = meshObstacles(model).find(({ name }) => name === choice.replaces);
      const made = placed(offered, choice, before);
      return {
        ...model,
        obstacles:
          before === undefined
            ? [...obstacles, made]
            : obstacles.map((each) => (each === before ? made : each)),
      };
    });
    if (!isTaken) return documentStore.getState().refusal ?? 'The document refused it.';
    decline(offered);
    return null;
  }

  const leave = documentStore.subscribe((state, before) => {
    if (state.model.obstacles !== before.model.obstacles) void ensure();
  });
  void ensure();

  return {
    open: async (files) => {
      for (const file of files) await openOne(file);
    },
    place,
    decline,
    stop: leave,
  };
}
