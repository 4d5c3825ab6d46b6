/** Fits points to readings, a step at a time wherever it runs; the newest request wins. */
import { type Fit, fitInSteps, type NoFit } from '../../solver/fit/fit.ts';
import type { Reading } from '../../solver/fit/reading.ts';
import type { Model, Steps } from '../../solver/index.ts';
import type { Runner } from './background.ts';

export type FitRequest =
  | {
      readonly kind: 'fit';
      /** Grows with every request. */
      readonly number: number;
      readonly model: Model;
      readonly readings: readonly Reading[];
      /** How well heights are known, mm. */
      readonly heights: number;
    }
  | { readonly kind: 'cancel' };

export interface FitAnswer {
  readonly number: number;
  /** 0 to 1. */
  readonly progress: number;
  /** Null until it is done. */
  readonly found: Fit | NoFit | null;
}

/** Longest turn of work before others get theirs, ms, and the least time between two answers. */
const TURN = 8;
const TELL = 60;

interface Job {
  readonly number: number;
  readonly steps: Steps<Fit | NoFit>;
  progress: number;
  toldAt: number;
}

/** `later` runs a function soon, after whatever waits; `clock` counts ms. */
export function createFitRunner(
  answer: (answer: FitAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
): Runner<FitRequest> {
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
        answer({ number: now.number, progress: 1, found: step.value });
        return;
      }
      now.progress = Math.max(now.progress, step.value);
    }
    if (clock() - now.toldAt > TELL) {
      now.toldAt = clock();
      answer({ number: now.number, progress: now.progress, found: null });
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
      const { number, model, readings, heights } = request;
      job = { number, steps: fitInSteps(model, readings, heights), progress: 0, toldAt: clock() };
      wait();
    },
  };
}
