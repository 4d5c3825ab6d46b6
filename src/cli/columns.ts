/** A pose's answer laid out in columns, the same for every pose of one model. */
import { csvField as csvText } from '../../solver/index.ts';
import { INPUT_ROWS, MEASURE_ROWS, type Row } from './rows.ts';

/** The object of `pose --json`, of a pose that is reached or of one that is not. */
export type Answer = Readonly<Record<string, unknown>>;

/** The value at a dotted path; undefined where a part is missing. */
export function valueAt(answer: unknown, key: string): unknown {
  return key
    .split('.')
    .reduce<unknown>((value, step) => (value as Answer | null | undefined)?.[step], answer);
}

/** One number of an answer. */
export interface Column {
  /** Name and unit, such as `points.wheelCentre.x [mm]`. */
  readonly header: string;
  readonly read: (answer: Answer) => unknown;
}

function spread(row: Row, letters: string, path: string, item?: number): readonly Column[] {
  return [...letters].map((letter, index) => ({
    header: `${path}.${letter} [${row.unit}]`,
    read: (answer) => {
      const value = valueAt(answer, row.key) as readonly unknown[] | null | undefined;
      const list = item === undefined ? value : (value?.[item] as readonly unknown[] | undefined);
      return list?.[index];
    },
  }));
}

function columnsOf(row: Row, design: Answer): readonly Column[] {
  const value = valueAt(design, row.key);
  if (value === undefined) return [];
  if (row.shape === 'points') {
    return (value as readonly unknown[]).flatMap((_, item) =>
      spread(row, 'xyz', `${row.key}[${item}]`, item),
    );
  }
  if (row.shape !== undefined) return spread(row, row.shape, row.key);
  return [{ header: `${row.key} [${row.unit}]`, read: (answer) => valueAt(answer, row.key) }];
}

/** Columns for the measures a reached pose of the model has; `design` is such a pose's answer. */
export function measureColumns(design: Answer): readonly Column[] {
  return MEASURE_ROWS.flatMap((row) => columnsOf(row, design));
}

/** Columns every pose has, reached or not. */
export const POSE_COLUMNS: readonly Column[] = [
  ...INPUT_ROWS.flatMap((row) => columnsOf(row, { travel: 0, rack: 0 })),
  { header: 'reached', read: (answer) => isReached(answer) },
  { header: 'fails', read: ({ fails }) => fails },
];

/** Names of the limits a pose lies outside of. */
export const OUTSIDE_COLUMN: Column = {
  header: 'outside',
  read: ({ outside }) => (Array.isArray(outside) ? outside.join(';') : undefined),
};

export function isReached(answer: Answer): boolean {
  return answer['reached'] !== false;
}

/** A value as a field of a CSV line: unrounded numbers, nothing where there is no value. */
export function csvField(value: unknown): string {
  return value === undefined || value === null ? '' : csvText(String(value));
}
