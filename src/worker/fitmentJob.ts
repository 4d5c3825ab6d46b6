/** Least gaps of wheels and tyres that might be fitted: every pair of wheel and tyre, proven, the tie rod's first. */
import { createProof, type Proof, stepProof } from '../../solver/certify/proof.ts';
import type { PairResult } from '../../solver/certify/result.ts';
import type { MeshSurfaces } from '../../solver/clearance/mesh.ts';
import { type WatchedPair, watchedPairs } from '../../solver/clearance/pairs.ts';
import { assemble, type Corner, type Model } from '../../solver/index.ts';
import type { Runner } from './background.ts';
import { createMeshShelf, type MeshKeys, type MeshSending } from './meshShelf.ts';
import { createWait, TURN } from './turns.ts';

export type FitmentRequest =
  | MeshSending
  | {
      readonly kind: 'column';
      /** Grows with every request. */
      readonly number: number;
      /** Whose gaps: a column of the sheet. */
      readonly column: string;
      readonly model: Model;
      readonly meshes: MeshKeys;
    }
  /** Takes a column's work back. */
  | { readonly kind: 'leave'; readonly column: string };

export interface FitmentAnswer {
  readonly number: number;
  readonly column: string;
  /** The pairs proven so far. */
  readonly proven: readonly PairResult[];
  /** 1 when all pairs are proven. */
  readonly progress: number;
}

/** Cells between two looks at the clock. */
const BUDGET = 16;
/** Progress that is told of by itself. */
const TOLD = 0.02;

interface Job {
  readonly number: number;
  readonly column: string;
  readonly proof: Proof;
  told: number;
}

/** The pairs of wheel and tyre, in the order they are asked about: the tie rod's, the tyre's, the wheel's. */
export function fitmentPairs(corner: Corner, meshes?: MeshSurfaces): readonly WatchedPair[] {
  const rank = ({ names }: WatchedPair): number => {
    if (names.includes('tieRod')) return 0;
    return names.includes('tyre') ? 1 : 2;
  };
  return watchedPairs(corner, meshes)
    .filter(({ names }) => names.includes('wheel') || names.includes('tyre'))
    .sort((a, b) => rank(a) - rank(b));
}

/** Takes the newest request of each column; what was asked for it before is dropped. */
export function createFitmentRunner(
  answer: (answer: FitmentAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
): Runner<FitmentRequest> {
  const jobs = new Map<string, Job>();
  const shelf = createMeshShelf();
  const wait = createWait(later, turn);

  function prove(job: Job, end: number): void {
    const { number, column, proof } = job;
    let isDone = false;
    while (!isDone && clock() < end) isDone = stepProof(proof, BUDGET);
    if (isDone) jobs.delete(column);
    const { progress, results } = proof;
    if (!isDone && progress < job.told + TOLD) return;
    job.told = progress;
    answer({ number, column, proven: [...results], progress });
  }

  function turn(): void {
    const [next] = jobs.values();
    if (next !== undefined) prove(next, clock() + TURN);
    if (jobs.size > 0) wait();
  }

  return {
    ask(request) {
      if (request.kind === 'mesh') {
        shelf.put(request);
        return;
      }
      const { column } = request;
      jobs.delete(column);
      if (request.kind === 'leave') return;
      const { number, model, meshes } = request;
      const corner = assemble(model);
      const pairs = fitmentPairs(corner, shelf.surfaces(model, meshes));
      jobs.set(column, { number, column, proof: createProof(corner, pairs), told: 0 });
      wait();
    },
  };
}
