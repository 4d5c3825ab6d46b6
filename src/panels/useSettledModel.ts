/** The design as it was before a drag that goes on, and as it is after: what follows it renders once a drag. */
import { useStore } from 'zustand';
import type { Model } from '../../solver/index.ts';
import { documentStore } from '../state/bench.ts';

export function useSettledModel(): Model {
  return useStore(documentStore, ({ mark, model }) => mark ?? model);
}
