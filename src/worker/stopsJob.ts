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
import { createJobsByKind } from './turns.ts';

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
  const jobs = createJobsByKind<StopsKind, StopsAnswers[StopsKind]>(ORDER, later, clock);

  return {
    ask(request) {
      if (request.kind === 'mesh') shelf?.put(request);
      else if (request.kind === 'cancel') jobs.drop();
      else {
        const { kind, number } = request;
        jobs.begin(kind, stepsOf(request, shelf), (found) =>
          answer({ kind, number, answer: found } as StopsAnswer),
        );
      }
    },
  };
}
