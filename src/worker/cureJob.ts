/** The smallest cures of what fails, a step at a time wherever it runs; the newest question wins. */
import { type Cures, curesInSteps, type Model, type Steps } from '../../solver/index.ts';
import type { Runner } from './background.ts';
import type { MeshKeys, MeshSending, MeshShelf } from './meshShelf.ts';

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

/** Longest turn of work before others get theirs, ms, and the least time between two answers. */
const TURN = 8;
const TELL = 60;

interface Job {
  readonly number: number;
  readonly steps: Steps<Cures | null>;
  progress: number;
  toldAt: number;
}

/** `later` runs a function soon, after whatever waits; `clock` counts ms. Without a shelf no mesh is watched. */
export function createCureRunner(
  answer: (answer: CureAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
  shelf: MeshShelf | null = null,
): Runner<CureRequest> {
  let job: Job | null = null;
  let isWaiting = false;

  function tell(now: Job): void {
    now.toldAt = clock();
    answer({ number: now.number, progress: now.progress, isDone: false, found: null });
  }

  function turn(): void {
    isWaiting = false;
    const now = job;
    if (now === null) return;
    const end = clock() + TURN;
    while (clock() < end) {
      const step = now.steps.next();
      if (step.done === true) {
        job = null;
        answer({ number: now.number, progress: 1, isDone: true, found: step.value });
        return;
      }
      now.progress = Math.max(now.progress, step.value);
    }
    if (clock() - now.toldAt > TELL) tell(now);
    wait();
  }

  function wait(): void {
    if (isWaiting) return;
    isWaiting = true;
    later(turn);
  }

  return {
    ask(request) {
      if (request.kind === 'mesh') {
        shelf?.put(request);
        return;
      }
      job = null;
      if (request.kind === 'cancel') return;
      const { model, meshes, key, number } = request;
      const steps = curesInSteps(model, key, shelf?.surfaces(model, meshes));
      job = { number, steps, progress: 0, toldAt: clock() };
      wait();
    },
  };
}
