/** Cures behind the page, turns taken by hand: progress that grows, the newest question alone answered, cancelled. */
import { describe, expect, test } from 'vitest';
import { allSteps, curesInSteps, type Model } from '../../solver/index.ts';
import { createCureRunner } from '../../src/worker/cureJob.ts';
import { byHand } from '../support/byHand.ts';
import { shipped } from '../support/models.ts';

const FACTORY = shipped('half-ton-factory');
/** A coilover that tops out in full droop, and few other parts; straight ahead only. */
const { obstacles: _, antiRollBar: __, halfShaft: ___, steering: ____, ...BARE } = FACTORY;
const MODEL: Model = BARE;
const KEY = 'coilover.maxLength';

function cure(number: number, key: string, model: Model = MODEL) {
  return { kind: 'cure', number, key, model, meshes: new Map() } as const;
}

describe('createCureRunner', () => {
  test('answers as the solver does, with progress that only grows', () => {
    const { runner, answers, turn } = byHand(createCureRunner, 5);
    runner.ask(cure(1, KEY));
    while (turn());
    expect(answers.at(-1)).toEqual({
      number: 1,
      progress: 1,
      isDone: true,
      found: allSteps(curesInSteps(MODEL, KEY)),
    });
    expect(answers.at(-1)!.found!.cures.length).toBeGreaterThan(0);
    const progress = answers.map((answer) => answer.progress);
    expect(progress.length).toBeGreaterThan(2);
    expect(progress).toEqual([...progress].sort((a, b) => a - b));
    expect(answers.filter(({ isDone }) => isDone)).toHaveLength(1);
  });

  test('says no more of what was asked before, nor after a cancel', () => {
    const { runner, answers, turn } = byHand(createCureRunner, 5);
    runner.ask(cure(1, KEY));
    turn();
    runner.ask(cure(2, 'coilover.minLength'));
    while (turn());
    // Nothing fails there: the answer says so.
    expect(answers.at(-1)).toMatchObject({ number: 2, isDone: true, found: null });
    expect(answers.some(({ number, isDone }) => number === 1 && isDone)).toBe(false);
    runner.ask(cure(3, KEY));
    turn();
    runner.ask({ kind: 'cancel' });
    const told = answers.length;
    while (turn());
    expect(answers).toHaveLength(told);
  });
});
