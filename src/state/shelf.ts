/** The two places a browser keeps things in, behind doors that never throw: a shelf (at once, small) and an archive (later, large). */
import { createStore, get, set } from 'idb-keyval';

/** Keeps short texts synchronously. */
export interface Shelf {
  /** Null when there is nothing, or nothing can be read. */
  read(key: string): string | null;
  /** False when it could not be kept: private window, full storage, storage switched off. */
  write(key: string, text: string): boolean;
  remove(key: string): void;
}

/** Keeps any plain data, in its own time. */
export interface Archive {
  read(key: string): Promise<unknown>;
  write(key: string, value: unknown): Promise<boolean>;
}

/** A shelf over the page's storage. `open` is called each time because the mere access may throw. */
export function createShelf(open: () => Storage): Shelf {
  function attempt<T>(act: (storage: Storage) => T, otherwise: T): T {
    try {
      return act(open());
    } catch {
      return otherwise;
    }
  }
  return {
    read: (key) => attempt((storage) => storage.getItem(key), null),
    write: (key, text) =>
      attempt((storage) => {
        storage.setItem(key, text);
        return true;
      }, false),
    remove: (key) => attempt((storage) => storage.removeItem(key), undefined),
  };
}

/** An archive over the browser's database. */
export function createArchive(): Archive {
  // Opened at the first use: opening may throw where databases are switched off.
  let opened: ReturnType<typeof createStore> | undefined;
  const store = () => {
    opened ??= createStore('armscribe', 'work');
    return opened;
  };
  return {
    read: async (key) => {
      try {
        return await get(key, store());
      } catch {
        return undefined;
      }
    },
    write: async (key, value) => {
      try {
        await set(key, value, store());
        return true;
      } catch {
        return false;
      }
    },
  };
}
