import { describe, expect, it } from 'vitest';
import { createDocument } from '../../src/state/document.ts';
import { createSwept } from '../../src/state/swept.ts';
import type { SweptAnswer, SweptRequest } from '../../src/worker/sweptJob.ts';
import { shipped } from '../support/models.ts';

const SURFACE = {
  positions: new Float32Array(9),
  normals: new Float32Array(9),
  triangles: Uint32Array.of(0, 1, 2),
};

function bench() {
  const documentStore = createDocument(shipped('half-ton-factory'), 'test');
  const asked: SweptRequest[] = [];
  let answer: (answer: SweptAnswer) => void = () => undefined;
  const swept = createSwept(documentStore, (take) => {
    answer = take;
    return { ask: (request) => asked.push(request), stop: () => undefined };
  });
  const sweeps = () => asked.filter((request) => request.kind === 'sweep');
  const done = (number: number, owner: 'shown' | 'saved' = 'shown'): void =>
    answer({
      kind: 'done',
      number,
      owner,
      surface: SURFACE,
      room: new Float32Array(6),
      gaps: [],
    });
  const rename = (name: string): boolean => documentStore.edit((model) => ({ ...model, name }));
  return {
    documentStore,
    swept,
    asked,
    sweeps,
    done,
    rename,
    answer: (a: SweptAnswer) => answer(a),
  };
}

describe('the swept space', () => {
  it('is asked for while someone watches, once for all of them, and is theirs when it comes', () => {
    const { swept, sweeps, done, documentStore } = bench();
    expect(sweeps()).toHaveLength(0);
    const [first, second] = [swept.watch(), swept.watch()];
    expect(sweeps()).toHaveLength(1);
    expect(swept.getState().stage).toBe('running');
    done(sweeps()[0]!.number);
    expect(swept.getState()).toMatchObject({ stage: 'done', progress: 1 });
    expect(swept.getState().shown?.model).toBe(documentStore.getState().model);
    first();
    second();
    expect(sweeps()).toHaveLength(1);
  });

  it('follows edits: the newest request wins, and what is shown meanwhile counts as stale', () => {
    const { swept, sweeps, done, rename } = bench();
    swept.watch();
    done(sweeps()[0]!.number);
    rename('second');
    rename('third');
    const [, second, third] = sweeps();
    expect(third!.model.name).toBe('third');
    expect(swept.getState().stage).toBe('running');
    expect(swept.getState().shown?.model.name).not.toBe('third');
    done(second!.number);
    expect(swept.getState().stage).toBe('running');
    done(third!.number);
    expect(swept.getState().stage).toBe('done');
    expect(swept.getState().shown?.model.name).toBe('third');
  });

  it('stops when asked, is taken up again, and is not followed while nobody watches', () => {
    const { swept, asked, sweeps, done, rename } = bench();
    const leave = swept.watch();
    swept.stop();
    expect(swept.getState().stage).toBe('stopped');
    expect(asked.at(-1)).toEqual({ kind: 'cancel', owner: 'shown' });
    done(sweeps()[0]!.number);
    expect(swept.getState().shown).toBeNull();
    swept.sweep();
    done(sweeps()[1]!.number);
    expect(swept.getState().stage).toBe('done');
    leave();
    rename('unwatched');
    expect(sweeps()).toHaveLength(2);
    swept.watch();
    expect(sweeps()).toHaveLength(3);
  });

  it('is swept anew over the range chosen', () => {
    const { swept, sweeps } = bench();
    swept.watch();
    swept.choose('stops');
    expect(sweeps().map(({ range }) => range)).toEqual(['whole', 'stops']);
    swept.choose('stops');
    expect(sweeps()).toHaveLength(2);
  });

  it('says when no pose of the range can be reached', () => {
    const { swept, sweeps, answer } = bench();
    swept.watch();
    answer({ kind: 'unreached', owner: 'shown', number: sweeps()[0]!.number });
    expect(swept.getState()).toMatchObject({ stage: 'unreached', shown: null });
  });

  it('makes a file beside it, with its margin and grid, and can be taken back', async () => {
    const { swept, asked, sweeps, done, answer } = bench();
    const saved = swept.saved(12, 6);
    const { number } = sweeps()[0]!;
    expect(sweeps()[0]).toMatchObject({ owner: 'saved', margin: 12, step: 6 });
    answer({ kind: 'progress', owner: 'saved', number, progress: 0.4 });
    expect(swept.getState().saving).toBe(0.4);
    done(number, 'saved');
    expect(await saved).toMatchObject({ margin: 12, step: 6, surface: SURFACE });
    expect(swept.getState().saving).toBeNull();
    const other = swept.saved(0, 4);
    swept.cancelSaving();
    expect(asked.at(-1)).toEqual({ kind: 'cancel', owner: 'saved' });
    expect(await other).toBeNull();
  });
});
