import { describe, expect, it } from 'vitest';
import { placeTold, presentTold } from '../../solver/index.ts';
import { createDocument } from '../../src/state/document.ts';
import { createWhere, limitOf } from '../../src/state/where.ts';
import type { WhereAnswer, WhereRequest } from '../../src/worker/whereJob.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('half-ton-factory');

function bench() {
  const documentStore = createDocument(MODEL, 'test');
  const asked: WhereRequest[] = [];
  let take: (answer: WhereAnswer) => void = () => undefined;
  const where = createWhere(documentStore, (answer) => {
    take = answer;
    return { ask: (request) => asked.push(request), stop: () => undefined };
  });
  const questions = () => asked.flatMap((request) => (request.kind === 'where' ? [request] : []));
  const probes = () => asked.flatMap((request) => (request.kind === 'probe' ? [request] : []));
  return { documentStore, where, asked, questions, probes, answer: (a: WhereAnswer) => take(a) };
}

describe('where a point may go', () => {
  it('is asked for while someone watches, anew for every edit and wish, and never for the limit', () => {
    const { where, questions, documentStore, asked } = bench();
    where.wish({ half: 40 });
    expect(questions()).toHaveLength(0);
    const leave = where.watch();
    expect(questions()).toHaveLength(1);
    expect(questions()[0]!.question).toMatchObject({ half: 40, stretch: [-102, 100], wanted: 0 });
    documentStore.edit((model) => ({ ...model, stops: { bump: 80, droop: 70 } }));
    expect(questions()[1]!.question.stretch).toEqual([-70, 80]);
    where.wish({ stretch: [-20, 30] });
    expect(questions()[2]!.question.stretch).toEqual([-20, 30]);
    where.limit(0.3);
    expect(limitOf(where.getState())).toBe(0.3);
    expect(questions()).toHaveLength(3);
    leave();
    expect(asked.at(-1)).toEqual({ kind: 'cancel' });
    where.wish({ half: 5 });
    expect(questions()).toHaveLength(3);
  });

  it('wants camber to go on as the design has it, held or else present, until it is stated', () => {
    const { where, questions, documentStore } = bench();
    where.wish({ subject: 'upperBoth' });
    where.watch();
    // An invented model: its own 2.68° over 100 mm, top in, to the nearest tenth.
    expect(questions()[0]!.question.wanted).toBe(-0.027);
    documentStore.hold();
    documentStore.edit((model) => ({
      ...model,
      upperArm: { ...model.upperArm, frontPivot: [80, 470, 230], rearPivot: [-120, 470, 225] },
    }));
    expect(questions().at(-1)!.question.wanted).toBe(-0.027);
    documentStore.release();
    expect(questions().at(-1)!.question.wanted).not.toBe(-0.027);
    where.wish({ wanted: { toe: 0, camber: -0.01 } });
    expect(questions().at(-1)!.question.wanted).toBe(-0.01);
  });

  it('asks about one place at a time, and then about the newest', () => {
    const { where, questions, probes, answer } = bench();
    where.watch();
    const { number, question } = questions()[0]!;
    where.moveProbe([391, -47]);
    where.moveProbe([392, -46]);
    where.moveProbe([393, -45]);
    expect(probes().map(({ at }) => at)).toEqual([[391, -47]]);
    expect(where.getState().probeAt).toEqual([393, -45]);
    const told = placeTold(MODEL, question, [391, -47]);
    answer({ number, kind: 'probe', told });
    expect(where.getState().probe).toEqual(told);
    expect(probes().map(({ at }) => at)).toEqual([
      [391, -47],
      [393, -45],
    ]);
  });

  it('hears no answer to a question before, and drops what was drawn of another point at once', () => {
    const { where, questions, answer } = bench();
    where.watch();
    const first = questions()[0]!;
    const present = presentTold(MODEL, first.question);
    const start = { present, known: null, ideal: null };
    answer({ number: first.number, kind: 'start', start });
    expect(where.getState().start).toEqual(start);
    where.moveProbe([391, -47]);
    where.wish({ subject: 'rodOuter' });
    expect(where.getState()).toMatchObject({ start: null, picture: null, probeAt: null });
    answer({ number: first.number, kind: 'start', start });
    expect(where.getState().start).toBeNull();
  });
});
