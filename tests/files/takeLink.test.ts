import { describe, expect, it } from 'vitest';
import { linkOf } from '../../src/files/link.ts';
import { createLinkTaker, shownName } from '../../src/files/takeLink.ts';
import { createDocument } from '../../src/state/document.ts';
import { createElsewhere } from '../../src/state/elsewhere.ts';
import { createNotices } from '../../src/state/notices.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { shipped } from '../support/models.ts';

const FACTORY = shipped('half-ton-factory');
const SALOON = shipped('rear-steer-saloon');

async function linkTo(model: typeof FACTORY): Promise<string> {
  const making = await linkOf(model);
  if (!making.ok) throw new Error(making.message);
  return making.fragment;
}

function createBench(isKept: boolean) {
  const documentStore = createDocument(FACTORY, 'half-ton-factory.json');
  const notices = createNotices();
  const taker = createLinkTaker({ documentStore, notices, isKept: async () => isKept });
  let taken = 0;
  return {
    documentStore,
    arrive: (fragment: string) => taker.arrive(fragment, () => (taken += 1)),
    take: taker.take,
    taken: () => taken,
    model: () => documentStore.getState().model,
    notice: () => notices.getState().list.at(-1),
  };
}

describe('a link that arrives', () => {
  it('is opened as one step, and said, where the work is kept elsewhere too', async () => {
    const bench = createBench(true);
    await bench.arrive(await linkTo(SALOON));
    expect(bench.model()).toEqual(SALOON);
    expect(bench.notice()?.text).toBe(
      `“${SALOON.name}” was opened from a link. Undo brings back what was there. It names 1 mesh file, which no link carries.`,
    );
    expect(bench.taken()).toBe(1);
    bench.documentStore.undo();
    expect(bench.model()).toEqual(FACTORY);
  });

  it('asks first where it is not, and then can be undone all the same', async () => {
    const bench = createBench(false);
    await bench.arrive(await linkTo(SALOON));
    expect(bench.model()).toEqual(FACTORY);
    expect(bench.taken()).toBe(0);
    expect(bench.notice()).toMatchObject({ kind: 'alert', action: { label: 'Open the link' } });
    // What is done while the question stands is not lost either.
    bench.documentStore.edit((model) => ({ ...model, name: 'Later' }));
    bench.notice()?.action?.run();
    expect(bench.model()).toEqual(SALOON);
    expect(bench.taken()).toBe(1);
    bench.documentStore.undo();
    expect(bench.model().name).toBe('Later');
  });

  it('to what is on the bench already changes nothing and asks nothing', async () => {
    const bench = createBench(false);
    await bench.arrive(await linkTo(FACTORY));
    expect(bench.documentStore.getState().past).toEqual([]);
    expect(bench.notice()?.text).toContain('lies on the bench already');
  });

  it('that is damaged leaves the work alone, and so does an address of another kind', async () => {
    const bench = createBench(true);
    await bench.arrive('#elsewhere');
    expect(bench.notice()).toBe(undefined);
    await bench.arrive((await linkTo(SALOON)).slice(0, -3));
    expect(bench.notice()).toMatchObject({ kind: 'alert' });
    expect(bench.notice()?.text).toMatch(/^This link is damaged/);
    expect(bench.documentStore.getState().past).toEqual([]);
    expect(bench.taken()).toBe(0);
  });

  it('is overtaken by a later one', async () => {
    const bench = createBench(true);
    const [first, second] = await Promise.all([SALOON, FULL_MODEL].map(linkTo));
    await Promise.all([bench.arrive(first!), bench.arrive(second!)]);
    expect(bench.model()).toEqual(FULL_MODEL);
    expect(bench.documentStore.getState().past).toHaveLength(1);
  });
});

it('a link that is pasted is opened unasked, or refused in its place', async () => {
  const bench = createBench(false);
  expect(await bench.take('#design=1.nothing')).toMatch(/^This link is damaged/);
  expect(bench.notice()).toBe(undefined);
  expect(await bench.take(await linkTo(SALOON))).toBe(null);
  expect(bench.model()).toEqual(SALOON);
});

it('names are shown on one line, cut, and with no signs that turn the writing about', () => {
  expect(shownName(' a\n\u202eb\u0000 ')).toBe('“a b”');
  expect(shownName('\u200b')).toBe('A design without a name');
  expect([...shownName('x'.repeat(500))]).toHaveLength(83);
});

describe('work is kept elsewhere', () => {
  const texts = new Map<string, string>();
  const elsewhere = createElsewhere({
    read: (key) => texts.get(key) ?? null,
    write: (key, text) => texts.set(key, text) !== undefined,
    remove: (key) => void texts.delete(key),
  });

  it('while it is as it was opened, shipped, held beside or saved, and not after a change', () => {
    const store = createDocument(FACTORY, 'half-ton-factory.json');
    const holds = (...others: (typeof FACTORY)[]) => elsewhere.holds(store.getState(), others);
    const rename = (name: string) => store.edit((model) => ({ ...model, name }));
    expect([holds(), holds(FACTORY)]).toEqual([false, true]);
    store.load(SALOON, 'saloon.json');
    expect(holds()).toBe(true);
    rename('Mine');
    expect([holds(FACTORY), holds({ ...SALOON, name: 'Mine' })]).toEqual([false, true]);
    elsewhere.noteSaved(store.getState().model);
    expect(holds()).toBe(true);
    rename('Mine again');
    expect(holds()).toBe(false);
    store.undo();
    expect(holds()).toBe(true);
  });
});
