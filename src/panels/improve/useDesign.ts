/** The present design as the sheet reads it: while a point is dragged, as it was before the drag. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import {
  assemble,
  type Corner,
  type Margin,
  type Model,
  marginsOf,
} from '../../../solver/index.ts';
import { documentStore } from '../../state/bench.ts';
import { surfacesOf } from '../../state/surfaces.ts';

export interface Design {
  readonly model: Model;
  readonly corner: Corner;
  readonly margins: readonly Margin[];
}

export function useDesign(): Design {
  const model = useStore(documentStore, (state) => state.mark ?? state.model);
  return useMemo(() => {
    const corner = assemble(model);
    return { model, corner, margins: marginsOf(corner, { meshes: surfacesOf(model) }) };
  }, [model]);
}
