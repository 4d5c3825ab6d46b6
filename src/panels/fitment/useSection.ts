/** The section view of a column's model at the bench's pose or at the rod's worst place. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { type SectionView, sectionView } from '../../../solver/fitment/sectionView.ts';
import { assemble, type Model } from '../../../solver/index.ts';
import { inputs } from '../../state/bench.ts';
import { fittedGaps } from '../../state/fitted.ts';
import type { ColumnKey } from './columns.ts';
import { pairKey } from './gapRow.ts';

const ROD_PAIR = pairKey(['tieRod', 'wheel']);

export type SectionPlace = 'bench' | 'worst';

export interface Section {
  readonly view: SectionView | null;
  /** True where the worst place is known. */
  readonly hasWorst: boolean;
}

export function useSection(key: ColumnKey, model: Model | null, place: SectionPlace): Section {
  // The bench stands still behind the open sheet: nothing moves here per frame.
  const travel = useStore(inputs, (state) => state.travel);
  const rack = useStore(inputs, (state) => state.rack);
  const worst = useStore(fittedGaps, ({ columns: { [key]: known } }) => {
    if (known?.answer == null || known.model !== model) return null;
    return known.answer.proven.find(({ names }) => pairKey(names) === ROD_PAIR) ?? null;
  });
  const at = place === 'worst' && worst !== null ? worst : { travel, rack };
  const view = useMemo(
    () => (model === null ? null : sectionView(assemble(model), at.travel, at.rack)),
    [model, at.travel, at.rack],
  );
  return { view, hasWorst: worst !== null };
}
