/** The smallest cures of one pair or limit of the present design: asked for by hand, and the one that is on trial. */
import { createStore } from 'zustand/vanilla';
import type { Cure, Cures, Model } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { CureAnswer, CureRequest } from '../worker/cureJob.ts';
import { type DocumentStore, sameModel } from './document.ts';
import type { MeshStore } from './meshes.ts';
import { createMeshSender } from './meshSender.ts';

/** A cure on the bench, and all it takes to have back what was there. */
export interface CureTrial {
  readonly cure: Cure;
  /** The document's model before and with the cure. */
  readonly before: Model;
  readonly cured: Model;
  /** The design that was held before. */
  readonly held: Model | null;
}

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
  readonly trial: CureTrial | null;
}

/** The model with the parts that the cure changed as they were; edits to other parts stay. */
function without(now: Model, { cure, before }: CureTrial): Model {
  const changed = (Object.keys(cure.model) as (keyof Model)[]).filter(
    (key) => cure.model[key] !== before[key],
  );
  const others = Object.entries(now).filter(([key]) => !changed.includes(key as keyof Model));
  const was = Object.entries(before).filter(([key]) => changed.includes(key as keyof Model));
  return { ...before, ...Object.fromEntries([...others, ...was]) };
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
    trial: null,
  }));
  const { getState, setState } = store;
  const sender = createMeshSender(meshStore);
  let service: Background<CureRequest> | null = null;
  let number = 0;

  function take(answer: CureAnswer): void {
    if (answer.number !== number || getState().stage !== 'running') return;
    const { progress, found } = answer;
    setState(answer.isDone ? { stage: 'done', progress, found } : { progress });
  }

  /** Looks for the cures of a pair or limit; what was looked for before is dropped, and a trial stays as it is. */
  function look(asked: CureQuestion): void {
    const { model } = documentStore.getState();
    service ??= start(take);
    const { ask } = service;
    sender.send(model, ask);
    number += 1;
    setState({ asked, model, stage: 'running', progress: 0, found: null, trial: null });
    ask({ kind: 'cure', number, model, meshes: sender.keys(model), key: asked.cureKey });
  }

  function stop(): void {
    if (getState().stage !== 'running') return;
    service?.ask({ kind: 'cancel' });
    setState({ stage: 'idle', asked: null, model: null });
  }

  function putBackHeld({ held }: CureTrial): void {
    setState({ trial: null });
    documentStore.setState({ held });
  }

  /** Puts a cure on the bench as one entry of the history, the design before it held as the ghost. */
  function tryOn(cure: Cure): boolean {
    takeBack();
    const { model: before, held } = documentStore.getState();
    if (!sameModel(before, getState().model)) return false;
    if (!documentStore.edit(() => cure.model)) return false;
    documentStore.setState({ held: before });
    setState({ trial: { cure, before, cured: documentStore.getState().model, held } });
    return true;
  }

  /** Takes the cure off again: the design and the held one are as before the trial. */
  function takeBack(): void {
    const { trial } = getState();
    if (trial === null) return;
    const isUntouched = documentStore.getState().model === trial.cured;
    putBackHeld(trial);
    if (isUntouched) documentStore.undo();
    else documentStore.edit((now) => without(now, trial));
  }

  /** Leaves the cure on the bench. The held design is as it was before; undo still leads back. */
  function keep(): void {
    const { trial } = getState();
    if (trial === null) return;
    putBackHeld(trial);
    setState({ stage: 'idle', asked: null, model: null, found: null });
  }

  // Undo, another file, another tab's work: a trial ends where its design is gone or its ghost let go of.
  documentStore.subscribe(({ model, held }) => {
    const { trial } = getState();
    if (trial === null) return;
    if (sameModel(model, trial.before)) putBackHeld(trial);
    else if (held !== trial.before) setState({ trial: null });
  });

  return { ...store, look, stop, tryOn, takeBack, keep };
}
