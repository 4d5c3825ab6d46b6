/** A change on trial: with the ghost of what was, kept or taken back, ended where its design goes. */
import { describe, expect, test } from 'vitest';
import type { Model } from '../../solver/index.ts';
import { createDocument } from '../../src/state/document.ts';
import { createTrial } from '../../src/state/trial.ts';
import { shipped } from '../support/models.ts';

const wider = (model: Model): Model => ({ ...model, wheel: { ...model.wheel, spacer: 15 } });
const faced = (model: Model): Model => ({
  ...model,
  hub: { ...model.hub, camber: (model.hub.camber ?? 0) + 1 },
});

function bench() {
  const documentStore = createDocument(shipped('half-ton-factory'), 'half-ton-factory.json');
  return { documentStore, trial: createTrial(documentStore) };
}

describe('createTrial', () => {
  test('holds the design before as the ghost, and takes the change back with all that was', () => {
    const { documentStore, trial } = bench();
    const before = documentStore.getState();
    expect(trial.tryOn('spacer', wider)).toBe(true);
    expect(documentStore.getState().model.wheel.spacer).toBe(15);
    expect(documentStore.getState().held).toBe(before.model);
    trial.takeBack();
    expect(documentStore.getState()).toMatchObject({ model: before.model, held: before.held });
    expect(trial.getState().trial).toBeNull();
  });

  test('takes back its own part alone where another was edited meanwhile', () => {
    const { documentStore, trial } = bench();
    const { camber = 0 } = documentStore.getState().model.hub;
    trial.tryOn('spacer', wider);
    documentStore.edit(faced);
    trial.takeBack();
    const { hub, wheel } = documentStore.getState().model;
    expect([hub.camber, wheel.spacer ?? 0]).toEqual([camber + 1, 0]);
  });

  test('is kept with the ghost of before let go, or replaced by the next one', () => {
    const { documentStore, trial } = bench();
    trial.tryOn('spacer', wider);
    trial.tryOn('camber', faced);
    expect(documentStore.getState().model.wheel.spacer ?? 0).toBe(0);
    trial.keep();
    expect(trial.getState().trial).toBeNull();
    expect(documentStore.getState().held).toBeNull();
    expect(documentStore.getState().past).toHaveLength(1);
  });

  test('ends where undo takes its design away or its ghost is let go of', () => {
    const { documentStore, trial } = bench();
    trial.tryOn('spacer', wider);
    documentStore.undo();
    expect(trial.getState().trial).toBeNull();
    expect(documentStore.getState().held).toBeNull();
    trial.tryOn('spacer', wider);
    documentStore.release();
    expect(trial.getState().trial).toBeNull();
    expect(documentStore.getState().model.wheel.spacer).toBe(15);
  });

  test('is refused where nothing changes or the change is not sound', () => {
    const { documentStore, trial } = bench();
    const bad = (model: Model): Model => ({ ...model, wheel: { ...model.wheel, width: -1 } });
    expect(trial.tryOn('nothing', (model) => model)).toBe(false);
    expect(trial.tryOn('bad', bad)).toBe(false);
    expect(documentStore.getState().held).toBeNull();
  });
});
