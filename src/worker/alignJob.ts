/** Settings that reach what is wanted, what can be reached, and what settings do besides: a step at a time wherever it runs. */
import {
  type Alignment,
  align,
  assemble,
  type MeshSurfaces,
  type Model,
  type Moved,
  movesBetween,
  type ReachableRegion,
  reachableRegionInSteps,
  type Steps,
  surveyInSteps,
  type Worsened,
  worsenedBetween,
} from '../../solver/index.ts';
import type { Runner } from './background.ts';
import type { MeshKeys, MeshSending, MeshShelf } from './meshShelf.ts';
import { createJobsByKind } from './turns.ts';

/** What settings do besides what they are for. */
export interface AlignmentEffects {
  readonly moves: readonly Moved[];
  /** Gaps and limits that are worse for it; what has least to spare first. */
  readonly worsened: readonly Worsened[];
}

/** The answers by the kind of question. */
export interface AlignAnswers {
  readonly settings: Alignment;
  /** null where the corner cannot stand at ride height. */
  readonly region: ReachableRegion | null;
  readonly effects: AlignmentEffects;
}
export type AlignKind = keyof AlignAnswers;

interface Asked {
  /** Grows with every request. */
  readonly number: number;
  readonly model: Model;
}

export type AlignQuestion =
  | (Asked & { readonly kind: 'settings' | 'region' })
  /** From the model to the same one set otherwise. */
  | (Asked & { readonly kind: 'effects'; readonly set: Model; readonly meshes: MeshKeys });

export type AlignRequest =
  | MeshSending
  | AlignQuestion
  | { readonly kind: 'cancel'; readonly of?: AlignKind };

export type AlignAnswer = {
  [Kind in AlignKind]: {
    readonly kind: Kind;
    readonly number: number;
    readonly answer: AlignAnswers[Kind];
  };
}[AlignKind];

/** What is asked of first: a hand that drags the wanted point waits for settings. */
const ORDER: readonly AlignKind[] = ['settings', 'region', 'effects'];

function* settingsInSteps(model: Model): Steps<Alignment> {
  yield 0;
  return align(model);
}

function* effectsInSteps(
  model: Model,
  set: Model,
  meshes: MeshSurfaces | undefined,
): Steps<AlignmentEffects> {
  const before = yield* surveyInSteps(assemble(model), meshes);
  const after = yield* surveyInSteps(assemble(set), meshes);
  return { moves: movesBetween(before, after), worsened: worsenedBetween(before, after, '') };
}

function stepsOf(question: AlignQuestion, shelf: MeshShelf | null): Steps<AlignAnswers[AlignKind]> {
  const { model } = question;
  if (question.kind === 'effects') {
    const { set, meshes } = question;
    return effectsInSteps(model, set, shelf?.surfaces(model, meshes));
  }
  return question.kind === 'settings' ? settingsInSteps(model) : reachableRegionInSteps(model);
}

/** `later` runs a function soon, after whatever waits; `clock` counts ms. Without a shelf no mesh is watched. */
export function createAlignRunner(
  answer: (answer: AlignAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
  shelf: MeshShelf | null = null,
): Runner<AlignRequest> {
  const jobs = createJobsByKind<AlignKind, AlignAnswers[AlignKind]>(ORDER, later, clock);

  return {
    ask(request) {
      if (request.kind === 'mesh') shelf?.put(request);
      else if (request.kind === 'cancel') jobs.drop(request.of);
      else {
        const { kind, number } = request;
        jobs.begin(kind, stepsOf(request, shelf), (found) =>
          answer({ kind, number, answer: found } as AlignAnswer),
        );
      }
    },
  };
}
