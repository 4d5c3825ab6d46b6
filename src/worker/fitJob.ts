/** Fits points to readings, a step at a time wherever it runs; the newest request wins. */
import { type Fit, fitInSteps, type NoFit } from '../../solver/fit/fit.ts';
import type { Reading } from '../../solver/fit/reading.ts';
import type { Model } from '../../solver/index.ts';
import type { Runner } from './background.ts';
import { createNewestJob } from './turns.ts';

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

/** `later` runs a function soon, after whatever waits; `clock` counts ms. */
export function createFitRunner(
  answer: (answer: FitAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
): Runner<FitRequest> {
  const job = createNewestJob<Fit | NoFit>(later, clock);

  return {
    ask(request) {
      job.drop();
      if (request.kind === 'cancel') return;
      const { number, model, readings, heights } = request;
      job.begin(fitInSteps(model, readings, heights), {
        hearProgress: (progress) => answer({ number, progress, found: null }),
        hearDone: (found) => answer({ number, progress: 1, found }),
      });
    },
  };
}
