/** Corners drawn behind the page, turns taken by hand: progress that grows, the newest question alone answered, cancelled. */
import { describe, expect, test } from 'vitest';
import { monteCarlo } from '../../solver/index.ts';
import { createMonteCarloRunner } from '../../src/worker/monteCarloJob.ts';
import { byHand } from '../support/byHand.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('half-ton-factory');
const OPTIONS = { draws: 600, seed: 4, keys: ['caster', 'bumpSteer'] } as const;

function draw(number: number, draws: number = OPTIONS.draws) {
  return { kind: 'draw', number, model: MODEL, options: { ...OPTIONS, draws } } as const;
}

describe('createMonteCarloRunner', () => {
  test('answers as the solver does, with progress that only grows', () => {
    const { runner, answers, turn } = byHand(createMonteCarloRunner, 5);
    runner.ask(draw(1));
    while (turn());
    const found = monteCarlo(MODEL, OPTIONS);
    expect(answers.at(-1)).toEqual({ number: 1, progress: 1, isDone: true, found });
    const progress = answers.map((answer) => answer.progress);
    expect(progress).toEqual([...progress].sort((a, b) => a - b));
  });

  test('says no more of what was asked before, nor after a cancel', () => {
    const { runner, answers, turn } = byHand(createMonteCarloRunner, 5);
    runner.ask(draw(1));
    turn();
    runner.ask(draw(2, 100));
    while (turn());
    expect(answers.at(-1)).toMatchObject({ number: 2, isDone: true, found: { draws: 100 } });
    expect(answers.some(({ number, isDone }) => number === 1 && isDone)).toBe(false);
    runner.ask(draw(3));
    turn();
    runner.ask({ kind: 'cancel' });
    const told = answers.length;
    while (turn());
    expect(answers).toHaveLength(told);
  });
});
