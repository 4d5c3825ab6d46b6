/** The smallest cures of what fails, a step at a time wherever it runs; the newest question wins. */
import { type Cures, curesInSteps, type Model } from '../../solver/index.ts';
import type { Runner } from './background.ts';
import type { MeshKeys, MeshSending, MeshShelf } from './meshShelf.ts';
import { createNewestJob } from './turns.ts';

export type CureRequest =
  | MeshSending
  | {
      readonly kind: 'cure';
      /** Grows with every request. */
      readonly number: number;
      readonly model: Model;
      readonly meshes: MeshKeys;
      /** The pair's or the limit's key. */
      readonly key: string;
    }
  | { readonly kind: 'cancel' };

export interface CureAnswer {
  readonly number: number;
  /** 0 to 1. */
  readonly progress: number;
  readonly isDone: boolean;
  /** What was found; null until it is done, and where there is nothing to cure. */
  readonly found: Cures | null;
}

/** `later` runs a function soon, after whatever waits; `clock` counts ms. Without a shelf no mesh is watched. */
export function createCureRunner(
  answer: (answer: CureAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
  shelf: MeshShelf | null = null,
): Runner<CureRequest> {
  const job = createNewestJob<Cures | null>(later, clock);

  return {
    ask(request) {
      if (request.kind === 'mesh') {
        shelf?.put(request);
        return;
      }
      job.drop();
      if (request.kind === 'cancel') return;
      const { model, meshes, key, number } = request;
      job.begin(curesInSteps(model, key, shelf?.surfaces(model, meshes)), {
        hearProgress: (progress) => answer({ number, progress, isDone: false, found: null }),
        hearDone: (found) => answer({ number, progress: 1, isDone: true, found }),
      });
    },
  };
}
