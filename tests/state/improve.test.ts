/** Better points of the bench: shared out among workers, answered once, tried and kept; the lists that ask for them, kept whole. */
import { describe, expect, it } from 'vitest';
import type { Answers } from '../../solver/improve/answer.ts';
import { improveInSteps } from '../../solver/improve/answers.ts';
import type { Plan } from '../../solver/improve/plan.ts';
import { questionInSteps } from '../../solver/improve/question.ts';
import { startersOf } from '../../solver/improve/starters.ts';
import { allSteps, assemble } from '../../solver/index.ts';
import { createDocument } from '../../src/state/document.ts';
import { createImprove } from '../../src/state/improve.ts';
import { createImprovePlan, planOf } from '../../src/state/improvePlan.ts';
import { IMPROVE_KEY, keepImprove } from '../../src/state/keepImprove.ts';
import { meshes } from '../../src/state/meshes.ts';
import type { Shelf } from '../../src/state/shelf.ts';
import {
  createImproveRunner,
  type ImproveAnswer,
  type ImproveRequest,
} from '../../src/worker/improveJob.ts';
import { improveWorkers } from '../../src/worker/improveService.ts';
import { byHand } from '../support/byHand.ts';
import { shipped } from '../support/models.ts';

const { obstacles: _, antiRollBar: __, halfShaft: ___, ...MODEL } = shipped('half-ton-factory');
const PLAN = startersOf(assemble(MODEL)).find(({ key }) => key === 'rackEnd')!.plan;

/** A bench whose workers are run by hand. */
function bench(workers: number) {
  const documentStore = createDocument(MODEL, 'test.json');
  const runners: ReturnType<typeof byHand<ImproveRequest, ImproveAnswer>>[] = [];
  const improve = createImprove(
    documentStore,
    meshes,
    (answer) => {
      const made = byHand<ImproveRequest, ImproveAnswer>(
        (tell, later, clock) =>
          createImproveRunner(
            (told) => {
              tell(told);
              answer(told);
            },
            later,
            clock,
          ),
        5,
      );
      runners.push(made);
      return { ...made.runner, stop: () => undefined };
    },
    workers,
  );
  /** Turns of all workers until none has work. */
  const run = (): void => {
    while (runners.map(({ turn }) => turn()).some(Boolean));
  };
  return { documentStore, improve, runners, run };
}

/** What a bench of so many workers finds. */
function foundBy(workers: number): Answers {
  const { improve, run } = bench(workers);
  improve.look(PLAN);
  run();
  return improve.getState().found!;
}

describe('the search for better points', () => {
  const expected = allSteps(improveInSteps(allSteps(questionInSteps(MODEL, PLAN, undefined))!));

  it('finds the same in one worker as in three, and as the solver alone', () => {
    expect(expected.answers.length).toBeGreaterThan(0);
    expect(foundBy(1)).toEqual(expected);
    expect(foundBy(3)).toEqual(expected);
  });

  it('tells progress that only grows, is stopped, and answers the newest question alone', () => {
    const { improve, runners, run, documentStore } = bench(2);
    const told: number[] = [];
    improve.subscribe(({ stage, progress }) => {
      if (stage === 'running') told.push(progress);
    });
    improve.look(PLAN);
    run();
    expect(told.length).toBeGreaterThan(4);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    improve.look(PLAN);
    for (const { turn } of runners) turn();
    improve.stop();
    run();
    expect(improve.getState()).toMatchObject({ stage: 'idle', found: null });
    improve.look(PLAN);
    for (const { turn } of runners) turn();
    documentStore.edit((model) => ({ ...model, name: 'another' }));
    const none: Plan = { ...PLAN, wishes: [] };
    improve.look(none);
    run();
    expect(improve.getState()).toMatchObject({ stage: 'done', plan: none });
    expect(improve.getState().found!.answers).toEqual([]);
    expect(improve.getState().model!.name).toBe('another');
  });

  it('puts an answer on the bench as one step with the present design as the ghost, and takes it back or keeps it', () => {
    const { improve, documentStore, run } = bench(1);
    improve.look(PLAN);
    run();
    const [answer] = improve.getState().found!.answers;
    const before = documentStore.getState().model;
    expect(improve.tryOn(answer!)).toBe(true);
    expect(documentStore.getState().model.tieRod.inner).toEqual(answer!.model.tieRod.inner);
    expect(documentStore.getState().held).toBe(before);
    improve.takeBack();
    expect(documentStore.getState()).toMatchObject({ model: before, held: null });
    improve.tryOn(answer!);
    improve.keep();
    expect(improve.getState()).toMatchObject({ stage: 'idle', found: null });
    documentStore.undo();
    expect(documentStore.getState().model).toEqual(before);
    documentStore.edit((model) => ({ ...model, name: 'another' }));
    expect(improve.tryOn(answer!)).toBe(false);
  });

  it('leaves one core to the page and starts no more workers than are of use', () => {
    expect([undefined, 1, 2, 4, 16].map(improveWorkers)).toEqual([1, 1, 1, 3, 4]);
  });
});

function shelfOf(kept: Map<string, string>): Shelf {
  return {
    read: (key) => kept.get(key) ?? null,
    write: (key, text) => {
      kept.set(key, text);
      return true;
    },
    remove: (key) => void kept.delete(key),
  };
}

describe('the lists of what is to be improved', () => {
  it('are there again at the next visit with what was half typed, and so are those before a ready-made start', () => {
    const kept = new Map<string, string>();
    const plan = createImprovePlan();
    keepImprove(plan, shelfOf(kept));
    for (const { plan: made } of startersOf(assemble(shipped('half-ton-factory')))) plan.take(made);
    plan.addWish({
      of: 'measure',
      measure: 'ackermann',
      height: -20,
      lock: 'right',
      aiming: 'atLeast',
      value: 40,
      within: 5,
      matters: 2.5,
    });
    plan.addStay({ measure: 'caster', height: 'droop', lock: 'straight', within: 0.5 });
    plan.hold({ broken: true, gaps: false });
    const { id } = plan.getState().wishes[0]!;
    plan.draft(`${id}.value`, { text: 'about 3', message: 'no number' });
    const next = createImprovePlan();
    keepImprove(next, shelfOf(kept));
    const { drafts, ...rows } = next.getState();
    const { drafts: _drafts, ...before } = plan.getState();
    expect(rows).toEqual(before);
    expect(rows.before).not.toBeNull();
    expect(drafts).toEqual({ [`${id}.value`]: { text: 'about 3', message: null } });
  });

  it('leave out what is damaged, row by row', () => {
    const plan = createImprovePlan();
    plan.take(PLAN);
    const whole = plan.getState();
    const wish = whole.wishes[0]!;
    const damaged = {
      ...whole,
      movers: [
        ...whole.movers,
        { id: 90, of: { inputs: [], from: 0, to: 1 } },
        { id: 91, of: { inputs: ['a'], from: null, to: 1 } },
        7,
      ],
      wishes: [
        wish,
        { id: 92, of: { ...wish.of, within: 0 } },
        { id: 93, of: { ...wish.of, of: 'measure', measure: 'luck' } },
      ],
      stays: 'none',
      holds: { limits: 3 },
      before: 4,
    };
    for (const text of [JSON.stringify(damaged), '{', '[]', 'null']) {
      const next = createImprovePlan();
      keepImprove(next, shelfOf(new Map([[IMPROVE_KEY, text]])));
      const isPart = text.length > 10;
      expect(next.getState().movers).toEqual(isPart ? whole.movers : []);
      expect(next.getState().wishes).toEqual(isPart ? [wish] : []);
      expect(next.getState()).toMatchObject({
        stays: [],
        before: null,
        holds: { limits: true, gaps: true, broken: false },
      });
    }
  });

  it('are changed row by row, and a row takes what was typed into it along', () => {
    const plan = createImprovePlan();
    plan.take(PLAN);
    const [first, second] = plan.getState().movers;
    plan.draft(`${first!.id}.from`, { text: 'x', message: null });
    plan.draft(`${second!.id}.from`, { text: 'y', message: null });
    plan.changeMover(second!.id, { from: -1 });
    plan.remove('movers', first!.id);
    expect(plan.getState().movers).toEqual([{ id: second!.id, of: { ...second!.of, from: -1 } }]);
    expect(Object.keys(plan.getState().drafts)).toEqual([`${second!.id}.from`]);
    plan.take(planOf({ ...plan.getState(), wishes: [] }));
    expect(plan.getState().drafts).toEqual({});
    plan.putBack();
    expect(plan.getState().drafts[`${second!.id}.from`]!.text).toBe('y');
    expect(plan.getState().wishes).toHaveLength(1);
  });
});

describe('ready-made starts', () => {
  it.each([
    'half-ton-factory',
    'half-ton-long-travel',
    'planar-equal-arms',
    'rear-steer-saloon',
    'tall-knuckle-crossover',
  ] as const)('of the %s name inputs it has and move their wishes', (name) => {
    const model = shipped(name);
    for (const { label, plan } of startersOf(assemble(model))) {
      const question = allSteps(questionInSteps(model, plan, undefined))!;
      expect(question.moving.movers, label).toEqual(plan.movers);
      expect(question.isMoved.every(Boolean), label).toBe(true);
    }
  });
});
