import { describe, expect, it } from 'vitest';
import { openEdges, volumeOf } from '../../solver/envelope/closed.ts';
import type { Model } from '../../solver/index.ts';
import {
  createSweptRunner,
  type SweptAnswer,
  type SweptRequest,
} from '../../src/worker/sweptJob.ts';
import { shipped } from '../support/models.ts';

/** A small sweep, quickly done: no lock, little travel. */
const MODEL: Model = (() => {
  const { steering: _, ...rest } = shipped('planar-equal-arms');
  return { ...rest, travel: { bump: 20, droop: 10 } };
})();

function bench() {
  const answers: SweptAnswer[] = [];
  const waiting: (() => void)[] = [];
  let time = 0;
  const runner = createSweptRunner(
    (answer) => answers.push(answer),
    (run) => waiting.push(run),
    () => {
      time += 5;
      return time;
    },
  );
  const turn = (): boolean => {
    waiting.shift()?.();
    return waiting.length > 0;
  };
  const finish = (): void => {
    while (turn());
  };
  return { runner, answers, turn, finish };
}

function sweep(number: number, more: Partial<SweptRequest & { kind: 'sweep' }> = {}): SweptRequest {
  return {
    kind: 'sweep',
    number,
    owner: 'shown',
    model: MODEL,
    range: 'whole',
    margin: 0,
    step: 40,
    ...more,
  };
}

const done = (answers: readonly SweptAnswer[]) => answers.filter(({ kind }) => kind !== 'progress');

describe('the sweep behind the page', () => {
  it('tells its progress, never backwards, and answers with a closed surface and its gaps', () => {
    const { runner, answers, finish } = bench();
    runner.ask(sweep(1));
    finish();
    const progress = answers.flatMap((answer) =>
      answer.kind === 'progress' ? [answer.progress] : [],
    );
    expect(progress.length).toBeGreaterThan(1);
    expect([...progress].sort((a, b) => a - b)).toEqual(progress);
    const [answer] = done(answers);
    if (answer?.kind !== 'done') throw new Error('No surface.');
    expect(openEdges(answer.surface)).toBe(0);
    expect(volumeOf(answer.surface)).toBeGreaterThan(0);
    expect(answer.room.length).toBe((answer.surface.positions.length / 3) * 2);
    expect(answer.gaps.length).toBeGreaterThan(0);
    expect(done(answers)).toHaveLength(1);
  });

  it('drops what was asked before by the same owner, and keeps the other’s', () => {
    const { runner, answers, turn, finish } = bench();
    runner.ask(sweep(1));
    turn();
    runner.ask(sweep(2, { owner: 'saved' }));
    turn();
    runner.ask(sweep(3));
    finish();
    expect(done(answers).map(({ number, owner }) => [number, owner])).toEqual([
      [3, 'shown'],
      [2, 'saved'],
    ]);
  });

  it('stops when its work is taken back', () => {
    const { runner, answers, turn, finish } = bench();
    runner.ask(sweep(1));
    turn();
    runner.ask({ kind: 'cancel', owner: 'shown' });
    finish();
    expect(done(answers)).toEqual([]);
  });

  it('keeps the room asked for', () => {
    const { runner, answers, finish } = bench();
    runner.ask(sweep(1, { owner: 'saved' }));
    finish();
    runner.ask(sweep(2, { owner: 'saved', margin: 25 }));
    finish();
    const [bare, wide] = done(answers).map((answer) => {
      if (answer.kind !== 'done') throw new Error('No surface.');
      const { positions } = answer.surface;
      return positions.reduce((most, v, i) => (i % 3 === 2 ? Math.max(most, v) : most), -1e9);
    });
    expect(Math.abs(wide! - bare! - 25)).toBeLessThan(1);
  });
});
