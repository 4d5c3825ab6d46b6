/** Corners drawn at random within the ± of what was measured: on request, the newest alone, with progress and a way to stop. */
import { createStore } from 'zustand/vanilla';
import type { Model, MonteCarlo } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { MonteCarloAnswer, MonteCarloRequest } from '../worker/monteCarloJob.ts';
import type { DocumentStore } from './document.ts';

export interface MonteCarloState {
  /** idle: nothing is drawn; done: `found` answers, null where the set pose is out of reach. */
  readonly stage: 'idle' | 'running' | 'done';
  readonly progress: number;
  readonly found: MonteCarlo | null;
  /** The design that was asked about. */
  readonly model: Model | null;
}

export type StartMonteCarlo = (
  answer: (answer: MonteCarloAnswer) => void,
) => Background<MonteCarloRequest>;

export type MonteCarloStore = ReturnType<typeof createMonteCarlo>;

export function createMonteCarlo(documentStore: DocumentStore, start: StartMonteCarlo) {
  const store = createStore<MonteCarloState>(() => ({
    stage: 'idle',
    progress: 0,
    found: null,
    model: null,
  }));
  const { getState, setState } = store;
  let service: Background<MonteCarloRequest> | null = null;
  let number = 0;

  function take(answer: MonteCarloAnswer): void {
    if (answer.number !== number || getState().stage !== 'running') return;
    const { progress, found } = answer;
    setState(answer.isDone ? { stage: 'done', progress, found } : { progress });
  }

  /** Draws corners of the present design. */
  function run(): void {
    const { model } = documentStore.getState();
    service ??= start(take);
    number += 1;
    setState({ stage: 'running', progress: 0, found: null, model });
    service.ask({ kind: 'draw', number, model, options: {} });
  }

  function cancel(): void {
    if (getState().stage !== 'running') return;
    service?.ask({ kind: 'cancel' });
    setState({ stage: 'idle', progress: 0, model: null });
  }

  return { ...store, run, cancel };
}
