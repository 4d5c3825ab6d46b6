/** Work on the space the tyre sweeps, a little at a time wherever it runs: the surface on show, and the one for a file. */

import { openEdges } from '../../solver/envelope/closed.ts';
import { type SweptGap, sweptGaps } from '../../solver/envelope/cuts.ts';
import { growSweptField, type SweptField } from '../../solver/envelope/field.ts';
import type { SweptRange } from '../../solver/envelope/range.ts';
import { roomAt } from '../../solver/envelope/room.ts';
import { meshSwept, type SweptSurface } from '../../solver/envelope/surface.ts';
import { assemble, type Corner, type Model } from '../../solver/index.ts';
import type { Runner } from './background.ts';
import { createWait } from './turns.ts';

/** Which surface: the one on show, or the one that is saved. */
export type SweptOwner = 'shown' | 'saved';

export interface SweptWork {
  /** Grows with every request. */
  readonly number: number;
  readonly owner: SweptOwner;
  readonly model: Model;
  readonly range: SweptRange;
  /** Room kept around the tyre, mm. */
  readonly margin: number;
  /** Grid, mm. */
  readonly step: number;
}

export type SweptRequest =
  | ({ readonly kind: 'sweep' } & SweptWork)
  /** Takes the owner's work back. */
  | { readonly kind: 'cancel'; readonly owner: SweptOwner };

export type SweptAnswer = { readonly number: number; readonly owner: SweptOwner } & (
  | { readonly kind: 'progress'; readonly progress: number }
  | {
      readonly kind: 'done';
      readonly surface: SweptSurface;
      /** Room from each vertex to the nearest fixed solid, and what is wanted there; none for a file. */
      readonly room: Float32Array;
      readonly gaps: readonly SweptGap[];
    }
  /** No pose of the range can be reached. */
  | { readonly kind: 'unreached' }
);

/** Longest turn of work before others get theirs, ms, and the least time between two words of progress. */
const TURN = 12;
const TELL = 80;

/** How true the surface is, mm: what a leaf of poses may stray, and what a search may miss. */
const TRUTH = {
  shown: { stray: 0.15, tolerance: 0.5 },
  saved: { stray: 0.05, tolerance: 0.25 },
} as const;

/** Shifts of the grid, as parts of its step, that are tried where a surface is not closed. */
const OTHER_GRIDS = [0.71, 0.13] as const;

/** The buffers of an answer, to be handed over without copying. */
export function sweptBuffers(answer: SweptAnswer): Transferable[] {
  if (answer.kind !== 'done') return [];
  const { positions, normals, triangles } = answer.surface;
  return [positions, normals, triangles, answer.room].map((array) => array.buffer as ArrayBuffer);
}

interface Job {
  readonly asked: SweptWork;
  readonly steps: Generator<number, SweptAnswer>;
  toldAt: number;
}

/** Grows the poses' field; how much is left of that is not known beforehand. */
function* growing(
  corner: Corner,
  range: SweptRange,
  stray: number,
): Generator<number, SweptField | null> {
  const steps = growSweptField(corner, range, stray);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield 0;
  }
}

function* work({
  number,
  owner,
  model,
  range,
  margin,
  step,
}: SweptWork): Generator<number, SweptAnswer> {
  const { stray, tolerance } = TRUTH[owner];
  const corner = assemble(model);
  const field = yield* growing(corner, range, stray);
  if (field === null) return { number, owner, kind: 'unreached' };
  const isShown = owner === 'shown';
  let surface = yield* meshSwept(field, margin, step, tolerance);
  // Where sheets meet in a face of the grid two of them can share an edge: a file is then meshed on another grid.
  for (const shift of isShown ? [] : OTHER_GRIDS) {
    if (openEdges(surface) === 0) break;
    surface = yield* meshSwept(field, margin, step, tolerance, shift);
  }
  return {
    number,
    owner,
    kind: 'done',
    surface,
    room: isShown ? roomAt(corner, surface.positions) : new Float32Array(0),
    gaps: isShown ? sweptGaps(corner, field) : [],
  };
}

/** Takes the newest request of each owner; what was asked before is dropped. The one on show goes first. */
export function createSweptRunner(
  answer: (answer: SweptAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
): Runner<SweptRequest> {
  const jobs = new Map<SweptOwner, Job>();
  const wait = createWait(later, turn);

  function advance(job: Job): void {
    const { number, owner } = job.asked;
    const step = job.steps.next();
    if (step.done) {
      jobs.delete(owner);
      answer(step.value);
    } else if (clock() - job.toldAt >= TELL) {
      job.toldAt = clock();
      answer({ number, owner, kind: 'progress', progress: step.value });
    }
  }

  function turn(): void {
    const end = clock() + TURN;
    do {
      const job = jobs.get('shown') ?? jobs.get('saved');
      if (job === undefined) return;
      advance(job);
    } while (clock() < end);
    if (jobs.size > 0) wait();
  }

  return {
    ask(request) {
      if (request.kind === 'cancel') jobs.delete(request.owner);
      else jobs.set(request.owner, { asked: request, steps: work(request), toldAt: clock() });
      if (jobs.size > 0) wait();
    },
  };
}
