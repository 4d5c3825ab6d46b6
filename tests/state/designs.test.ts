/** Designs beside the present one: places, exchange with the bench, and what a browser keeps of them. */
import { describe, expect, it } from 'vitest';
import type { Model } from '../../solver/index.ts';
import { createDesigns, designsBeside } from '../../src/state/designStore.ts';
import { createDocument } from '../../src/state/document.ts';
import { DESIGNS_ASIDE_KEY, DESIGNS_KEY, keepDesigns } from '../../src/state/keepDesigns.ts';
import { createNotices } from '../../src/state/notices.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { shipped } from '../support/models.ts';

const KIT = shipped('half-ton-long-travel');
const TRACK = {
  ...FULL_MODEL,
  wheel: { ...FULL_MODEL.wheel, offset: FULL_MODEL.wheel.offset - 5 },
};

function bench() {
  const documentStore = createDocument(FULL_MODEL, 'full.json');
  const designs = createDesigns(documentStore);
  const act = designs.getState();
  const names = () => designs.getState().kept.map(({ place, model }) => `${place} ${model.name}`);
  return { documentStore, designs, act, names };
}

describe('places', () => {
  it('are three beside the present design, yesterday’s among them', () => {
    const { documentStore, act, names } = bench();
    expect(act.add('one', KIT)).toBe(true);
    documentStore.hold();
    expect(act.add('two', TRACK)).toBe(true);
    expect(act.add('three', KIT)).toBe(false);
    documentStore.release();
    expect(act.add('three', KIT)).toBe(true);
    expect(act.add('four', KIT)).toBe(false);
    expect(names()).toEqual(['B one', 'C two', 'D three']);
  });

  it('let a held design in always: the last of the others waits, and is not lost', () => {
    const { documentStore, designs, act } = bench();
    for (const name of ['one', 'two', 'three']) act.add(name, KIT);
    documentStore.hold();
    const { kept } = designs.getState();
    const beside = designsBeside(kept, documentStore.getState().held);
    expect(beside.map(({ key }) => key)).toEqual(['yesterday', 'B', 'C']);
    documentStore.release();
    expect(designsBeside(kept, null).map(({ key }) => key)).toEqual(['B', 'C', 'D']);
  });

  it('keep their letter when another goes, and a removed one comes back to its own', () => {
    const { designs, act, names } = bench();
    for (const name of ['one', 'two', 'three']) act.add(name, KIT);
    act.show('B', false);
    const gone = act.remove('B')!;
    expect(names()).toEqual(['C two', 'D three']);
    expect(act.putBack(gone)).toBe(true);
    expect(names()).toEqual(['B one', 'C two', 'D three']);
    expect(designs.getState().kept[0]!.isShown).toBe(false);
    expect(act.putBack(gone)).toBe(false);
  });

  it('take yesterday’s design under a name', () => {
    const { documentStore, act, names } = bench();
    documentStore.hold();
    documentStore.load(KIT, 'kit.json');
    expect(act.keepYesterday('before the kit')).toBe(true);
    expect(documentStore.getState().held).toBe(null);
    expect(names()).toEqual(['B before the kit']);
  });
});

describe('working on another design', () => {
  it('exchanges it with the present one; undo and redo exchange them again, whatever was edited between', () => {
    const { documentStore, designs, act } = bench();
    act.add('kit', KIT);
    const present = documentStore.getState().model;
    const kit = designs.getState().kept[0]!.model;
    const both = (): readonly Model[] => [
      documentStore.getState().model,
      designs.getState().kept[0]!.model,
    ];
    act.workOn('B');
    expect(both()).toEqual([kit, present]);
    documentStore.edit((model) => ({ ...model, notes: 'edited' }));
    const edited = documentStore.getState().model;
    documentStore.undo();
    expect(both()).toEqual([kit, present]);
    documentStore.undo();
    expect(both()).toEqual([present, kit]);
    documentStore.redo();
    documentStore.redo();
    expect(both()).toEqual([edited, present]);
  });

  it('leaves a design alone that merely was the present one once', () => {
    const { documentStore, designs, act } = bench();
    const present = documentStore.getState().model;
    act.add(present.name, present);
    documentStore.edit((model) => ({ ...model, notes: 'edited' }));
    documentStore.undo();
    expect(designs.getState().kept[0]!.model).toBe(present);
  });
});

function browser() {
  const held = new Map<string, string>();
  const state = { isFull: false };
  const shelf = {
    read: (key: string) => held.get(key) ?? null,
    write: (key: string, text: string) => {
      if (!state.isFull) held.set(key, text);
      return !state.isFull;
    },
    remove: (key: string) => void held.delete(key),
  };
  const archived = new Map<string, unknown>();
  function visit() {
    const { designs, act, names } = bench();
    const notices = createNotices();
    const saved: string[] = [];
    const take = keepDesigns(designs, {
      shelf,
      archive: { write: async (key, value) => Boolean(archived.set(key, value)) },
      notices,
      now: () => 7,
      saveText: (text) => saved.push(text),
    });
    const said = () => notices.getState().list.map(({ key }) => key);
    return { designs, act, names, notices, saved, said, take };
  }
  return { held, archived, state, visit };
}

describe('a browser', () => {
  it('keeps the designs from one visit to the next, hidden ones hidden', () => {
    const { visit } = browser();
    const first = visit();
    first.act.add('one', KIT, 'kit.json');
    first.act.add('two', TRACK);
    first.act.show('C', false);
    const second = visit();
    expect(second.designs.getState().kept).toEqual(first.designs.getState().kept);
    expect(second.said()).toEqual([]);
  });

  it('sets a damaged record aside whole and keeps what is sound of it, said once', () => {
    const { held, visit } = browser();
    const first = visit();
    first.act.add('one', KIT);
    first.act.add('two', TRACK);
    const damaged = held.get(DESIGNS_KEY)!.replace('"lowerArm"', '"lowerLeg"');
    held.set(DESIGNS_KEY, damaged);
    const second = visit();
    expect(second.names()).toEqual(['C two']);
    expect(second.said()).toEqual(['damaged-designs']);
    expect(held.get(`${DESIGNS_ASIDE_KEY}.7`)).toBe(damaged);
    second.notices.getState().list[0]!.action!.run();
    expect(second.saved).toEqual([damaged]);
    expect(visit().said()).toEqual([]);
  });

  it('puts a damaged record into the archive where the shelf is full', () => {
    const { held, archived, state, visit } = browser();
    held.set(DESIGNS_KEY, 'no list');
    state.isFull = true;
    visit();
    expect(archived.get(`${DESIGNS_ASIDE_KEY}.7`)).toBe('no list');
  });

  it('that keeps nothing is said to, and the designs stay on the page', () => {
    const { state, visit } = browser();
    const { act, names, said } = visit();
    state.isFull = true;
    act.add('one', KIT);
    expect(said()).toEqual(['unkept-designs']);
    expect(names()).toEqual(['B one']);
    state.isFull = false;
    act.rename('B', 'uno');
    expect(said()).toEqual([]);
    expect(visit().names()).toEqual(['B uno']);
  });

  it('shows what another tab keeps', () => {
    const { held, visit } = browser();
    const one = visit();
    const other = visit();
    one.act.add('one', KIT);
    other.take(held.get(DESIGNS_KEY)!);
    other.act.add('two', TRACK);
    expect(visit().names()).toEqual(['B one', 'C two']);
  });
});
