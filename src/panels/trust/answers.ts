/** The answers whose ± can be looked into: the measures of the set pose, and the toe change from there. */
import {
  type AnswerKey,
  type Knowledge,
  type KnownKey,
  MEASURE_TABLE,
  measureRow,
  type ToeChangeKey,
  type UnitKind,
} from '../../../solver/index.ts';

export interface AnswerRow {
  readonly key: KnownKey;
  readonly label: string;
  readonly kind: UnitKind;
}

const TOE: Readonly<Record<ToeChangeKey, string>> = {
  toeToBump: 'toe change, set pose to full bump',
  toeToDroop: 'toe change, set pose to full droop',
  toeChange: 'toe change over the travel',
};

export function answerRow(key: KnownKey): AnswerRow {
  if (key in TOE) return { key, label: TOE[key as ToeChangeKey], kind: 'degree' };
  const { label, kind } = measureRow(key as AnswerKey);
  return { key, label, kind };
}

const ALL: readonly KnownKey[] = [
  'bumpSteer',
  'toeChange',
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
