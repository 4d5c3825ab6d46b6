/**
 * Work kept from one visit to the next. Every finished change goes at once into a small journal on the shelf, so that a
 * crash right after it loses nothing; the history follows into the archive a moment later.
 */
import { type DocumentState, type DocumentStore, type Entry, sameModel } from './document.ts';
import type { Notices } from './notices.ts';
import { parseRecord, type RecordResult, readRecord, recordOf } from './record.ts';
import { type AsideParts, type Damaged, setAside } from './setAside.ts';
import type { Archive } from './shelf.ts';

export const JOURNAL_KEY = 'armscribe.work';
export const ARCHIVE_KEY = 'work';
/** Damaged records go under this and the time, whole. */
export const SET_ASIDE_KEY = 'armscribe.work.set-aside';

/** How long after a change the slow writes follow, ms. */
export const KEEP_AFTER = 300;

export interface KeepParts extends AsideParts {
  readonly documentStore: DocumentStore;
  readonly archive: Archive;
  /** Called after work was kept, for other tabs to hear. */
  readonly onKept: () => void;
}

export interface Keeping {
  /** Settles when the archive has been looked into. */
  readonly restored: Promise<void>;
  /** Writes what is not written yet: the page may end at any time after. */
  flush(): void;
}

function damaged(text: string, why: string): Damaged {
  return {
    text,
    key: SET_ASIDE_KEY,
    notice: 'damaged',
    words: `What this browser kept of your work could not be read (${why}). It was set aside, not thrown away.`,
    fileName: 'armscribe-damaged-work.txt',
  };
}

/** Takes the journal's work; answers when it was written, or 0 when there is none. */
function takeJournal(parts: KeepParts): number {
  const text = parts.shelf.read(JOURNAL_KEY);
  if (text === null) return 0;
  const record = parseRecord(text);
  if (record.ok) {
    parts.documentStore.restore(record.work);
    return record.saved;
  }
  setAside(parts, damaged(text, record.why));
  parts.shelf.remove(JOURNAL_KEY);
  return 0;
}

/**
 * Joins the archive's history to the work on the bench. `first` is the model the visit began with, `journalled` when the
 * journal was written. Nothing a person has done since is replaced: then the archive's work goes before it, for undo.
 */
export function joinArchive(
  state: DocumentState,
  first: DocumentState['model'],
  journalled: number,
  record: RecordResult & { ok: true },
): Partial<DocumentState> {
  const { work, saved } = record;
  const isTouched = state.model !== first || state.past.length > 0 || state.mark !== null;
  if (!isTouched && saved > journalled) return { ...work };
  const isSame = sameModel(work.model, first);
  const kept: Entry = { model: work.model, origin: work.origin };
  const before = isSame ? work.past : [...work.past, kept];
  return {
    past: [...before, ...state.past],
    future: isSame && !isTouched ? work.future : state.future,
  };
}

async function takeArchive(parts: KeepParts, journalled: number): Promise<void> {
  const { documentStore, archive } = parts;
  const first = documentStore.getState().model;
  const value = await archive.read(ARCHIVE_KEY);
  if (value === undefined) return;
  const record = readRecord(value);
  if (!record.ok)
    return setAside(parts, damaged(JSON.stringify(value) ?? String(value), record.why));
  documentStore.setState((state) => joinArchive(state, first, journalled, record));
}

/** Says once that nothing is kept here, and takes it back when something is. */
function sayWhetherKept(notices: Notices, isKept: boolean): void {
  if (isKept) {
    notices.dismiss('unkept');
    return;
  }
  notices.say({
    key: 'unkept',
    kind: 'alert',
    text: 'This browser keeps nothing here (a private window, or its storage is full): the work will be lost when the page is closed. Save it as a file.',
  });
}

/** Starts keeping the document, restoring first what was kept: the journal before this returns, the archive soon after. */
export function keepDocument(parts: KeepParts): Keeping {
  const { documentStore, shelf, archive, now, onKept } = parts;
  const journalled = takeJournal(parts);
  let written = documentStore.getState();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isShelfGood = true;

  function writeJournal(): void {
    const state = documentStore.getState();
    const { model, held, origin } = written;
    if (state.model === model && state.held === held && state.origin === origin) return;
    written = state;
    isShelfGood = shelf.write(JOURNAL_KEY, JSON.stringify(recordOf(state, now(), false)));
    onKept();
  }

  async function writeArchive(): Promise<void> {
    // Never before the archive was read: its history would be lost.
    await restored;
    const record = recordOf(documentStore.getState(), now(), true);
    sayWhetherKept(parts.notices, (await archive.write(ARCHIVE_KEY, record)) || isShelfGood);
  }

  function flush(): void {
    if (timer === undefined) return;
    clearTimeout(timer);
    timer = undefined;
    writeJournal();
    void writeArchive();
  }

  documentStore.subscribe((state, before) => {
    if (state.refusal !== before.refusal && state.model === before.model) return;
    // Within a gesture the journal waits with the rest: a drag changes the model at every frame.
    if (state.mark === null) writeJournal();
    clearTimeout(timer);
    timer = setTimeout(flush, KEEP_AFTER);
  });
  const restored = takeArchive(parts, journalled);
  return { restored, flush };
}
