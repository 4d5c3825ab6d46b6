/** Long work in short turns, wherever it runs, so that new requests come in between. */
import type { Steps } from '../../solver/index.ts';

/** Runs a function soon, after whatever waits. */
export type Later = (run: () => void) => void;

/** Longest turn of work before others get theirs, ms, and the least time between two words of progress. */
export const TURN = 8;
export const TELL = 60;

/** Asks for a turn soon; one that is coming is not asked for again. */
export function createWait(later: Later, turn: () => void): () => void {
  let isWaiting = false;
  return () => {
    if (isWaiting) return;
    isWaiting = true;
    later(() => {
      isWaiting = false;
      turn();
    });
  };
}

/** Where a job's news go. */
export interface Ear<Value> {
  /** 0 to 1, never less than before. */
  readonly hearProgress: (progress: number) => void;
  readonly hearDone: (value: Value) => void;
}

export interface NewestJob<Value> {
  /** Begins this work; what was begun before is dropped. */
  begin(steps: Steps<Value>, ear: Ear<Value>): void;
  drop(): void;
}

/** One job at a time, the newest. `clock` counts ms. */
export function createNewestJob<Value>(later: Later, clock: () => number): NewestJob<Value> {
  let job: { readonly steps: Steps<Value>; readonly ear: Ear<Value> } | null = null;
  let progress = 0;
  let toldAt = 0;
  const wait = createWait(later, turn);

  function turn(): void {
    if (job === null) return;
    const { steps, ear } = job;
    const end = clock() + TURN;
    while (clock() < end) {
      const step = steps.next();
      if (step.done === true) {
        job = null;
        ear.hearDone(step.value);
        return;
      }
      progress = Math.max(progress, step.value);
    }
    if (clock() - toldAt > TELL) {
      toldAt = clock();
      ear.hearProgress(progress);
    }
    wait();
  }

  return {
    begin(steps, ear) {
      job = { steps, ear };
      progress = 0;
      toldAt = clock();
      wait();
    },
    drop() {
      job = null;
    },
  };
}

export interface JobsByKind<Kind, Value> {
  /** Begins this work of its kind; what was begun of the kind before is dropped. */
  begin(kind: Kind, steps: Steps<Value>, hearDone: (value: Value) => void): void;
  /** Drops the work of a kind, or of all. */
  drop(kind?: Kind): void;
}

/** One job of each kind, the newest, in the order of the kinds. `clock` counts ms. */
export function createJobsByKind<Kind, Value>(
  order: readonly Kind[],
  later: Later,
  clock: () => number,
): JobsByKind<Kind, Value> {
  const jobs = new Map<
    Kind,
    { readonly steps: Steps<Value>; readonly hearDone: (value: Value) => void }
  >();
  const wait = createWait(later, turn);

  function turn(): void {
    const end = clock() + TURN;
    while (jobs.size > 0 && clock() < end) {
      const kind = order.find((one) => jobs.has(one))!;
      const { steps, hearDone } = jobs.get(kind)!;
      const step = steps.next();
      if (step.done !== true) continue;
      jobs.delete(kind);
      hearDone(step.value);
    }
    if (jobs.size > 0) wait();
  }

  return {
    begin(kind, steps, hearDone) {
      jobs.set(kind, { steps, hearDone });
      wait();
    },
    drop(kind) {
      if (kind === undefined) jobs.clear();
      else jobs.delete(kind);
    },
  };
}
