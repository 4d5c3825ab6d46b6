/** What stops the wheel, worked out a step at a time wherever it runs; each kind of question has its own newest request. */
import {
  assemble,
  type CycleGrid,
  createMargins,
  cycleGrid,
  type Extreme,
  extremesInSteps,
  firstStopsInSteps,
  type Model,
  type Ray,
  type RayStops,
  type Steps,
  type UsableRegion,
  usableRegionInSteps,
  type WantedTravel,
  type Wish,
  wantedTravelInSteps,
} from '../../solver/index.ts';
import type { Runner } from './background.ts';
import type { MeshKeys, MeshSending, MeshShelf } from './meshShelf.ts';

/** The answers by the kind of question. */
export interface StopsAnswers {
  /** Bump and droop at one rack, left and right lock at one travel. */
  readonly rays: readonly RayStops[];
  readonly cycle: CycleGrid;
  readonly region: UsableRegion;
  readonly extremes: readonly Extreme[];
  readonly wanted: WantedTravel;
}
export type StopsKind = keyof StopsAnswers;

interface Asked {
  /** Grows with every request. */
  readonly number: number;
  readonly model: Model;
  readonly meshes: MeshKeys;
}

export type StopsQuestion =
  | (Asked & { readonly kind: 'rays'; readonly travel: number; readonly rack: number })
  | (Asked & { readonly kind: 'cycle' | 'region' | 'extremes' })
  | (Asked & { readonly kind: 'wanted'; readonly wish: Wish });

export type StopsRequest = MeshSending | StopsQuestion | { readonly kind: 'cancel' };

export type StopsAnswer = {
  [Kind in StopsKind]: {
    readonly kind: Kind;
    readonly number: number;
    readonly answer: StopsAnswers[Kind];
  };
}[StopsKind];

/** Longest turn of work before others get theirs, ms. */
const TURN = 8;
/** What is asked of first. */
const ORDER: readonly StopsKind[] = ['rays', 'cycle', 'region', 'wanted', 'extremes'];

function* raysInSteps(question: StopsQuestion & { kind: 'rays' }, shelf: MeshShelf | null) {
  const { model, meshes, travel, rack } = question;
  const margins = createMargins(assemble(model), { meshes: shelf?.surfaces(model, meshes) });
  const rays: readonly Ray[] = [
    { way: 'bump', held: rack },
    { way: 'droop', held: rack },
    { way: 'left', held: travel },
    { way: 'right', held: travel },
  ];
  const found: RayStops[] = [];
  for (const ray of rays) found.push(yield* firstStopsInSteps(margins, ray));
  return found;
}

function stepsOf(question: StopsQuestion, shelf: MeshShelf | null): Steps<StopsAnswers[StopsKind]> {
  if (question.kind === 'rays') return raysInSteps(question, shelf);
  const { model, meshes } = question;
  const corner = assemble(model);
  if (question.kind === 'wanted') return wantedTravelInSteps(corner, question.wish);
  if (question.kind === 'extremes') return extremesInSteps(corner);
  const margins = createMargins(corner, { meshes: shelf?.surfaces(model, meshes) });
  if (question.kind === 'region') return usableRegionInSteps(margins);
  return (function* cycle() {
    yield 0;
    return cycleGrid(margins);
  })();
}

/** `later` runs a function soon, after whatever waits; `clock` counts ms. Without a shelf no mesh is watched. */
export function createStopsRunner(
  answer: (answer: StopsAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
  shelf: MeshShelf | null = null,
): Runner<StopsRequest> {
  const jobs = new Map<
    StopsKind,
    { readonly number: number; readonly steps: Steps<StopsAnswers[StopsKind]> }
  >();
  let isWaiting = false;

  function turn(): void {
    isWaiting = false;
    const end = clock() + TURN;
    while (jobs.size > 0 && clock() < end) {
      const kind = ORDER.find((one) => jobs.has(one))!;
      const { number, steps } = jobs.get(kind)!;
      const step = steps.next();
      if (step.done !== true) continue;
      jobs.delete(kind);
      answer({ kind, number, answer: step.value } as StopsAnswer);
    }
    if (jobs.size > 0) wait();
  }

  function wait(): void {
    if (isWaiting) return;
    isWaiting = true;
    later(turn);
  }

  return {
    ask(request) {
      if (request.kind === 'mesh') shelf?.put(request);
      else if (request.kind === 'cancel') jobs.clear();
      else {
        jobs.set(request.kind, { number: request.number, steps: stepsOf(request, shelf) });
        wait();
      }
    },
  };
}
