/** Readings as they were typed, and which points were fitted to them, kept on the shelf. What is damaged in it is not taken. */
import { READ_POINTS, type ReadPoint } from '../../solver/fit/points.ts';
import { READ_QUANTITIES } from '../../solver/fit/reading.ts';
import type { FittedInput } from './fitLineage.ts';
import type { Cell, FitRow } from './fitRows.ts';
import type { FitStore } from './fits.ts';
import type { Shelf } from './shelf.ts';
import type { LengthUnit } from './view.ts';

export const FITS_KEY = 'armscribe.fit';

const KEPT = ['rows', 'removed', 'lineage', 'heights', 'pasted'] as const;

const UNITS: readonly LengthUnit[] = ['mm', 'inch', 'sixteenth'];

type Read = Readonly<Record<string, unknown>>;

function readObject(value: unknown): Read {
  return typeof value === 'object' && value !== null ? (value as Read) : {};
}

function cellOf(value: unknown): Cell {
  const { text, unit } = readObject(value);
  return {
    text: typeof text === 'string' ? text : '',
    unit: UNITS.find((known) => known === unit) ?? 'mm',
  };
}

function pointOf(value: unknown, otherwise: ReadPoint): ReadPoint {
  return READ_POINTS.find((known) => known === value) ?? otherwise;
}

/** Ids are given anew, in order after `last`. */
function rowsOf(value: unknown, last = 0): readonly FitRow[] {
  if (!Array.isArray(value)) return [];
  return value.flatMap((item, index): FitRow[] => {
    const read = readObject(item);
    const quantity = READ_QUANTITIES.find((known) => known === read['quantity']);
    const between: readonly unknown[] = Array.isArray(read['between']) ? read['between'] : [];
    if (quantity === undefined) return [];
    return [
      {
        id: last + index + 1,
        quantity,
        travel: cellOf(read['travel']),
        rack: cellOf(read['rack']),
        value: cellOf(read['value']),
        plusMinus: cellOf(read['plusMinus']),
        between: [pointOf(between[0], 'lowerFrontPivot'), pointOf(between[1], 'lowerBallJoint')],
        isLeftOut: read['isLeftOut'] === true,
      },
    ];
  });
}

function lineageOf(value: unknown): readonly FittedInput[] {
  if (!Array.isArray(value)) return [];
  return value.flatMap((item): FittedInput[] => {
    const { key, measured, fitted } = readObject(item);
    const isWhole = typeof key === 'string' && Number.isFinite(measured) && Number.isFinite(fitted);
    return isWhole ? [{ key, measured: Number(measured), fitted: Number(fitted) }] : [];
  });
}

function parsed(text: string | null): Read {
  try {
    return readObject(JSON.parse(text ?? '{}'));
  } catch {
    return {};
  }
}

/** Takes the kept readings, and from then on writes them at every change. */
export function keepFits(fits: FitStore, shelf: Shelf): void {
  const kept = parsed(shelf.read(FITS_KEY));
  const pasted = kept['pasted'];
  const found = rowsOf(kept['rows']);
  fits.setState({
    rows: found,
    removed: rowsOf(kept['removed'], found.length),
    lineage: lineageOf(kept['lineage']),
    ...(kept['heights'] === undefined ? {} : { heights: cellOf(kept['heights']) }),
    pasted: typeof pasted === 'string' ? pasted : '',
  });
  fits.subscribe((state, before) => {
    if (KEPT.some((key) => state[key] !== before[key])) {
      const entries = KEPT.map((key) => [key, state[key]]);
      shelf.write(FITS_KEY, JSON.stringify(Object.fromEntries(entries)));
    }
  });
}
