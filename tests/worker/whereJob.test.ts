/** Where a point may go, behind the page, turns taken by hand: coarse before fine, places at once, the newest question alone. */
import { describe, expect, test } from 'vitest';
import {
  allSteps,
  bestsInSteps,
  pictureInSteps,
  placeTold,
  type Question,
} from '../../solver/index.ts';
import {
  createWhereRunner,
  type WhereAnswer,
  type WhereRequest,
} from '../../src/worker/whereJob.ts';
import { byHand } from '../support/byHand.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('planar-equal-arms');
const TEN = { minus: 10, plus: 10 };
const QUESTION: Question = {
  subject: 'rodInner',
  plane: 'front',
  aim: 'atRide',
  half: 20,
  stretch: [0, 0],
  wanted: 0.001,
  reach: { first: TEN, second: TEN },
};

function ask(number: number, question = QUESTION): WhereRequest {
  return { kind: 'where', number, model: MODEL, question };
}

const kinds = (answers: readonly WhereAnswer[]) => answers.map(({ kind }) => kind);

describe('createWhereRunner', () => {
  test('tells of the present place first, then ever finer pictures, then the best places', () => {
    const { runner, answers, turn } = byHand(createWhereRunner, 5);
    runner.ask(ask(1));
    while (turn());
    expect(kinds(answers)).toEqual(['start', 'picture', 'picture', 'picture', 'picture', 'bests']);
    const pictures = answers.flatMap((answer) => (answer.kind === 'picture' ? [answer] : []));
    expect(pictures.map(({ picture }) => picture.xs.length)).toEqual([11, 21, 41, 81]);
    const whole = allSteps(pictureInSteps(MODEL, QUESTION));
    expect(pictures.at(-1)!.picture).toEqual(whole);
    // Every coarse node is a node of the fine one.
    pictures.forEach(({ picture }) => {
      const stride = 80 / (picture.xs.length - 1);
      const { length } = picture.xs;
      const fine = picture.values.map(
        (_, n) => whole.values[stride * (81 * Math.floor(n / length) + (n % length))]!,
      );
      expect(picture.values).toEqual(fine);
    });
    const last = answers.at(-1)!;
    expect(last.kind === 'bests' && last.bests).toEqual(
      allSteps(bestsInSteps(MODEL, QUESTION, whole)),
    );
  });

  test('keeps its picture when only how far the point may move changes', () => {
    const { runner, answers, turn } = byHand(createWhereRunner, 5);
    runner.ask(ask(1));
    while (turn());
    const turns = answers.length;
    runner.ask(ask(2, { ...QUESTION, reach: { first: TEN, second: { minus: 0, plus: 3 } } }));
    while (turn());
    expect(kinds(answers.slice(turns))).toEqual(['start', 'picture', 'bests']);
    const again = answers[turns + 1]!;
    const before = answers[turns - 2]!;
    expect(again.kind === 'picture' && again.picture).toEqual(
      before.kind === 'picture' && before.picture,
    );
  });

  test('tells of a place in the midst of its work, and nothing more of a question before', () => {
    const { runner, answers, turn } = byHand(createWhereRunner, 5);
    runner.ask(ask(1));
    turn();
    runner.ask({ kind: 'probe', number: 1, at: [401, 2] });
    expect(answers.at(-1)).toEqual({
      number: 1,
      kind: 'probe',
      told: placeTold(MODEL, QUESTION, [401, 2]),
    });
    runner.ask(ask(2));
    const told = answers.length;
    runner.ask({ kind: 'probe', number: 1, at: [402, 2] });
    while (turn());
    expect(answers.slice(told).every(({ number }) => number === 2)).toBe(true);
    runner.ask(ask(3));
    turn();
    runner.ask({ kind: 'cancel' });
    const count = answers.length;
    while (turn());
    expect(answers).toHaveLength(count);
  });
});
