/** Cures of the bench: asked by hand, the newest alone answered; tried with a ghost, kept, taken back. */
import { describe, expect, test } from 'vitest';
import type { Cure, Cures, Model } from '../../solver/index.ts';
import { createCures } from '../../src/state/cures.ts';
import { createDocument } from '../../src/state/document.ts';
import { meshes } from '../../src/state/meshes.ts';
import type { CureAnswer, CureRequest } from '../../src/worker/cureJob.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('half-ton-long-travel');
const ASKED = { cureKey: 'tieRod/wheel', name: 'Tie rod to wheel' };

function spacerCure(model: Model, amount: number): Cure {
  return {
    kind: 'spacer',
    says: ['spacer', 'thicker'],
    amount,
    settings: [],
    model: { ...model, wheel: { ...model.wheel, spacer: amount } },
    reaches: true,
    least: 8,
    isProven: true,
    moves: [],
    worsened: [],
  };
}

function bench() {
  const documentStore = createDocument(MODEL, 'half-ton-long-travel.json');
  const asked: CureRequest[] = [];
  let take: (answer: CureAnswer) => void = () => undefined;
  const cures = createCures(documentStore, meshes, (answer) => {
    take = answer;
    return { ask: (request) => asked.push(request), stop: () => undefined };
  });
  const cure = spacerCure(documentStore.getState().model, 15);
  const found: Cures = { key: ASKED.cureKey, least: -2, wanted: 8, unit: 'mm', cures: [cure] };
  const give = (number: number): void => take({ number, progress: 1, isDone: true, found });
  return { documentStore, cures, cure, asked, give };
}

describe('createCures', () => {
  test('asks of the present design and takes the newest answer alone', () => {
    const { cures, asked, give, documentStore } = bench();
    expect(asked).toEqual([]);
    cures.look(ASKED);
    cures.look({ cureKey: 'tieRod/tyre', name: 'Tie rod to tyre' });
    const { model } = documentStore.getState();
    expect(asked.at(-1)).toMatchObject({ kind: 'cure', number: 2, key: 'tieRod/tyre', model });
    give(1);
    expect(cures.getState()).toMatchObject({ stage: 'running', found: null });
    give(2);
    expect(cures.getState().stage).toBe('done');
    expect(cures.getState().found?.cures).toHaveLength(1);
  });

  test('is stopped by hand', () => {
    const { cures, asked, give } = bench();
    cures.look(ASKED);
    cures.stop();
    expect(asked.at(-1)).toEqual({ kind: 'cancel' });
    give(1);
    expect(cures.getState()).toMatchObject({ stage: 'idle', asked: null, found: null });
  });

  test('tries a cure with the present design as the ghost, and takes it back with all that was', () => {
    const { cures, cure, give, documentStore } = bench();
    cures.look(ASKED);
    give(1);
    const before = documentStore.getState();
    expect(cures.tryOn(cure)).toBe(true);
    expect(documentStore.getState().model.wheel.spacer).toBe(15);
    expect(documentStore.getState().held).toBe(before.model);
    expect(documentStore.getState().past).toHaveLength(before.past.length + 1);
    cures.takeBack();
    expect(documentStore.getState()).toMatchObject({ model: before.model, held: before.held });
    expect(cures.trials.getState().trial).toBeNull();
  });

  test('takes back its own part alone where another was edited meanwhile', () => {
    const { cures, cure, give, documentStore } = bench();
    cures.look(ASKED);
    give(1);
    cures.tryOn(cure);
    documentStore.edit((model) => ({ ...model, name: 'another' }));
    cures.takeBack();
    expect(documentStore.getState().model).toEqual({ ...MODEL, name: 'another' });
  });

  test('keeps a cure as one entry that undo takes away', () => {
    const { cures, cure, give, documentStore } = bench();
    cures.look(ASKED);
    give(1);
    cures.tryOn(cure);
    cures.keep();
    expect(cures.trials.getState().trial).toBeNull();
    expect(documentStore.getState()).toMatchObject({ held: null });
    expect(documentStore.getState().model.wheel.spacer).toBe(15);
    documentStore.undo();
    expect(documentStore.getState().model).toEqual(MODEL);
  });

  test('ends a trial that is undone, and tries no cure of another design', () => {
    const { cures, cure, give, documentStore } = bench();
    cures.look(ASKED);
    give(1);
    cures.tryOn(cure);
    documentStore.undo();
    expect(cures.trials.getState().trial).toBeNull();
    expect(documentStore.getState().held).toBeNull();
    documentStore.edit((model) => ({ ...model, name: 'another' }));
    expect(cures.tryOn(cure)).toBe(false);
    expect(documentStore.getState().model.name).toBe('another');
  });
});
