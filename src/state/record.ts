/** Kept work as a record of plain data, and back again: nothing comes back that has not passed the model's own door. */
import { formatModelError, type Model, readModel } from '../../solver/index.ts';
import type { DocumentState, Entry, Work } from './document.ts';

const FORM = 'armscribe-work/1';

/** What messages call a kept record, in the place of a file's name. */
const RECORD_NAME = 'kept work';

/** Entries of history that are kept on each side: enough to go back over an evening, small enough to write at every change. */
const KEPT_HISTORY = 50;

export interface WorkRecord {
  readonly form: typeof FORM;
  /** When it was written, ms since 1970. */
  readonly saved: number;
  readonly model: Model;
  readonly origin: string;
  readonly held: Model | null;
  readonly past?: readonly Entry[];
  readonly future?: readonly Entry[];
}

export type RecordResult =
  | { readonly ok: true; readonly saved: number; readonly work: Work }
  | { readonly ok: false; readonly why: string };

/** The record of the present work; `isWhole` takes the history with it. */
export function recordOf(state: DocumentState, saved: number, isWhole: boolean): WorkRecord {
  const { model, origin, held, past, future } = state;
  return {
    form: FORM,
    saved,
    model,
    origin,
    held,
    ...(isWhole ? { past: past.slice(-KEPT_HISTORY), future: future.slice(-KEPT_HISTORY) } : {}),
  };
}

function property(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Record<string, unknown>)[key]
    : undefined;
}

function originIn(value: unknown): string {
  const origin = property(value, 'origin');
  return typeof origin === 'string' && origin !== '' ? origin : RECORD_NAME;
}

/** Entries from the newest back to the first that is damaged: beyond a gap, undo would skip work unseen. */
function entriesIn(value: unknown): readonly Entry[] {
  if (!Array.isArray(value)) return [];
  const sound: Entry[] = [];
  for (const item of value.slice(-KEPT_HISTORY).reverse()) {
    const read = readModel(property(item, 'model'), RECORD_NAME);
    if (!read.ok) break;
    sound.push({ model: read.model, origin: originIn(item) });
  }
  return sound.reverse();
}

/** Reads a record of any content. Its model must be sound; a damaged held design or history is left out. */
export function readRecord(value: unknown): RecordResult {
  if (property(value, 'form') !== FORM) return { ok: false, why: `${RECORD_NAME}: not a record` };
  const read = readModel(property(value, 'model'), RECORD_NAME);
  if (!read.ok) return { ok: false, why: formatModelError(read.error) };
  const held = readModel(property(value, 'held'), RECORD_NAME);
  const saved = property(value, 'saved');
  return {
    ok: true,
    saved: typeof saved === 'number' && Number.isFinite(saved) ? saved : 0,
    work: {
      model: read.model,
      origin: originIn(value),
      held: held.ok ? held.model : null,
      past: entriesIn(property(value, 'past')),
      future: entriesIn(property(value, 'future')),
    },
  };
}

/** As `readRecord`, from text that may not even be JSON. */
export function parseRecord(text: string): RecordResult {
  try {
    return readRecord(JSON.parse(text));
  } catch {
    return { ok: false, why: `${RECORD_NAME}: not readable as JSON` };
  }
}
