/** What is shown of a proof: asked once, followed through edits, stopped by hand, with a service driven by hand. */
import { describe, expect, test } from 'vitest';
import type { PairResult } from '../../solver/certify/result.ts';
import { createDocument } from '../../src/state/document.ts';
import { meshes } from '../../src/state/meshes.ts';
import { createProofs } from '../../src/state/proofs.ts';
import type { ProofAnswer, ProofRequest } from '../../src/worker/proofJob.ts';
import { shipped } from '../support/models.ts';

const RANGE = { travel: [-1, 1], rack: [0, 0] } as const;

function pair(least: number): PairResult {
  return {
    names: ['tieRod', 'wheel'],
    least,
    provenAtLeast: least,
    travel: 0,
    rack: 0,
    required: 6,
    verdict: 'clear',
  };
}

function bench() {
  const documentStore = createDocument(shipped('half-ton-factory'), 'half-ton-factory.json');
  const asked: ProofRequest[] = [];
  let take: (answer: ProofAnswer) => void = () => undefined;
  const proofs = createProofs(documentStore, meshes, (answer) => {
    take = answer;
    return { ask: (request) => asked.push(request), stop: () => undefined };
  });
  const give = (number: number, proven: readonly PairResult[], isDone: boolean): void =>
    take({ number, progress: isDone ? 1 : 0.5, isDone, range: RANGE, proven, count: 2 });
  const offset = (mm: number): void => {
    documentStore.edit((model) => ({ ...model, wheel: { ...model.wheel, offset: mm } }));
  };
  return { proofs, asked, give, offset };
}

describe('createProofs', () => {
  test('asks when somebody watches, once however many do, and anew for another design', () => {
    const { proofs, asked, offset } = bench();
    expect(asked).toEqual([]);
    const leave = [proofs.watch(), proofs.watch()];
    expect(asked.map(({ kind }) => kind)).toEqual(['prove']);
    offset(31);
    expect(asked).toHaveLength(2);
    for (const exit of leave) exit();
    offset(32);
    expect(asked.at(-1)).toEqual({ kind: 'cancel' });
  });

  test('adds pairs as they come, and none that belong to the design before', () => {
    const { proofs, give, offset } = bench();
    proofs.watch();
    give(1, [pair(20)], false);
    expect(proofs.getState()).toMatchObject({ stage: 'running', progress: 0.5, count: 2 });
    offset(31);
    expect(proofs.getState().results).toEqual([]);
    give(1, [pair(19)], true);
    expect(proofs.getState().results).toEqual([]);
    give(2, [pair(18)], false);
    give(2, [pair(17)], true);
    expect(proofs.getState()).toMatchObject({ stage: 'done', progress: 1 });
    expect(proofs.getState().results.map(({ least }) => least)).toEqual([18, 17]);
  });

  test('stops when told, keeps what was proven till then, and starts over when asked', () => {
    const { proofs, asked, give } = bench();
    proofs.watch();
    give(1, [pair(20)], false);
    proofs.stop();
    give(1, [pair(19)], true);
    expect(asked.at(-1)).toEqual({ kind: 'cancel' });
    expect(proofs.getState()).toMatchObject({ stage: 'stopped', results: [pair(20)] });
    proofs.prove();
    expect(proofs.getState()).toMatchObject({ stage: 'running', results: [] });
  });
});
