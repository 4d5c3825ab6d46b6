/** The designs of the sheet as columns: the present one, yesterday's, those kept and shown. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { MeasuredDesign } from '../../../solver/index.ts';
import { useBeside } from '../../charts/useBeside.ts';
import { documentStore } from '../../state/bench.ts';
import { type ColumnKey, comparison, measuredOf } from '../../state/comparison.ts';
import { type Mark, PRESENT_MARK } from '../../state/marks.ts';

export interface Column {
  readonly key: ColumnKey;
  readonly name: string;
  readonly mark: Mark;
  readonly measured: MeasuredDesign;
}

export interface Columns {
  readonly columns: readonly Column[];
  /** Place of the design that differences are taken from. */
  readonly base: number;
}

/** While a point is dragged the columns stay as they were: they follow when it is let go. */
export function useColumns(): Columns {
  const model = useStore(documentStore, (state) => state.mark ?? state.model);
  const beside = useBeside();
  const base = useStore(comparison, (state) => state.base);
  return useMemo(() => {
    const present: Column = {
      key: 'present',
      name: 'present',
      mark: PRESENT_MARK,
      measured: measuredOf(model),
    };
    const others = beside.map(
      ({ key, name, mark, model: other }): Column => ({
        key,
        name,
        mark,
        measured: measuredOf(other),
      }),
    );
    const columns = [present, ...others];
    return {
      columns,
      base: Math.max(
        0,
        columns.findIndex(({ key }) => key === base),
      ),
    };
  }, [model, beside, base]);
}

/** What a design is called in a file: its letter and its name. */
export function fileName({ key, mark, measured, name }: Column): string {
  return `${mark.letter} ${key === 'yesterday' ? name : measured.model.name}`;
}
