/** The proof behind the page, its turns taken by hand: told as it comes, dropped when asked anew or cancelled. */
import { describe, expect, test } from 'vitest';
import { certify } from '../../solver/certify/proof.ts';
import { watchedPairs } from '../../solver/clearance/pairs.ts';
import { assemble, type Model } from '../../solver/index.ts';
import { buildTree } from '../../src/mesh/tree.ts';
import { createProofRunner } from '../../src/worker/proofJob.ts';
import { byHand } from '../support/byHand.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('planar-equal-arms');

function prove(number: number, model: Model, meshes: ReadonlyMap<string, string> = new Map()) {
  return { kind: 'prove', number, model, meshes } as const;
}

describe('createProofRunner', () => {
  test('tells every pair once, as the solver proves it, with progress that only grows', () => {
    const { runner, answers, turn } = byHand(createProofRunner, 5);
    runner.ask(prove(1, MODEL));
    while (turn());
    const corner = assemble(MODEL);
    expect(answers.flatMap(({ proven }) => proven)).toEqual([
      ...certify(corner, watchedPairs(corner)),
    ]);
    expect(answers.length).toBeGreaterThan(1);
    const progress = answers.map((answer) => answer.progress);
    expect(progress).toEqual([...progress].sort((a, b) => a - b));
    expect(answers.map(({ isDone }) => isDone)).toEqual(
      answers.map((_, i) => i === answers.length - 1),
    );
  });

  test('says no more of what was asked before, nor after a cancel', () => {
    const { runner, answers, turn } = byHand(createProofRunner, 5);
    runner.ask(prove(1, MODEL));
    turn();
    runner.ask(prove(2, { ...MODEL, wheel: { ...MODEL.wheel, offset: MODEL.wheel.offset + 5 } }));
    const before = answers.length;
    while (answers.length === before && turn());
    expect(answers.at(-1)!.number).toBe(2);
    runner.ask({ kind: 'cancel' });
    const told = answers.length;
    while (turn());
    expect(answers).toHaveLength(told);
  });

  test('watches a mesh that was sent, and leaves out one that was not', () => {
    const { runner, answers, turn } = byHand(createProofRunner, 5);
    const positions = Float32Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0]);
    const tree = buildTree({ positions, index: Uint32Array.from([0, 1, 2]) }, 1);
    const obstacle = { name: 'plate', shape: 'mesh', file: 'plate.stl', unit: 'mm' } as const;
    const model: Model = { ...MODEL, obstacles: [{ ...obstacle, position: [0, 0, 900] }] };
    const names = (from: number): string[] =>
      answers.slice(from).flatMap(({ proven }) => proven.flatMap((result) => result.names));
    runner.ask(prove(1, model));
    while (turn());
    expect(names(0)).not.toContain('plate');
    const from = answers.length;
    runner.ask({ kind: 'mesh', key: 'a', tree });
    runner.ask(prove(2, model, new Map([['plate', 'a']])));
    while (turn());
    expect(names(from)).toContain('plate');
  });
});
