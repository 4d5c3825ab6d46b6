/** Fits behind the page, turns taken by hand: progress that grows, the newest readings alone answered, cancelled. */
import { describe, expect, test } from 'vitest';
import { fitInSteps } from '../../solver/fit/fit.ts';
import type { Reading } from '../../solver/fit/reading.ts';
import { allSteps } from '../../solver/index.ts';
import { createFitRunner } from '../../src/worker/fitJob.ts';
import { byHand } from '../support/byHand.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('rear-steer-saloon');

function readings(value: number): readonly Reading[] {
  return [{ quantity: 'toe', travel: 30, rack: 0, value, plusMinus: 0.05 }];
}

function request(number: number, value: number) {
  return { kind: 'fit', number, model: MODEL, readings: readings(value), heights: 2 } as const;
}

describe('createFitRunner', () => {
  test('answers as the solver does, with progress that only grows', () => {
    const { runner, answers, turn } = byHand(createFitRunner, 5);
    runner.ask(request(1, 0.3));
    while (turn());
    const found = allSteps(fitInSteps(MODEL, readings(0.3), 2));
    expect(answers.at(-1)).toEqual({ number: 1, progress: 1, found });
    expect(found.ok).toBe(true);
    // What a worker hands over must survive being copied.
    expect(structuredClone(answers.at(-1))).toEqual(answers.at(-1));
    const progress = answers.map((answer) => answer.progress);
    expect(progress.length).toBeGreaterThan(2);
    expect(progress).toEqual([...progress].sort((a, b) => a - b));
  });

  test('says no more of what was asked before, nor after a cancel', () => {
    const { runner, answers, turn } = byHand(createFitRunner, 5);
    runner.ask(request(1, 0.3));
    turn();
    runner.ask(request(2, 0.1));
    while (turn());
    expect(answers.at(-1)).toMatchObject({ number: 2, found: { ok: true } });
    expect(answers.some(({ number, found }) => number === 1 && found !== null)).toBe(false);
    runner.ask(request(3, 0.2));
    turn();
    runner.ask({ kind: 'cancel' });
    const told = answers.length;
    while (turn());
    expect(answers).toHaveLength(told);
  });
});
