/** The designs beside the present one, for components: they render again when one comes, goes or is named anew. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { documentStore } from '../state/bench.ts';
import { type BesideDesign, designsBeside } from '../state/designStore.ts';
import { designs } from '../state/designs.ts';

export function useBeside(): readonly BesideDesign[] {
  const kept = useStore(designs, (state) => state.kept);
  const held = useStore(documentStore, (state) => state.held);
  return useMemo(() => designsBeside(kept, held), [kept, held]);
}
