/** The smallest cures of one pair or limit of the present design: asked for by hand, and the one that is on trial. */
import { createStore } from 'zustand/vanilla';
import type { Cure, Cures, Model } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { CureAnswer, CureRequest } from '../worker/cureJob.ts';
import type { DocumentStore } from './document.ts';
import type { MeshStore } from './meshes.ts';
import { createMeshSender } from './meshSender.ts';
import { createTrials } from './trials.ts';

/** A pair or limit by its key, and what people call it. */
export interface CureQuestion {
  readonly cureKey: string;
  readonly name: string;
}

export interface CuresState {
  /** What was asked for last, and the model it was asked of. */
  readonly asked: CureQuestion | null;
  readonly model: Model | null;
  /** idle: nothing is being worked out; done: `found` answers, null where there is nothing to cure. */
  readonly stage: 'idle' | 'running' | 'done';
  readonly progress: number;
  readonly found: Cures | null;
}

export type StartCures = (answer: (answer: CureAnswer) => void) => Background<CureRequest>;

export type CureStore = ReturnType<typeof createCures>;

export function createCures(documentStore: DocumentStore, meshStore: MeshStore, start: StartCures) {
  const store = createStore<CuresState>(() => ({
    asked: null,
    model: null,
    stage: 'idle',
    progress: 0,
    found: null,
  }));
  const { getState, setState } = store;
  const trials = createTrials<Cure>(documentStore);
  const sender = createMeshSender(meshStore);
  let service: Background<CureRequest> | null = null;
  let number = 0;

  function take(answer: CureAnswer): void {
    if (answer.number !== number || getState().stage !== 'running') return;
    const { progress, found } = answer;
    setState(answer.isDone ? { stage: 'done', progress, found } : { progress });
  }

  /** Looks for the cures of a pair or limit; what was looked for before is dropped, and a cure on trial stays on the bench. */
  function look(asked: CureQuestion): void {
    const { model } = documentStore.getState();
    service ??= start(take);
    const { ask } = service;
    sender.send(model, ask);
    trials.letGo();
    number += 1;
    setState({ asked, model, stage: 'running', progress: 0, found: null });
    ask({ kind: 'cure', number, model, meshes: sender.keys(model), key: asked.cureKey });
  }

  function stop(): void {
    if (getState().stage !== 'running') return;
    service?.ask({ kind: 'cancel' });
    setState({ stage: 'idle', asked: null, model: null });
  }

  /** Puts a cure on the bench, the design before it held as the ghost. */
  function tryOn(cure: Cure): boolean {
    return trials.tryOn(cure, getState().model, cure.model);
  }

  /** Leaves the cure on the bench; nothing is asked for any more. */
  function keep(): void {
    if (trials.getState().trial === null) return;
    trials.keep();
    setState({ stage: 'idle', asked: null, model: null, found: null });
  }

  return { ...store, trials, look, stop, tryOn, takeBack: trials.takeBack, keep };
}
