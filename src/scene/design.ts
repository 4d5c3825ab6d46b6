/** Which design a part is drawn for: the present one, or the one held as yesterday. */
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Corner } from '../../solver/index.ts';
import { documentStore, posed } from '../state/bench.ts';
import type { Posed } from '../state/posed.ts';

export type Design = 'present' | 'held';

export const DesignContext = createContext<Design>('present');

/** That design at the present inputs; null when nothing is held. */
export function posedOf(design: Design): Posed | null {
  return design === 'held' ? posed.held() : posed.current();
}

/** The corner to draw; renders again when its model changes, never when it moves. */
export function useCorner(design: Design): Corner | null {
  useStore(documentStore, (state) => (design === 'held' ? state.held : state.model));
  return posedOf(design)?.corner ?? null;
}

/** The corner of the surrounding design; parts are mounted only where there is one. */
export const CornerContext = createContext<Corner | null>(null);

export function usePartCorner(): Corner {
  const corner = useContext(CornerContext);
  if (corner === null) throw new Error('A part outside a corner.');
  return corner;
}
