/** Slow state of the view, as hooks of the scene. Travel, rack and poses never come this way. */
import { useStore } from 'zustand';
import { documentStore, view } from '../state/bench.ts';
import type { LengthUnit, Theme } from '../state/view.ts';

export function useTheme(): Theme {
  return useStore(view, (state) => state.theme);
}

export function useUnit(): LengthUnit {
  return useStore(view, (state) => state.unit);
}

/** True while a design is held for comparison. */
export function useIsHeld(): boolean {
  return useStore(documentStore, (state) => state.held !== null);
}
