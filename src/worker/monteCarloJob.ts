/** Corners drawn at random, a step at a time wherever it runs; the newest question wins. */
import {
  type Model,
  type MonteCarlo,
  type MonteCarloOptions,
  monteCarloInSteps,
  type Steps,
} from '../../solver/index.ts';
import type { Runner } from './background.ts';

export type MonteCarloRequest =
  | {
      readonly kind: 'draw';
      /** Grows with every request. */
      readonly number: number;
      readonly model: Model;
      readonly options: MonteCarloOptions;
    }
  | { readonly kind: 'cancel' };

export interface MonteCarloAnswer {
  readonly number: number;
  /** 0 to 1. */
  readonly progress: number;
  readonly isDone: boolean;
  /** What was drawn; null until it is done, and where the pose is out of reach. */
  readonly found: MonteCarlo | null;
}

/** Longest turn of work before others get theirs, ms, and the least time between two answers. */
const TURN = 8;
const TELL = 60;

interface Job {
  readonly number: number;
  readonly steps: Steps<MonteCarlo | null>;
  progress: number;
  toldAt: number;
}

/** `later` runs a function soon, after whatever waits; `clock` counts ms. */
export function createMonteCarloRunner(
  answer: (answer: MonteCarloAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
): Runner<MonteCarloRequest> {
  let job: Job | null = null;
  let isWaiting = false;

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
      now.progress = step.value;
    }
    if (clock() - now.toldAt > TELL) {
      now.toldAt = clock();
      answer({ number: now.number, progress: now.progress, isDone: false, found: null });
    }
    wait();
  }

  function wait(): void {
    if (isWaiting) return;
    isWaiting = true;
    later(turn);
  }

  return {
    ask(request) {
      job = null;
      if (request.kind === 'cancel') return;
      const { number, model, options } = request;
      job = { number, steps: monteCarloInSteps(model, options), progress: 0, toldAt: clock() };
      wait();
    },
  };
}
