/**
 * The document: the model being worked on, its history by gesture, and the design held as "yesterday".
 * A gesture (a drag, a slider held) writes live and becomes one history entry when it ends.
 */
import { createStore } from 'zustand/vanilla';
import { formatModelError, type Model, readModel } from '../../solver/index.ts';

export interface DocumentState {
  readonly model: Model;
  /** Older models, the newest last; and undone ones, the next to redo last. */
  readonly past: readonly Model[];
  readonly future: readonly Model[];
  /** The design held for comparison, or null. */
  readonly held: Model | null;
  /** Model at the start of the open gesture, or null. */
  readonly mark: Model | null;
  /** Why the last edit was refused, in the contract's words; null when it was taken. */
  readonly refusal: string | null;
  /** The file or shipped model the work came from. */
  readonly origin: string;
}

const MOST_HISTORY = 200;

export type DocumentStore = ReturnType<typeof createDocument>;

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
    return { past: [...getState().past, before].slice(-MOST_HISTORY), future: [] };
  }

  /** Applies a change if the result is sound; otherwise keeps the model and says why. Returns whether it was taken. */
  function edit(change: (model: Model) => Model): boolean {
    const { model: before, mark, origin: file } = getState();
    const wanted = change(before);
    if (wanted === before) return true;
    const read = readModel(wanted, file);
    if (!read.ok) {
      setState({ refusal: formatModelError(read.error) });
      return false;
    }
    setState({ model: read.model, refusal: null, ...(mark === null ? push(before) : {}) });
    return true;
  }

  function beginGesture(): void {
    if (getState().mark === null) setState({ mark: getState().model });
  }

  function endGesture(): void {
    const { mark, model: now } = getState();
    if (mark === null) return;
    setState({ mark: null, refusal: null, ...(mark === now ? {} : push(mark)) });
  }

  function cancelGesture(): void {
    const { mark } = getState();
    if (mark !== null) setState({ model: mark, mark: null, refusal: null });
  }

  function undo(): void {
    endGesture();
    const { past, future, model: now } = getState();
    const before = past.at(-1);
    if (before === undefined) return;
    setState({ model: before, past: past.slice(0, -1), future: [...future, now], refusal: null });
  }

  function redo(): void {
    endGesture();
    const { past, future, model: now } = getState();
    const next = future.at(-1);
    if (next === undefined) return;
    setState({ model: next, past: [...past, now], future: future.slice(0, -1), refusal: null });
  }

  /** Replaces the work by another model; undo leads back to the present one. */
  function load(next: Model, from: string): void {
    endGesture();
    setState({ ...push(getState().model), model: next, origin: from, refusal: null });
  }

  /** Puts back what was kept from an earlier visit, history and all. */
  function restore(
    kept: Pick<DocumentState, 'model' | 'past' | 'future' | 'held' | 'origin'>,
  ): void {
    setState({ ...kept, mark: null, refusal: null });
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
