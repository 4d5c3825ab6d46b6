/** A changed design put on the bench to be looked at, with the one before it held as the ghost: kept, or taken back. */
import { createStore } from 'zustand/vanilla';
import type { Model } from '../../solver/index.ts';
import { type DocumentStore, sameModel } from './document.ts';

/** What is on trial, and all it takes to have back what was there. */
export interface Trial<Subject> {
  /** What the change came from: a cure, an answer. */
  readonly subject: Subject;
  /** The document's model before and with the change. */
  readonly before: Model;
  readonly changed: Model;
  /** The design that was held before. */
  readonly held: Model | null;
}

export interface TrialState<Subject> {
  readonly trial: Trial<Subject> | null;
}

export type TrialStore<Subject> = ReturnType<typeof createTrials<Subject>>;

/** The model with the parts that were changed as they were; edits to other parts stay. */
function without(now: Model, { before, changed }: Trial<unknown>): Model {
  const keys = (Object.keys(changed) as (keyof Model)[]).filter(
    (key) => JSON.stringify(changed[key]) !== JSON.stringify(before[key]),
  );
  const others = Object.entries(now).filter(([key]) => !keys.includes(key as keyof Model));
  const was = Object.entries(before).filter(([key]) => keys.includes(key as keyof Model));
  return { ...before, ...Object.fromEntries([...others, ...was]) };
}

export function createTrials<Subject>(documentStore: DocumentStore) {
  const store = createStore<TrialState<Subject>>(() => ({ trial: null }));
  const { getState, setState } = store;

  function putBackHeld({ held }: Trial<Subject>): void {
    setState({ trial: null });
    documentStore.setState({ held });
  }

  /** Takes the change off again: the design and the held one are as before the trial. */
  function takeBack(): void {
    const { trial } = getState();
    if (trial === null) return;
    const isUntouched = documentStore.getState().model === trial.changed;
    putBackHeld(trial);
    if (isUntouched) documentStore.undo();
    else documentStore.edit((now) => without(now, trial));
  }

  /**
   * Puts a changed model on the bench as one entry of the history, the design before it held as the ghost; what was on trial is
   * taken back first. False where it is not a change of the present design `from`, or is refused.
   */
  function tryOn(subject: Subject, from: Model | null, changed: Model): boolean {
    takeBack();
    const { model: before, held } = documentStore.getState();
    if (!sameModel(before, from)) return false;
    if (!documentStore.edit(() => changed)) return false;
    documentStore.setState({ held: before });
    setState({ trial: { subject, before, changed: documentStore.getState().model, held } });
    return true;
  }

  /** Leaves the change on the bench. The held design is as it was before; undo still leads back. */
  function keep(): void {
    const { trial } = getState();
    if (trial !== null) putBackHeld(trial);
  }

  /** Lets go of the trial: what is on the bench and what is held stay as they are. */
  function letGo(): void {
    if (getState().trial !== null) setState({ trial: null });
  }

  // Undo, another file, another tab's work: a trial ends where its design is gone or its ghost let go of.
  documentStore.subscribe(({ model, held }) => {
    const { trial } = getState();
    if (trial === null) return;
    if (sameModel(model, trial.before)) putBackHeld(trial);
    else if (held !== trial.before) setState({ trial: null });
  });

  return { ...store, tryOn, takeBack, keep, letGo };
}
