/**
 * A changed design on trial: it comes on the bench as one entry of the history while the design before it is held as the
 * ghost, and is then kept or taken back. What was held before comes back either way.
 */
import { createStore } from 'zustand/vanilla';
import type { Model } from '../../solver/index.ts';
import { type DocumentStore, sameModel } from './document.ts';

export interface Trial {
  /** What is tried, in the words of whoever asked: tells trials apart. */
  readonly name: string;
  /** The document's model before and with the change. */
  readonly before: Model;
  readonly tried: Model;
  /** Keys of the parts that the change made anew. */
  readonly changed: ReadonlySet<string>;
  /** The design that was held before. */
  readonly held: Model | null;
}

export interface TrialState {
  readonly trial: Trial | null;
}

type Part = keyof Model;

/** The parts that a change made anew. */
function changedParts(before: Model, wanted: Model): ReadonlySet<string> {
  const all = Object.keys({ ...before, ...wanted }) as Part[];
  return new Set(all.filter((part) => wanted[part] !== before[part]));
}

/** The model with the parts that the trial changed as they were; edits to other parts stay. */
function without(now: Model, { before, changed }: Trial): Model {
  const others = Object.entries(now).filter(([part]) => !changed.has(part));
  const was = Object.entries(before).filter(([part]) => changed.has(part));
  return { ...before, ...Object.fromEntries([...others, ...was]) };
}

export type TrialStore = ReturnType<typeof createTrial>;

export function createTrial(documentStore: DocumentStore) {
  const store = createStore<TrialState>(() => ({ trial: null }));
  const { getState, setState } = store;

  function putBackHeld({ held }: Trial): void {
    setState({ trial: null });
    documentStore.setState({ held });
  }

  /** Takes the trial off again: the design and the held one are as before it. */
  function takeBack(): void {
    const { trial } = getState();
    if (trial === null) return;
    const isUntouched = documentStore.getState().model === trial.tried;
    putBackHeld(trial);
    if (isUntouched) documentStore.undo();
    else documentStore.edit((now) => without(now, trial));
  }

  /** Puts a change of the present design on the bench; a trial before it is taken back. False where it is refused. */
  function tryOn(name: string, change: (model: Model) => Model): boolean {
    takeBack();
    const { model: before, held } = documentStore.getState();
    const wanted = change(before);
    if (!documentStore.edit(() => wanted)) return false;
    const { model: tried } = documentStore.getState();
    if (tried === before) return false;
    documentStore.setState({ held: before });
    setState({ trial: { name, before, tried, changed: changedParts(before, wanted), held } });
    return true;
  }

  /** Leaves it on the bench. The held design is as it was before; undo still leads back. */
  function keep(): void {
    const { trial } = getState();
    if (trial !== null) putBackHeld(trial);
  }

  // Undo, another file, another tab's work: a trial ends where its design is gone or its ghost let go of.
  documentStore.subscribe(({ model, held }) => {
    const { trial } = getState();
    if (trial === null) return;
    if (sameModel(model, trial.before)) putBackHeld(trial);
    else if (held !== trial.before) setState({ trial: null });
  });

  return { ...store, tryOn, takeBack, keep };
}
