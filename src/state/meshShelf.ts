/** The mesh files at hand: opened in this visit, kept from earlier ones, or shipped. Each is kept once, by its fingerprint. */
import { baseOf } from '../mesh/names.ts';
import type { MeshObstacle } from '../mesh/placing.ts';
import type { DocumentStore } from './document.ts';
import type { MeshArchive } from './meshArchive.ts';
import { meshObstacles } from './meshes.ts';
import type { Notices } from './notices.ts';

type Bytes = Uint8Array<ArrayBuffer>;

export interface MeshShelfParts {
  readonly documentStore: DocumentStore;
  readonly notices: Notices;
  readonly archive: MeshArchive;
  /** The bytes of a shipped file of this name; null where there is none. */
  readonly shipped: (name: string) => Promise<Bytes | null>;
  /** Settles when the work of an earlier visit is back. */
  readonly restored: Promise<void>;
  readonly now: () => number;
}

export interface MeshShelf {
  /** Settles when what was kept earlier is at hand. */
  readonly settled: Promise<void>;
  /** The bytes of an obstacle's file: the one that was meant, or the last one opened under its name; null for none. */
  bytesFor(mesh: MeshObstacle): Promise<Bytes | null>;
  /** Keeps an opened file, and says so where it cannot be kept beyond this visit. */
  keep(content: string, name: string, bytes: Bytes): void;
}

const UNKEPT = 'mesh-unkept';

/** Kept files that nothing names any more stay for a day, in case another tab has only just opened them, ms. */
const STAYS = 86_400_000;

/** Fingerprints, and names where there is none, of everything the work and its history use. */
function namedFiles(documentStore: DocumentStore): ReadonlySet<string> {
  const { model, held, past, future } = documentStore.getState();
  const models = [model, held, ...[...past, ...future].map((entry) => entry.model)];
  return new Set(
    models
      .filter((each) => each !== null)
      .flatMap(meshObstacles)
      .map(({ content, file }) => content ?? baseOf(file)),
  );
}

export function openMeshShelf(parts: MeshShelfParts): MeshShelf {
  const { documentStore, notices, archive, shipped, now } = parts;
  /** By fingerprint, the newest last. */
  const held = new Map<string, { readonly name: string; readonly bytes: Blob }>();

  async function takeKept(): Promise<void> {
    const all = await archive.read();
    for (const { content, name, bytes } of [...all].reverse()) {
      if (!held.has(content)) held.set(content, { name, bytes });
    }
    await parts.restored;
    const named = namedFiles(documentStore);
    const gone = all.filter(
      ({ content, name, opened }) =>
        now() - opened > STAYS && !named.has(content) && !named.has(name),
    );
    if (gone.length > 0) await archive.remove(gone.map(({ content }) => content));
  }

  const settled = takeKept();

  async function bytesFor({ content, file }: MeshObstacle): Promise<Bytes | null> {
    await settled;
    const known =
      content === undefined
        ? [...held.values()].reverse().find(({ name }) => name === baseOf(file))
        : held.get(content);
    if (known === undefined) return shipped(baseOf(file));
    return new Uint8Array(await known.bytes.arrayBuffer());
  }

  function keep(content: string, name: string, bytes: Bytes): void {
    // A blob of its own: the browser may put it on disk, and the file may change or go.
    const blob = new Blob([bytes]);
    held.delete(content);
    held.set(content, { name, bytes: blob });
    void archive.write({ content, name, opened: now(), bytes: blob }).then((isKept) => {
      if (isKept) notices.dismiss(UNKEPT);
      else {
        const text = `This browser has no room to keep ${name}: after a reload it must be opened again.`;
        notices.say({ key: UNKEPT, kind: 'alert', text });
      }
    });
  }

  return { settled, bytesFor, keep };
}
