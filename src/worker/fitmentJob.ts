/** Least gaps of wheels and tyres that might be fitted: first the tie rod's, found; then every pair of wheel and tyre, proven. */
import { createProof, type Proof, stepProof } from '../../solver/certify/proof.ts';
import type { PairResult } from '../../solver/certify/result.ts';
import type { MeshSurfaces } from '../../solver/clearance/mesh.ts';
import { watchedPairs } from '../../solver/clearance/pairs.ts';
import { leastRodGaps, type RodGaps } from '../../solver/fitment/leastGap.ts';
import { assemble, type Corner, type Model } from '../../solver/index.ts';
import type { MeshTree } from '../mesh/data.ts';
import { placingOf } from '../mesh/placing.ts';
import { createMeshSurface } from '../mesh/surface.ts';
import type { Runner } from './background.ts';

/** Meshes by their obstacles' names. */
export type FitmentMeshes = ReadonlyMap<string, MeshTree>;

export type FitmentRequest =
  | {
      readonly kind: 'column';
      /** Grows with every request. */
      readonly number: number;
      /** Whose gaps: a column of the sheet. */
      readonly column: string;
      /** Null takes the column's work back. */
      readonly model: Model | null;
    }
  /** The meshes that are at hand, for all columns asked for after. */
  | { readonly kind: 'meshes'; readonly meshes: FitmentMeshes };

export interface FitmentAnswer {
  readonly number: number;
  readonly column: string;
  readonly gaps: RodGaps;
  /** The pairs proven so far. */
  readonly proven: readonly PairResult[];
  /** 1 when all pairs are proven. */
  readonly progress: number;
}

/** Longest turn of work before others get theirs, ms. */
const TURN = 8;
/** Cells between two looks at the clock. */
const BUDGET = 16;
/** Progress that is told of by itself. */
const TOLD = 0.02;

interface Job {
  readonly number: number;
  readonly column: string;
  readonly corner: Corner;
  gaps: RodGaps | null;
  proof: Proof | null;
  told: number;
}

function isOfWheel([one, other]: readonly [string, string]): boolean {
  return [one, other].some((name) => name === 'wheel' || name === 'tyre');
}

function surfacesOf({ obstacles }: Model, meshes: FitmentMeshes): MeshSurfaces {
  return new Map(
    (obstacles ?? []).flatMap((obstacle) => {
      const tree = meshes.get(obstacle.name);
      if (obstacle.shape !== 'mesh' || tree === undefined) return [];
      return [[obstacle.name, createMeshSurface(tree, placingOf(obstacle))] as const];
    }),
  );
}

/** Takes the newest request of each column; what was asked for it before is dropped. */
export function createFitmentRunner(
  answer: (answer: FitmentAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
): Runner<FitmentRequest> {
  const jobs = new Map<string, Job>();
  let meshes: FitmentMeshes = new Map();
  let isWaiting = false;

  function tell({ number, column, gaps, proof }: Job): void {
    if (gaps === null) return;
    answer({
      number,
      column,
      gaps,
      proven: [...(proof?.results ?? [])],
      progress: proof?.progress ?? 0,
    });
  }

  /** The tie rod's gaps come first, of every column: they are there in an instant. */
  function find(job: Job): void {
    job.gaps = leastRodGaps(job.corner);
    tell(job);
  }

  function prove(job: Job, end: number): void {
    const { corner } = job;
    job.proof ??= createProof(
      corner,
      watchedPairs(corner, surfacesOf(corner.model, meshes)).filter(({ names }) =>
        isOfWheel(names),
      ),
    );
    let isDone = false;
    while (!isDone && clock() < end) isDone = stepProof(job.proof, BUDGET);
    if (isDone) jobs.delete(job.column);
    if (!isDone && job.proof.progress < job.told + TOLD) return;
    job.told = job.proof.progress;
    tell(job);
  }

  function turn(): void {
    isWaiting = false;
    const all = [...jobs.values()];
    const unfound = all.find(({ gaps }) => gaps === null);
    if (unfound !== undefined) find(unfound);
    else if (all[0] !== undefined) prove(all[0], clock() + TURN);
    if (jobs.size > 0) wait();
  }

  function wait(): void {
    if (isWaiting) return;
    isWaiting = true;
    later(turn);
  }

  return {
    ask(request) {
      if (request.kind === 'meshes') {
        meshes = request.meshes;
        return;
      }
      const { number, column, model } = request;
      jobs.delete(column);
      if (model === null) return;
      const corner = assemble(model);
      jobs.set(column, { number, column, corner, gaps: null, proof: null, told: 0 });
      wait();
    },
  };
}
