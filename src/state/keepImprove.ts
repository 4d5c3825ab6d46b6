/** The lists of what is to be improved, and what is half typed into them, kept on the shelf. What is damaged in them is not taken. */
import type { Aiming, Height, Lock, Mover, Stay, Wish } from '../../solver/improve/plan.ts';
import { AXLE_KEYS, type AxleKey, MEASURE_KEYS, type MeasureKey } from '../../solver/index.ts';
import { NO_ROWS, type PlanRows, type PlanStore, type Row } from './improvePlan.ts';
import type { Shelf } from './shelf.ts';

export const IMPROVE_KEY = 'armscribe.improve';

type Read = Readonly<Record<string, unknown>>;

function readObject(value: unknown): Read {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? (value as Read)
    : {};
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function isOneOf<T extends string>(known: readonly T[], value: unknown): value is T {
  return known.some((each) => each === value);
}

const LOCKS: readonly Lock[] = ['straight', 'left', 'right'];
const AIMINGS: readonly Aiming[] = ['exactly', 'atLeast', 'atMost'];
const ANY_MEASURE: readonly (MeasureKey | AxleKey)[] = [...MEASURE_KEYS, ...AXLE_KEYS];

function isHeight(value: unknown): value is Height {
  return isNumber(value) || isOneOf(['ride', 'bump', 'droop'], value);
}

function moverOf(value: unknown): Mover | null {
  const { inputs, from, to } = readObject(value);
  if (!Array.isArray(inputs) || !inputs.every((key): key is string => typeof key === 'string')) {
    return null;
  }
  return inputs.length > 0 && isNumber(from) && isNumber(to) ? { inputs, from, to } : null;
}

function wishOf(value: unknown): Wish | null {
  const read = readObject(value);
  const { of, value: goal, within, matters, from, to, measure, height, lock, aiming, key } = read;
  if (!isNumber(goal) || !isNumber(within) || !isNumber(matters)) return null;
  if (within <= 0 || matters <= 0) return null;
  const weighed = { value: goal, within, matters };
  if (of === 'toeChange' && isHeight(from) && isHeight(to)) return { of, from, to, ...weighed };
  if (of === 'least' && typeof key === 'string') return { of, key, ...weighed };
  if (!isHeight(height) || !isOneOf(AIMINGS, aiming)) return null;
  if (of === 'change' && isOneOf(MEASURE_KEYS, measure)) {
    return { of, measure, height, aiming, ...weighed };
  }
  if (of !== 'measure' || !isOneOf(ANY_MEASURE, measure) || !isOneOf(LOCKS, lock)) return null;
  return { of, measure, height, lock, aiming, ...weighed };
}

function stayOf(value: unknown): Stay | null {
  const { measure, height, lock, within } = readObject(value);
  if (!isOneOf(ANY_MEASURE, measure) || !isHeight(height) || !isOneOf(LOCKS, lock)) return null;
  return isNumber(within) && within > 0 ? { measure, height, lock, within } : null;
}

function rowsOf<T>(value: unknown, read: (value: unknown) => T | null): readonly Row<T>[] {
  if (!Array.isArray(value)) return [];
  return value.flatMap((each): Row<T>[] => {
    const { id, of } = readObject(each);
    const row = read(of);
    return row !== null && isNumber(id) ? [{ id, of: row }] : [];
  });
}

/** Only the texts: why they were refused is found out again when they are entered. */
function draftsOf(value: unknown): PlanRows['drafts'] {
  return Object.fromEntries(
    Object.entries(readObject(value)).flatMap(([key, draft]) => {
      const { text } = readObject(draft);
      return typeof text === 'string' ? [[key, { text, message: null }]] : [];
    }),
  );
}

function planRows(value: unknown): PlanRows {
  const read = readObject(value);
  const holds = readObject(read['holds']);
  const on = (name: keyof PlanRows['holds']): boolean => {
    const kept = holds[name];
    return typeof kept === 'boolean' ? kept : NO_ROWS.holds[name];
  };
  return {
    movers: rowsOf(read['movers'], moverOf),
    wishes: rowsOf(read['wishes'], wishOf),
    stays: rowsOf(read['stays'], stayOf),
    holds: { limits: on('limits'), gaps: on('gaps'), broken: on('broken') },
    drafts: draftsOf(read['drafts']),
  };
}

function parsed(text: string | null): Read {
  try {
    return readObject(JSON.parse(text ?? '{}'));
  } catch {
    return {};
  }
}

/** Takes the kept lists, and from then on writes them at every change. */
export function keepImprove(plan: PlanStore, shelf: Shelf): void {
  const kept = parsed(shelf.read(IMPROVE_KEY));
  const before = kept['before'];
  plan.setState({
    ...planRows(kept),
    before: typeof before === 'object' && before !== null ? planRows(before) : null,
  });
  plan.subscribe((state) => {
    shelf.write(IMPROVE_KEY, JSON.stringify(state));
  });
}
