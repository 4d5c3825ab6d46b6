/** The answers whose ± can be looked into: the measures of the set pose, and the toe change from there. */
import { MEASURE_TABLE, measureRow, type UnitKind } from '../../../solver/index.ts';
import type { Knowledge, KnownKey } from '../../worker/knowledge.ts';

export interface AnswerRow {
  readonly key: KnownKey;
  readonly label: string;
  readonly kind: UnitKind;
}

const TOE: Readonly<Record<'toeToBump' | 'toeToDroop', string>> = {
  toeToBump: 'toe change, set pose to full bump',
  toeToDroop: 'toe change, set pose to full droop',
};

export function answerRow(key: KnownKey): AnswerRow {
  if (key === 'toeToBump' || key === 'toeToDroop') return { key, label: TOE[key], kind: 'degree' };
  const { label, kind } = measureRow(key);
  return { key, label, kind };
}

const ALL: readonly KnownKey[] = [
  'bumpSteer',
  'toeToBump',
  'toeToDroop',
  ...MEASURE_TABLE.map(({ key }) => key as KnownKey).filter((key) => key !== 'bumpSteer'),
];

/** The answers there are, the ones that points spoil most first; all that may be while nothing is known. */
export function answerRows(known: Knowledge | null): readonly AnswerRow[] {
  const answers = known?.answers ?? null;
  return ALL.filter((key) => (answers === null ? key === 'bumpSteer' : key in answers)).map(
    answerRow,
  );
}
