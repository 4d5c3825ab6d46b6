/** A change on trial: with the ghost of what was, kept or taken back, ended where its design goes. */
import { describe, expect, test } from 'vitest';
import type { Model } from '../../solver/index.ts';
import { createDocument } from '../../src/state/document.ts';
import { createTrials } from '../../src/state/trials.ts';
import { shipped } from '../support/models.ts';

const wider = (model: Model): Model => ({ ...model, wheel: { ...model.wheel, spacer: 15 } });
const faced = (model: Model): Model => ({
  ...model,
  hub: { ...model.hub, camber: (model.hub.camber ?? 0) + 1 },
});

function bench() {
  const documentStore = createDocument(shipped('half-ton-factory'), 'half-ton-factory.json');
  const trial = createTrials<string>(documentStore);
  const tryOn = (subject: string, change: (model: Model) => Model): boolean => {
    const { model } = documentStore.getState();
    return trial.tryOn(subject, model, change(model));
  };
  return { documentStore, trial, tryOn };
}

describe('createTrials', () => {
  test('holds the design before as the ghost, and takes the change back with all that was', () => {
    const { documentStore, trial, tryOn } = bench();
    const before = documentStore.getState();
    expect(tryOn('spacer', wider)).toBe(true);
    expect(documentStore.getState().model.wheel.spacer).toBe(15);
    expect(documentStore.getState().held).toBe(before.model);
    trial.takeBack();
    expect(documentStore.getState()).toMatchObject({ model: before.model, held: before.held });
    expect(trial.getState().trial).toBeNull();
  });

  test('takes back its own part alone where another was edited meanwhile', () => {
    const { documentStore, trial, tryOn } = bench();
    const { camber = 0 } = documentStore.getState().model.hub;
    tryOn('spacer', wider);
    documentStore.edit(faced);
    trial.takeBack();
    const { hub, wheel } = documentStore.getState().model;
    expect([hub.camber, wheel.spacer ?? 0]).toEqual([camber + 1, 0]);
  });

  test('is kept with the ghost of before let go', () => {
    const { documentStore, trial, tryOn } = bench();
    tryOn('camber', faced);
    trial.keep();
    expect(trial.getState().trial).toBeNull();
    expect(documentStore.getState().held).toBeNull();
    expect(documentStore.getState().past).toHaveLength(1);
  });

  test('ends where undo takes its design away or its ghost is let go of', () => {
    const { documentStore, trial, tryOn } = bench();
    tryOn('spacer', wider);
    documentStore.undo();
    expect(trial.getState().trial).toBeNull();
    expect(documentStore.getState().held).toBeNull();
    tryOn('spacer', wider);
    documentStore.release();
    expect(trial.getState().trial).toBeNull();
    expect(documentStore.getState().model.wheel.spacer).toBe(15);
  });

  test('is refused where the change is not sound, or is one of another design', () => {
    const { documentStore, trial, tryOn } = bench();
    const bad = (model: Model): Model => ({ ...model, wheel: { ...model.wheel, width: -1 } });
    expect(tryOn('bad', bad)).toBe(false);
    const { model } = documentStore.getState();
    documentStore.edit(wider);
    expect(trial.tryOn('old', model, faced(model))).toBe(false);
    expect(documentStore.getState().held).toBeNull();
  });
});
