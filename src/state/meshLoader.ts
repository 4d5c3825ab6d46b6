/** Brings the files of mesh obstacles to the bench: opened, kept from earlier, or shipped; and says which are missing. */
import type { MeshUnit, Vector3 } from '../../solver/index.ts';
import { meshUnit, unitInMillimetres } from '../../solver/model/defaults.ts';
import type { MeshTriangles } from '../mesh/data.ts';
import { baseOf } from '../mesh/names.ts';
import type { MeshObstacle } from '../mesh/placing.ts';
import { tooLarge } from '../mesh/read/fault.ts';
import type { MeshFileReading, PreparedMesh, ReadMesh } from '../worker/meshService.ts';
import {
  type MeshStatus,
  type MeshStore,
  meshKey,
  meshObstacles,
  type OfferedMesh,
} from './meshes.ts';
import { type MeshShelfParts, openMeshShelf } from './meshShelf.ts';

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

export interface MeshLoaderParts extends MeshShelfParts {
  readonly meshes: MeshStore;
  readonly read: (name: string, bytes: Uint8Array<ArrayBuffer>) => Promise<MeshFileReading>;
  readonly prepare: (mesh: MeshTriangles, scale: number) => Promise<PreparedMesh>;
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

/** Prepared meshes that the present model does not use but an undo may. */
const MOST_IDLE = 2;

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
  const { documentStore, meshes, notices, read, prepare } = parts;
  /** Readings of files just opened, so that they are not read twice. */
  const fresh = new Map<string, ReadMesh>();
  /** What was last said to be missing. */
  let said: string | null = null;
  const { settled, bytesFor, keep } = openMeshShelf(parts);

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
    await settled;
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
