import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Model } from '../../solver/model/model.ts';
import { createDocument } from '../../src/state/document.ts';
import {
  ARCHIVE_KEY,
  JOURNAL_KEY,
  KEEP_AFTER,
  keepDocument,
  SET_ASIDE_KEY,
} from '../../src/state/keep.ts';
import { createNotices } from '../../src/state/notices.ts';
import type { Archive, Shelf } from '../../src/state/shelf.ts';
import { FULL_MODEL } from '../support/full-model.ts';

/** What one browser holds, across visits. `isFull` makes both places refuse. */
function createBrowser() {
  const kept = new Map<string, string>();
  const archived = new Map<string, unknown>();
  const state = { isFull: false, clock: 1000, readsAfter: 0 };
  const shelf: Shelf = {
    read: (key) => kept.get(key) ?? null,
    write: (key, text) => {
      if (!state.isFull) kept.set(key, text);
      return !state.isFull;
    },
    remove: (key) => {
      kept.delete(key);
    },
  };
  const archive: Archive = {
    read: async (key) => {
      const found = structuredClone(archived.get(key));
      if (state.readsAfter > 0) await new Promise((go) => setTimeout(go, state.readsAfter));
      return found;
    },
    write: async (key, value) => {
      if (!state.isFull) archived.set(key, structuredClone(value));
      return !state.isFull;
    },
  };
  function visit() {
    const documentStore = createDocument(FULL_MODEL, 'full.json');
    const notices = createNotices();
    const saved: string[] = [];
    const keeping = keepDocument({
      documentStore,
      notices,
      shelf,
      archive,
      now: () => state.clock++,
      onKept: () => undefined,
      saveText: (text) => saved.push(text),
    });
    return { documentStore, notices, saved, ...keeping };
  }
  return { kept, archived, state, visit };
}

const offset = (value: number) => (model: Model) => ({
  ...model,
  wheel: { ...model.wheel, offset: value },
});

const offsets = (list: readonly { model: Model }[]) => list.map(({ model }) => model.wheel.offset);

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

/** Lets the slow writes follow. */
async function settle(): Promise<void> {
  await vi.advanceTimersByTimeAsync(KEEP_AFTER + 1);
}

describe('kept work', () => {
  it('is there after a crash right behind an edit, before anything else is read', () => {
    const browser = createBrowser();
    const { documentStore } = browser.visit();
    documentStore.edit(offset(31));
    documentStore.hold();
    documentStore.edit(offset(32));
    // No timer has run, nothing was flushed.
    const next = browser.visit().documentStore.getState();
    expect(next.model.wheel.offset).toBe(32);
    expect(next.held?.wheel.offset).toBe(31);
    expect(next.origin).toBe('full.json');
  });

  it('comes back with its history', async () => {
    const browser = createBrowser();
    const first = browser.visit();
    for (const value of [1, 2, 3]) first.documentStore.edit(offset(value));
    first.documentStore.undo();
    await settle();
    const next = browser.visit();
    await next.restored;
    const { model, past, future } = next.documentStore.getState();
    expect([offsets(past), model.wheel.offset, offsets(future)]).toEqual([[-12, 1], 2, [3]]);
  });

  it('keeps the step between the archive and a crash, and what is done before the archive answers', async () => {
    const browser = createBrowser();
    const first = browser.visit();
    first.documentStore.edit(offset(1));
    await settle();
    first.documentStore.edit(offset(2));
    const next = browser.visit();
    next.documentStore.edit(offset(3));
    await next.restored;
    const { model, past } = next.documentStore.getState();
    expect([...offsets(past), model.wheel.offset]).toEqual([-12, 1, 2, 3]);
  });

  it('does not write over an archive that has not been read yet', async () => {
    const browser = createBrowser();
    const first = browser.visit();
    for (const value of [1, 2]) first.documentStore.edit(offset(value));
    await settle();
    browser.state.readsAfter = 10 * KEEP_AFTER;
    const slow = browser.visit();
    slow.documentStore.edit(offset(3));
    await settle();
    expect(browser.archived.get(ARCHIVE_KEY)).toMatchObject({ model: { wheel: { offset: 2 } } });
    await vi.advanceTimersByTimeAsync(11 * KEEP_AFTER);
    const { past } = browser.archived.get(ARCHIVE_KEY) as { past: { model: Model }[] };
    expect(offsets(past)).toEqual([-12, 1, 2]);
  });

  it('is written when the page is left in the middle of a drag', () => {
    const browser = createBrowser();
    const { documentStore, flush } = browser.visit();
    documentStore.beginGesture();
    documentStore.edit(offset(7));
    expect(browser.kept.has(JOURNAL_KEY)).toBe(false);
    flush();
    expect(browser.visit().documentStore.getState().model.wheel.offset).toBe(7);
  });

  it('is not written by a visit that changes nothing', async () => {
    const browser = createBrowser();
    const { flush, restored } = browser.visit();
    await restored;
    flush();
    await settle();
    expect([browser.kept.size, browser.archived.size]).toEqual([0, 0]);
  });
});

describe('damaged kept work', () => {
  const damage = [
    ['no JSON', '{"form": "armscr', /not readable as JSON/],
    ['another thing', '[1, 2]', /not a record/],
    [
      'an unsound model',
      JSON.stringify({ form: 'armscribe-work/1', model: { ...FULL_MODEL, hub: {} } }),
      /hub\.face: found nothing/,
    ],
  ] as const;

  it.each(damage)('is set aside and said: %s', async (_, text, why) => {
    const browser = createBrowser();
    browser.kept.set(JOURNAL_KEY, text);
    const { documentStore, notices, restored, saved } = browser.visit();
    await restored;
    expect(documentStore.getState().model).toEqual(FULL_MODEL);
    const [notice] = notices.getState().list;
    expect(notice?.text).toMatch(why);
    expect(notice?.kind).toBe('alert');
    expect(
      [...browser.kept].filter(([key]) => key.startsWith(SET_ASIDE_KEY)).map(([, value]) => value),
    ).toEqual([text]);
    notice?.action?.run();
    expect(saved).toEqual([text]);
  });

  it('in the journal leaves the archive to be used', async () => {
    const browser = createBrowser();
    const first = browser.visit();
    first.documentStore.edit(offset(5));
    await settle();
    browser.kept.set(JOURNAL_KEY, 'torn');
    const next = browser.visit();
    await next.restored;
    expect(next.documentStore.getState().model.wheel.offset).toBe(5);
  });

  it('in the history costs only what lies beyond the damage', async () => {
    const browser = createBrowser();
    const first = browser.visit();
    for (const value of [1, 2, 3]) first.documentStore.edit(offset(value));
    await settle();
    const record = browser.archived.get(ARCHIVE_KEY) as { past: { model: unknown }[] };
    const middle = record.past[1];
    if (middle === undefined) throw new Error('The history is too short.');
    middle.model = 'gone';
    const next = browser.visit();
    await next.restored;
    expect(offsets(next.documentStore.getState().past)).toEqual([2]);
    expect(next.documentStore.getState().model.wheel.offset).toBe(3);
  });
});

it('says that nothing is kept where nothing can be, and takes it back', async () => {
  const browser = createBrowser();
  browser.state.isFull = true;
  const { documentStore, notices } = browser.visit();
  documentStore.edit(offset(1));
  await settle();
  expect(notices.getState().list.map(({ key }) => key)).toEqual(['unkept']);
  expect(documentStore.getState().model.wheel.offset).toBe(1);
  browser.state.isFull = false;
  documentStore.edit(offset(2));
  await settle();
  expect(notices.getState().list).toEqual([]);
});
