/** Where a browser keeps mesh files: each once, by its fingerprint, apart from the work that names it. Never throws. */
import { createStore, delMany, entries, set } from 'idb-keyval';

/** A kept file. */
export interface KeptMesh {
  readonly content: string;
  readonly name: string;
  /** When it was last opened, ms since 1970. */
  readonly opened: number;
  readonly bytes: Blob;
}

export interface MeshArchive {
  /** All kept files, the newest first; their bytes are read when asked for. */
  read(): Promise<readonly KeptMesh[]>;
  /** False when it could not be kept. */
  write(mesh: KeptMesh): Promise<boolean>;
  remove(contents: readonly string[]): Promise<void>;
}

function isKept(value: unknown): value is KeptMesh {
  if (typeof value !== 'object' || value === null) return false;
  const { content, name, opened, bytes } = value as Partial<Record<keyof KeptMesh, unknown>>;
  return (
    typeof content === 'string' &&
    typeof name === 'string' &&
    typeof opened === 'number' &&
    bytes instanceof Blob
  );
}

export function createMeshArchive(): MeshArchive {
  // Opened at the first use: opening may throw where databases are switched off.
  let opened: ReturnType<typeof createStore> | undefined;
  const store = () => {
    opened ??= createStore('armscribe-meshes', 'files');
    return opened;
  };
  return {
    read: async () => {
      try {
        const all = await entries<string, unknown>(store());
        return all
          .map(([, value]) => value)
          .filter(isKept)
          .sort((a, b) => b.opened - a.opened);
      } catch {
        return [];
      }
    },
    write: async (mesh) => {
      try {
        await set(mesh.content, mesh, store());
        return true;
      } catch {
        return false;
      }
    },
    remove: async (contents) => {
      try {
        await delMany([...contents], store());
      } catch {
        // What cannot be removed stays: nothing depends on its being gone.
      }
    },
  };
}
