/** Least gaps of wheels and tyres that might be fitted, worked out one column at a time wherever it runs. */
import { leastRodGaps, type RodGaps } from '../../solver/fitment/leastGap.ts';
import { assemble, type Model } from '../../solver/index.ts';
import type { Runner } from './background.ts';

export interface FitmentRequest {
  /** Grows with every request. */
  readonly number: number;
  /** Whose gaps: a column of the sheet. */
  readonly column: string;
  /** Null takes the column's work back. */
  readonly model: Model | null;
}

export interface FitmentAnswer {
  readonly number: number;
  readonly column: string;
  readonly gaps: RodGaps;
}

/** Takes the newest request of each column; what was asked for it before is dropped. */
export function createFitmentRunner(
  answer: (answer: FitmentAnswer) => void,
  later: (run: () => void) => void,
): Runner<FitmentRequest> {
  const jobs = new Map<string, FitmentRequest & { readonly model: Model }>();
  let isWaiting = false;

  function turn(): void {
    isWaiting = false;
    const [next] = jobs.values();
    if (next === undefined) return;
    const { number, column, model } = next;
    jobs.delete(column);
    answer({ number, column, gaps: leastRodGaps(assemble(model)) });
    if (jobs.size > 0) wait();
  }

  function wait(): void {
    if (isWaiting) return;
    isWaiting = true;
    later(turn);
  }

  return {
    ask({ number, column, model }) {
      jobs.delete(column);
      if (model === null) return;
      jobs.set(column, { number, column, model });
      wait();
    },
  };
}
