/** What can be drawn as a curve: the table's measures that are one wheel's, and the two gaps of the tie rod. */
import {
  MEASURE_KEYS,
  MEASURE_TABLE,
  type MeasureRow,
  type Model,
  measureRow,
  missingParts,
} from '../../solver/index.ts';
import type { SweepKey } from '../../solver/sweep.ts';

/** A row of the table of measures, or one that reads like it. */
export type SweepRow = Pick<MeasureRow, 'kind' | 'label' | 'sense'> & { readonly key: SweepKey };

function gapRow(key: 'wheelGap' | 'tyreGap', other: string): SweepRow {
  return {
    key,
    kind: 'millimetre',
    label: `tie rod to ${other}`,
    sense: { positive: 'apart {}', negative: 'overlap {}', none: 'touching' },
  };
}

const OWN = new Set<string>(MEASURE_KEYS);

function isOwn(row: MeasureRow): row is MeasureRow & { readonly key: SweepKey } {
  return OWN.has(row.key);
}

const TABLE: readonly MeasureRow[] = MEASURE_TABLE;

/** The rows a model has the parts for, in the order people read them. */
export function sweepRows(model: Model): readonly SweepRow[] {
  const measured = TABLE.filter(isOwn).filter((row) => missingParts(model, row).length === 0);
  return [gapRow('wheelGap', 'wheel'), gapRow('tyreGap', 'tyre'), ...measured];
}

/** The row of a key, whether the model has its parts or not. */
export function sweepRow(key: SweepKey): SweepRow {
  if (key === 'wheelGap') return gapRow(key, 'wheel');
  if (key === 'tyreGap') return gapRow(key, 'tyre');
  return { ...measureRow(key), key };
}
