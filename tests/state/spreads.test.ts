/** How well the bench is known: asked a little after it moved, one question of a kind at a time, the newest winning. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Band, Knowledge } from '../../solver/index.ts';
import { createDocument } from '../../src/state/document.ts';
import { createInputs } from '../../src/state/inputs.ts';
import { createPlusMinus, PLUS_MINUS_KEY } from '../../src/state/plusMinus.ts';
import type { Shelf } from '../../src/state/shelf.ts';
import { createSpreads } from '../../src/state/spreads.ts';
import type { SpreadAnswer, SpreadRequest } from '../../src/worker/spreadJob.ts';
import { shipped } from '../support/models.ts';

function shelfOf(
  kept: Record<string, string> = {},
): Shelf & { readonly kept: Record<string, string> } {
  return {
    kept,
    read: (key) => kept[key] ?? null,
    write: (key, text) => {
      kept[key] = text;
      return true;
    },
    remove: (key) => {
      delete kept[key];
    },
  };
}

function bench(kept: Record<string, string> = {}) {
  const documentStore = createDocument(shipped('half-ton-factory'), 'half-ton-factory.json');
  const inputs = createInputs(documentStore);
  const shelf = shelfOf(kept);
  const plusMinus = createPlusMinus(documentStore, shelf);
  const asked: SpreadRequest[] = [];
  let take: (answer: SpreadAnswer) => void = () => undefined;
  const spreads = createSpreads(documentStore, inputs, plusMinus, (answer) => {
    take = answer;
    return { ask: (request) => asked.push(request), stop: () => undefined };
  });
  const give = (answer: SpreadAnswer): void => take(answer);
  const kinds = () => asked.map(({ kind }) => kind);
  return { documentStore, inputs, plusMinus, shelf, spreads, asked, kinds, give };
}

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

describe('createSpreads', () => {
  test('asks of pose and travel; while one question is open the newest of its kind waits', () => {
    const { inputs, spreads, asked, kinds, give } = bench();
    vi.runAllTimers();
    expect(kinds()).toEqual(['pose', 'travel']);
    for (let travel = 1; travel <= 50; travel += 1) inputs.setTravel(travel);
    vi.runAllTimers();
    expect(kinds()).toEqual(['pose', 'travel']);
    give({ kind: 'pose', number: asked[0]!.number, uncertainties: { camber: 0.1 } });
    expect(spreads.getState().pose).toEqual({ camber: 0.1 });
    vi.runAllTimers();
    expect(asked).toHaveLength(3);
    expect(asked[2]).toMatchObject({ kind: 'pose', travel: 50 });
  });

  test('asks of the travel anew when the rack moves, and of everything when the design changes', () => {
    const { documentStore, inputs, asked, kinds, give } = bench();
    const band = {} as Band;
    vi.runAllTimers();
    give({ kind: 'pose', number: asked[0]!.number, uncertainties: {} });
    give({ kind: 'travel', number: asked[1]!.number, band });
    inputs.setRack(10);
    vi.runAllTimers();
    expect(kinds().slice(2)).toEqual(['pose', 'travel']);
    give({ kind: 'pose', number: asked[2]!.number, uncertainties: {} });
    give({ kind: 'travel', number: asked[3]!.number, band });
    documentStore.edit((model) => ({ ...model, tolerance: { default: 1 } }));
    vi.runAllTimers();
    expect(kinds().slice(4)).toEqual(['pose', 'travel']);
    expect(asked[5]!.model.tolerance).toEqual({ default: 1 });
  });

  test('asks of the set pose only while it is watched, and takes no answer that nobody waits for', () => {
    const { spreads, asked, kinds, give } = bench({ [PLUS_MINUS_KEY]: 'hidden' });
    vi.runAllTimers();
    expect(asked).toEqual([]);
    const leave = spreads.watch('set');
    vi.runAllTimers();
    expect(kinds()).toEqual(['set']);
    leave();
    const knowledge = { answers: null } as Knowledge;
    give({ kind: 'set', number: asked[0]!.number, knowledge });
    expect(spreads.getState().set).toBeNull();
    spreads.watch('set');
    vi.runAllTimers();
    expect(kinds()).toEqual(['set', 'set']);
    give({ kind: 'set', number: asked[1]!.number, knowledge });
    expect(spreads.getState()).toMatchObject({ set: knowledge, isSetPending: false });
  });

  test('shows nothing once ± is hidden, whatever still arrives', () => {
    const { plusMinus, spreads, asked, give } = bench();
    vi.runAllTimers();
    give({ kind: 'pose', number: asked[0]!.number, uncertainties: { camber: 0.1 } });
    plusMinus.show(false);
    expect(spreads.getState().pose).toBeNull();
    give({ kind: 'travel', number: asked[1]!.number, band: {} as Band });
    expect(spreads.getState().travel).toBeNull();
  });
});

describe('createPlusMinus', () => {
  test('goes by what the model states until somebody chooses, and keeps the choice', () => {
    const { documentStore, plusMinus, shelf } = bench();
    expect(plusMinus.getState().isShown).toBe(true);
    documentStore.edit(({ tolerance: _, ...rest }) => rest);
    expect(plusMinus.getState().isShown).toBe(false);
    plusMinus.show(true);
    documentStore.edit((model) => ({ ...model, name: 'another' }));
    expect(plusMinus.getState().isShown).toBe(true);
    expect(bench(shelf.kept).plusMinus.getState()).toEqual({ chosen: true, isShown: true });
  });
});
