/** Whether readings and curves show their ±: as chosen and kept on the shelf, else wherever the model states one. */
import { createStore } from 'zustand/vanilla';
import type { Model } from '../../solver/index.ts';
import type { DocumentStore } from './document.ts';
import type { Shelf } from './shelf.ts';

export const PLUS_MINUS_KEY = 'armscribe.plusMinus';

export interface PlusMinusState {
  /** What was chosen; null: nothing yet. */
  readonly chosen: boolean | null;
  readonly isShown: boolean;
}

/** Whether a model says how well any of it was measured. */
export function statesPlusMinus(model: Model): boolean {
  return Object.values(model.tolerance ?? {}).some((plusMinus) => plusMinus > 0);
}

export type PlusMinusStore = ReturnType<typeof createPlusMinus>;

export function createPlusMinus(documentStore: DocumentStore, shelf: Shelf) {
  const kept = shelf.read(PLUS_MINUS_KEY);
  const chosen = kept === 'shown' ? true : kept === 'hidden' ? false : null;
  const shownIn = (model: Model) => chosen ?? statesPlusMinus(model);
  const store = createStore<PlusMinusState>(() => ({
    chosen,
    isShown: shownIn(documentStore.getState().model),
  }));
  documentStore.subscribe(({ model }, before) => {
    const { chosen: now } = store.getState();
    if (model === before.model || now !== null) return;
    store.setState({ isShown: statesPlusMinus(model) });
  });

  function show(isShown: boolean): void {
    shelf.write(PLUS_MINUS_KEY, isShown ? 'shown' : 'hidden');
    store.setState({ chosen: isShown, isShown });
  }

  return { ...store, show };
}
