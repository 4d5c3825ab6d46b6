/** The proof of all watched pairs' least gaps, a few cells at a time wherever it runs; what is proven is told as it comes. */

import { createProof, type Proof, stepProof } from '../../solver/certify/proof.ts';
import type { CertifiedRange } from '../../solver/certify/range.ts';
import type { PairResult } from '../../solver/certify/result.ts';
import { watchedPairs } from '../../solver/clearance/pairs.ts';
import { assemble, type Model } from '../../solver/index.ts';
import type { Runner } from './background.ts';
import { createMeshShelf, type MeshKeys, type MeshSending } from './meshShelf.ts';
import { createWait, TELL, TURN } from './turns.ts';

export type ProofRequest =
  | MeshSending
  | {
      readonly kind: 'prove';
      /** Grows with every request. */
      readonly number: number;
      readonly model: Model;
      readonly meshes: MeshKeys;
    }
  | { readonly kind: 'cancel' };

export interface ProofAnswer {
  readonly number: number;
  /** 0 to 1. */
  readonly progress: number;
  readonly isDone: boolean;
  readonly range: CertifiedRange;
  /** Pairs proven since the last answer. */
  readonly proven: readonly PairResult[];
  /** How many pairs there are in all. */
  readonly count: number;
}

/** Cells between two looks at the clock. */
const BUDGET = 20;

interface Job {
  readonly number: number;
  readonly proof: Proof;
  told: number;
  toldAt: number;
}

/** Takes the newest request; what was asked before is dropped. */
export function createProofRunner(
  answer: (answer: ProofAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
): Runner<ProofRequest> {
  const shelf = createMeshShelf();
  let job: Job | null = null;
  const wait = createWait(later, turn);

  function tell(told: Job, isDone: boolean): void {
    const { proof, number } = told;
    const proven = proof.results.slice(told.told);
    told.told = proof.results.length;
    told.toldAt = clock();
    const { progress, range, pairs } = proof;
    answer({ number, progress, isDone, range, proven, count: pairs.length });
  }

  function turn(): void {
    const now = job;
    if (now === null) return;
    const end = clock() + TURN;
    let isDone = false;
    while (!isDone && clock() < end) isDone = stepProof(now.proof, BUDGET);
    if (isDone) job = null;
    if (isDone || clock() - now.toldAt > TELL) tell(now, isDone);
    if (!isDone) wait();
  }

  return {
    ask(request) {
      if (request.kind === 'mesh') {
        shelf.put(request);
        return;
      }
      job = null;
      if (request.kind === 'cancel') return;
      const corner = assemble(request.model);
      const pairs = watchedPairs(corner, shelf.surfaces(request.model, request.meshes));
      const { number } = request;
      job = { number, proof: createProof(corner, pairs), told: 0, toldAt: clock() };
      wait();
    },
  };
}
