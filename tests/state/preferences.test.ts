import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createDocument } from '../../src/state/document.ts';
import { createInputs } from '../../src/state/inputs.ts';
import { createNotices } from '../../src/state/notices.ts';
import { INPUTS_KEY, keepInputs, keepView, VIEW_KEY } from '../../src/state/preferences.ts';
import { createShelf, type Shelf } from '../../src/state/shelf.ts';
import { type TabChannel, watchTabs } from '../../src/state/tabs.ts';
import { createView } from '../../src/state/view.ts';
import { FULL_MODEL } from '../support/full-model.ts';

function createMemory(): { kept: Map<string, string>; shelf: Shelf } {
  const kept = new Map<string, string>();
  const storage = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
    removeItem: (key: string) => void kept.delete(key),
  };
  return { kept, shelf: createShelf(() => storage as unknown as Storage) };
}

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

describe('the view', () => {
  it('is found as it was left', () => {
    const { shelf } = createMemory();
    const first = createView();
    keepView(first, shelf);
    first.look('above');
    first.toggleLayer('rollCentre');
    first.togglePanel('map');
    first.setState({ unit: 'sixteenth', wheelShell: 'cut' });
    const next = createView();
    keepView(next, shelf);
    const { viewpoint, layers, panels, unit, wheelShell } = next.getState();
    expect([viewpoint, layers.rollCentre, panels.map, unit, wheelShell]).toEqual([
      'above',
      true,
      false,
      'sixteenth',
      'cut',
    ]);
  });

  it('keeps the theme only once it was chosen', () => {
    const { kept, shelf } = createMemory();
    const view = createView();
    keepView(view, shelf);
    view.setState({ unit: 'inch' });
    expect(JSON.parse(kept.get(VIEW_KEY) ?? '')).not.toHaveProperty('theme');
    view.setState({ theme: 'dark' });
    view.setState({ unit: 'mm' });
    expect(JSON.parse(kept.get(VIEW_KEY) ?? '')).toMatchObject({ theme: 'dark', unit: 'mm' });
  });

  it.each([
    'torn',
    '7',
    'null',
    '{"unit":"furlong","layers":[],"panels":{"map":"yes"},"viewpoint":9}',
  ])('takes nothing of a damaged record: %s', (text) => {
    const { kept, shelf } = createMemory();
    kept.set(VIEW_KEY, text);
    const view = createView();
    const first = view.getState();
    keepView(view, shelf);
    expect(view.getState()).toEqual(first);
  });
});

describe('the inputs', () => {
  it('are found as they were left, within the present model', () => {
    const { kept, shelf } = createMemory();
    const inputs = createInputs(createDocument(FULL_MODEL, 'full.json'));
    const flush = keepInputs(inputs, shelf);
    inputs.move(50, -20);
    inputs.move(60, -30);
    expect(kept.has(INPUTS_KEY)).toBe(false);
    flush();
    const small = { ...FULL_MODEL, travel: { bump: 40, droop: 40 } };
    const next = createInputs(createDocument(small, 'small.json'));
    keepInputs(next, shelf);
    expect(next.getState()).toMatchObject({ travel: 40, rack: -30 });
  });

  it.each(['torn', '{"travel":"up","rack":0}', '[]'])('ignore damage: %s', (text) => {
    const { kept, shelf } = createMemory();
    kept.set(INPUTS_KEY, text);
    const inputs = createInputs(createDocument(FULL_MODEL, 'full.json'));
    keepInputs(inputs, shelf);
    expect(inputs.getState()).toMatchObject({ travel: -15, rack: 0 });
  });
});

it('works on where storage itself refuses', () => {
  const shelf = createShelf(() => {
    throw new Error('storage is switched off');
  });
  expect([shelf.read('a'), shelf.write('a', 'b'), shelf.remove('a')]).toEqual([
    null,
    false,
    undefined,
  ]);
});

it('says in both tabs that there are two, and nothing where there is one', () => {
  const tabs: TabChannel[] = [];
  const open = (): TabChannel => {
    const tab: TabChannel = {
      onmessage: null,
      postMessage: (data) => {
        for (const other of tabs) {
          if (other !== tab) other.onmessage?.({ data } as MessageEvent);
        }
      },
    };
    tabs.push(tab);
    return tab;
  };
  const [first, second] = [createNotices(), createNotices()];
  watchTabs(open(), first)();
  expect(first.getState().list).toEqual([]);
  watchTabs(open(), second);
  for (const notices of [first, second]) {
    expect(notices.getState().list.map(({ key, kind }) => [key, kind])).toEqual([
      ['tabs', 'status'],
    ]);
  }
});
