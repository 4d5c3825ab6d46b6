/** Readings as they were typed, and which points were fitted to them, kept on the shelf. What is damaged in it is not taken. */
import { READ_POINTS, type ReadPoint } from '../../solver/fit/points.ts';
import { READ_QUANTITIES } from '../../solver/fit/reading.ts';
import type { FittedInput } from './fitLineage.ts';
import type { Cell, FitRow } from './fitRows.ts';
import type { FitStore, FitsState } from './fits.ts';
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

function keptIn(text: string | null): Partial<FitsState> {
  const kept = parsed(text);
  const pasted = kept['pasted'];
  const found = rowsOf(kept['rows']);
  return {
    rows: found,
    removed: rowsOf(kept['removed'], found.length),
    lineage: lineageOf(kept['lineage']),
    ...(kept['heights'] === undefined ? {} : { heights: cellOf(kept['heights']) }),
    pasted: typeof pasted === 'string' ? pasted : '',
  };
}

/**
 * Takes the kept readings, and from then on writes them at every change. The function returned takes over what another
 * tab has written, and writes nothing for it.
 */
export function keepFits(fits: FitStore, shelf: Shelf): (text: string) => void {
  let isTaking = false;
  fits.setState(keptIn(shelf.read(FITS_KEY)));
  fits.subscribe((state, before) => {
    if (isTaking || KEPT.every((key) => state[key] === before[key])) return;
    const entries = KEPT.map((key) => [key, state[key]]);
    shelf.write(FITS_KEY, JSON.stringify(Object.fromEntries(entries)));
  });
  return (text) => {
    isTaking = true;
    fits.setState(keptIn(text));
    isTaking = false;
  };
}
