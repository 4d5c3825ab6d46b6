/**
 * The document: the model being worked on, its history by gesture, and the design held as "yesterday".
 * A gesture (a drag, a slider held) writes live and becomes one history entry when it ends.
 */
import { createStore } from 'zustand/vanilla';
import { formatModelError, type Model, readModel, writeModel } from '../../solver/index.ts';

/** A model and the file, or shipped model, it came from. */
export interface Entry {
  readonly model: Model;
  readonly origin: string;
}

export interface DocumentState extends Entry {
  /** Older work, the newest last; and undone work, the next to redo last. */
  readonly past: readonly Entry[];
  readonly future: readonly Entry[];
  /** The design held for comparison, or null. */
  readonly held: Model | null;
  /** Model at the start of the open gesture, or null. */
  readonly mark: Model | null;
  /** Why the last edit was refused, in the contract's words; null when it was taken. */
  readonly refusal: string | null;
}

/** What is kept of a document from one visit to the next. */
export type Work = Pick<DocumentState, 'model' | 'origin' | 'past' | 'future' | 'held'>;

/** Most entries of the history, undone ones included. */
export const MOST_HISTORY = 200;

export type DocumentStore = ReturnType<typeof createDocument>;

/** Whether two models say the same, key by key: what their files would hold decides. */
export function sameModel(one: Model | null, other: Model | null): boolean {
  if (one === other) return true;
  return one !== null && other !== null && writeModel(one) === writeModel(other);
}

/** Makes a document store; `model` must be sound. */
export function createDocument(model: Model, origin: string) {
  const store = createStore<DocumentState>(() => ({
    model,
    past: [],
    future: [],
    held: null,
    mark: null,
    refusal: null,
    origin,
  }));
  const { getState, setState } = store;

  function push(before: Model): Pick<DocumentState, 'past' | 'future'> {
    const { past, origin: from } = getState();
    return { past: [...past, { model: before, origin: from }].slice(-MOST_HISTORY), future: [] };
  }

  /** Applies a change if the result is sound; otherwise keeps the model and says why. Returns whether it was taken. */
  function edit(change: (model: Model) => Model): boolean {
    const { model: before, mark, origin: file, refusal } = getState();
    const wanted = change(before);
    const read = readModel(wanted, file);
    if (!read.ok) {
      setState({ refusal: formatModelError(read.error) });
      return false;
    }
    // What changes nothing leaves no entry that undo would seem to do nothing with.
    if (wanted === before || (mark === null && sameModel(read.model, before))) {
      if (refusal !== null) setState({ refusal: null });
      return true;
    }
    setState({ model: read.model, refusal: null, ...(mark === null ? push(before) : {}) });
    return true;
  }

  function beginGesture(): void {
    if (getState().mark === null) setState({ mark: getState().model });
  }

  /** Ends the open gesture as one history entry; none when it came back to where it began. */
  function endGesture(): void {
    const { mark, model: now } = getState();
    if (mark === null) return;
    setState(
      sameModel(mark, now)
        ? { mark: null, refusal: null, model: mark }
        : { mark: null, refusal: null, ...push(mark) },
    );
  }

  function cancelGesture(): void {
    const { mark } = getState();
    if (mark !== null) setState({ model: mark, mark: null, refusal: null });
  }

  function undo(): void {
    endGesture();
    const { past, future, model: now, origin: from } = getState();
    const before = past.at(-1);
    if (before === undefined) return;
    setState({
      ...before,
      past: past.slice(0, -1),
      future: [...future, { model: now, origin: from }],
      refusal: null,
    });
  }

  function redo(): void {
    endGesture();
    const { past, future, model: now, origin: from } = getState();
    const next = future.at(-1);
    if (next === undefined) return;
    setState({
      ...next,
      past: [...past, { model: now, origin: from }],
      future: future.slice(0, -1),
      refusal: null,
    });
  }

  /** Replaces the work by another sound model; undo leads back to the present one. */
  function load(next: Model, from: string): void {
    endGesture();
    setState({ ...push(getState().model), model: next, origin: from, refusal: null });
  }

  /** Puts back what was kept from an earlier visit, history and all; its models must be sound. */
  function restore(kept: Work): void {
    const { model: now, origin: from, past, future, held } = kept;
    setState({
      model: now,
      origin: from,
      held,
      past: past.slice(-MOST_HISTORY),
      future: future.slice(-MOST_HISTORY),
      mark: null,
      refusal: null,
    });
  }

  function hold(): void {
    setState({ held: getState().model });
  }

  function release(): void {
    setState({ held: null });
  }

  return {
    ...store,
    edit,
    beginGesture,
    endGesture,
    cancelGesture,
    undo,
    redo,
    load,
    restore,
    hold,
    release,
  };
}
