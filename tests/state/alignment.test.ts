/** Alignment settings of the bench: asked by hand, following what is wanted, tried with a ghost, kept, taken back. */
import { describe, expect, test } from 'vitest';
import { align, type Model, presentSettings, withSettings } from '../../solver/index.ts';
import { createAlignment } from '../../src/state/alignment.ts';
import { createDocument } from '../../src/state/document.ts';
import { meshes } from '../../src/state/meshes.ts';
import type { AlignAnswer, AlignRequest } from '../../src/worker/alignJob.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('half-ton-long-travel');

function wanting(model: Model, caster: number): Model {
  return { ...model, targets: { ...model.targets, caster: { value: caster, plusMinus: 0.5 } } };
}

type Asked = Extract<AlignRequest, { kind: 'settings' | 'region' | 'effects' }>;

function bench() {
  const documentStore = createDocument(MODEL, 'half-ton-long-travel.json');
  const asked: AlignRequest[] = [];
  let take: (answer: AlignAnswer) => void = () => undefined;
  const alignment = createAlignment(documentStore, meshes, (answer) => {
    take = answer;
    return { ask: (request) => asked.push(request), stop: () => undefined };
  });
  const of = (kind: Asked['kind']) => asked.filter((each) => each.kind === kind) as Asked[];
  /** Answers the newest question of settings as the solver does. */
  const answer = (): void => {
    const { number, model } = of('settings').at(-1)!;
    take({ kind: 'settings', number, answer: align(model) });
  };
  const leave = alignment.watch();
  return { documentStore, alignment, asked, of, answer, leave };
}

describe('createAlignment', () => {
  test('asks for settings by hand only; then they follow what is wanted, the newest alone taken', () => {
    const { documentStore, alignment, of, answer } = bench();
    expect([of('region').length, of('settings').length]).toEqual([1, 0]);
    alignment.find();
    answer();
    expect(alignment.getState().settings?.reached).toBe(true);
    documentStore.edit((model) => wanting(model, 4));
    expect(of('settings')).toHaveLength(2);
    expect(alignment.getState().pending.has('settings')).toBe(true);
    answer();
    expect(alignment.getState().settings?.after.angles?.caster).toBeCloseTo(4, 6);
    // Another camber or caster asked for reaches no further: the region stands.
    expect(of('region')).toHaveLength(1);
    documentStore.edit((model) => withSettings(model, { lowerFrontCam: 30 }));
    expect(of('region')).toHaveLength(2);
  });

  test('looks at what else they move only when the hand is off', () => {
    const { documentStore, alignment, of, answer } = bench();
    alignment.find();
    answer();
    expect(of('effects')).toHaveLength(1);
    documentStore.beginGesture();
    documentStore.edit((model) => wanting(model, 4.2));
    answer();
    expect(of('effects')).toHaveLength(1);
    documentStore.endGesture();
    expect(of('effects')).toHaveLength(2);
  });

  test('puts whole marks on the bench, then exact ones, and takes them back with all that was', () => {
    const { documentStore, alignment, of, answer } = bench();
    alignment.find();
    answer();
    const { model: before } = documentStore.getState();
    const { after, rounded } = alignment.getState().settings!;
    const present = (): unknown => presentSettings(documentStore.getState().model);
    expect(alignment.tryOn()).toBe(true);
    expect(present()).toEqual(rounded!.settings);
    expect(documentStore.getState().held).toEqual(before);
    // The order of work stays: it is from how the vehicle still stands.
    expect(of('settings')).toHaveLength(1);
    alignment.takeWhole(false);
    expect(present()).toEqual(after.settings);
    expect(documentStore.getState().held).toEqual(before);
    alignment.trials.takeBack();
    expect(documentStore.getState()).toMatchObject({ model: before, held: null });
    expect(of('settings')).toHaveLength(1);
  });

  test('finds from how it stood before the trial, and tries in its place', () => {
    const { documentStore, alignment, of, answer } = bench();
    alignment.find();
    answer();
    const { model: before } = documentStore.getState();
    alignment.tryOn();
    documentStore.edit((model) => wanting(model, 4));
    expect(presentSettings(of('settings').at(-1)!.model)).toEqual(presentSettings(before));
    answer();
    expect(alignment.tryOn()).toBe(true);
    const { model } = documentStore.getState();
    expect(presentSettings(model)).toEqual(alignment.getState().settings!.rounded!.settings);
    expect(model.targets?.caster?.value).toBe(4);
    alignment.trials.takeBack();
    expect(presentSettings(documentStore.getState().model)).toEqual(presentSettings(before));
  });

  test('keeps them as one entry of the history', () => {
    const { documentStore, alignment, answer } = bench();
    alignment.find();
    answer();
    const { model: before } = documentStore.getState();
    alignment.tryOn();
    alignment.trials.keep();
    expect(documentStore.getState().held).toBeNull();
    documentStore.undo();
    expect(documentStore.getState().model).toEqual(before);
  });

  test('asks nothing once nobody watches', () => {
    const { documentStore, alignment, asked, leave } = bench();
    alignment.find();
    leave();
    expect(asked.at(-1)).toEqual({ kind: 'cancel' });
    documentStore.edit((model) => wanting(model, 4));
    expect(asked.at(-1)).toEqual({ kind: 'cancel' });
  });
});
