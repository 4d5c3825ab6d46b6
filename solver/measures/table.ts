/** The table of measures: one row a measure, with its unit, its name, what it means and what its sign means. */
import type { Model } from '../model/model.ts';
import type { AxleKey } from './axle.ts';
import type { MeasureKey } from './keys.ts';
import type { MeasureRow } from './rows/row.ts';
import { CENTRE_ROWS, SPRINGING_ROWS } from './rows/springing.ts';
import { HALF_SHAFT_ROWS, JOINT_ROWS, STEERING_ROWS } from './rows/steering.ts';
import { ALIGNMENT_ROWS, BUMP_ROWS, STEERING_AXIS_ROWS } from './rows/wheel.ts';

export type { MeasureGroup, MeasureRow, Sense, UnitKind } from './rows/row.ts';

/** Every measure of a pose and of the axle, by group, in the order people read them. */
export const MEASURE_TABLE: readonly MeasureRow[] = [
  ...ALIGNMENT_ROWS,
  ...STEERING_AXIS_ROWS,
  ...BUMP_ROWS,
  ...SPRINGING_ROWS,
  ...CENTRE_ROWS,
  ...STEERING_ROWS,
  ...HALF_SHAFT_ROWS,
  ...JOINT_ROWS,
];

const ROWS = new Map(MEASURE_TABLE.map((row) => [row.key, row]));

/** The row of a measure. */
export function measureRow(key: MeasureKey | AxleKey): MeasureRow {
  const row = ROWS.get(key);
  if (row === undefined) throw new Error(`No row in the table of measures for ${key}`);
  return row;
}

/**
 * What the value's sign means in plain words: "top leans in 1.2°" with the unsigned amount and its unit, "top leans in"
 * without one. `value` as it is shown, so that what reads as zero says so; undefined for a measure without a sense.
 */
export function inWords(row: MeasureRow, value: number, amount?: string): string | undefined {
  const { sense } = row;
  if (sense === undefined || !Number.isFinite(value)) return undefined;
  if (value === 0) return sense.none;
  const words = value > 0 ? sense.positive : sense.negative;
  return amount === undefined
    ? words.replace(/\{\} | \{\}$/, '')
    : words.replace('{}', () => amount);
}

function holds(model: Model, path: string): boolean {
  return (
    path
      .split('.')
      .reduce<unknown>(
        (part, key) => (part as Record<string, unknown> | undefined)?.[key],
        model,
      ) !== undefined
  );
}

/** The keys that the model lacks and the measure cannot do without. */
export function missingParts(model: Model, row: Pick<MeasureRow, 'needs'>): readonly string[] {
  return (row.needs ?? []).filter((path) => !holds(model, path));
}
