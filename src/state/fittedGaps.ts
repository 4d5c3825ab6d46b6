/** The gaps of the sheet's columns as they come in from behind the page. */
import { createStore } from 'zustand/vanilla';
import type { Model } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { FitmentAnswer, FitmentRequest } from '../worker/fitmentJob.ts';

/** A column's model and what is known of it; null until there is an answer. */
export interface ColumnGaps {
  readonly model: Model;
  readonly number: number;
  readonly answer: FitmentAnswer | null;
}

export type FittedGapsState = Readonly<Record<string, ColumnGaps>>;

/** Starts whatever works them out. */
export type StartFitment = (answer: (answer: FitmentAnswer) => void) => Background<FitmentRequest>;

export type FittedGaps = ReturnType<typeof createFittedGaps>;

export function createFittedGaps(start: StartFitment) {
  const store = createStore<FittedGapsState>(() => ({}));
  const { getState, setState } = store;
  let service: Background<FitmentRequest> | null = null;
  let count = 0;

  function take(answer: FitmentAnswer): void {
    const column = getState()[answer.column];
    if (column?.number !== answer.number) return;
    setState({ [answer.column]: { ...column, answer } });
  }

  /** Asks for a column's gaps, unless they were asked for this very model; null lets go of the column. */
  function ask(column: string, model: Model | null): void {
    const known = getState()[column];
    if ((known?.model ?? null) === model) return;
    count += 1;
    service ??= start(take);
    service.ask({ number: count, column, model });
    const { [column]: _, ...others } = getState();
    const next =
      model === null ? others : { ...others, [column]: { model, number: count, answer: null } };
    setState(next, true);
  }

  /** Ends all work. What is asked afterwards starts it anew. */
  function stop(): void {
    service?.stop();
    service = null;
    setState({}, true);
  }

  return { ...store, ask, stop };
}
