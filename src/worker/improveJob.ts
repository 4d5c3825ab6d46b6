/** Better points, a step at a time wherever it runs: searches from some of the starts, then the answers among what all found. */

import type { MeshSurfaces } from '../../solver/clearance/mesh.ts';
import type { Answers } from '../../solver/improve/answer.ts';
import { answersInSteps } from '../../solver/improve/answers.ts';
import type { Plan } from '../../solver/improve/plan.ts';
import { type Question, questionInSteps } from '../../solver/improve/question.ts';
import { type Candidate, searchInSteps, startsOf } from '../../solver/improve/search.ts';
import type { Model, Steps } from '../../solver/index.ts';
import { within } from '../../solver/stops/steps.ts';
import type { Runner } from './background.ts';
import type { MeshKeys, MeshSending, MeshShelf } from './meshShelf.ts';
import { createNewestJob } from './turns.ts';

interface Asked {
  /** Grows with every question. */
  readonly number: number;
  readonly model: Model;
  readonly plan: Plan;
  readonly meshes: MeshKeys;
}

export type ImproveRequest =
  | MeshSending
  /** Searches from every `of`-th start, `first` being the first. */
  | (Asked & { readonly kind: 'search'; readonly first: number; readonly of: number })
  | (Asked & { readonly kind: 'answer'; readonly candidates: readonly (Candidate | null)[] })
  | { readonly kind: 'cancel' };

export type ImproveAnswer = { readonly number: number } & (
  | { readonly kind: 'progress'; readonly of: 'search' | 'answer'; readonly progress: number }
  /** Null where the model cannot be assembled. */
  | { readonly kind: 'found'; readonly candidates: readonly (Candidate | null)[] | null }
  | { readonly kind: 'answers'; readonly answers: Answers | null }
);

/** A question is made once for its searches and its answers. */
function createQuestions(shelf: MeshShelf | null) {
  let number = 0;
  let question: Question | null = null;
  return function* put(asked: Asked): Steps<Question | null> {
    if (asked.number === number) return question;
    const { model, plan, meshes } = asked;
    const surfaces: MeshSurfaces | undefined = shelf?.surfaces(model, meshes);
    question = yield* questionInSteps(model, plan, surfaces);
    number = asked.number;
    return question;
  };
}

type Put = ReturnType<typeof createQuestions>;

function* searching(
  put: Put,
  asked: Extract<ImproveRequest, { kind: 'search' }>,
): Steps<ImproveAnswer> {
  const { number, first, of } = asked;
  const question = yield* within(put(asked), 0, 0);
  if (question === null) return { number, kind: 'found', candidates: null };
  const count = startsOf(question);
  const candidates: (Candidate | null)[] = [];
  for (let start = first; start < count; start += of) {
    candidates.push(yield* within(searchInSteps(question, start), start / count, of / count));
  }
  return { number, kind: 'found', candidates };
}

function* answering(
  put: Put,
  asked: Extract<ImproveRequest, { kind: 'answer' }>,
): Steps<ImproveAnswer> {
  const { number, candidates } = asked;
  const question = yield* within(put(asked), 0, 0);
  const answers = question === null ? null : yield* answersInSteps(question, candidates);
  return { number, kind: 'answers', answers };
}

/** `later` runs a function soon, after whatever waits; `clock` counts ms. Without a shelf no mesh is watched. */
export function createImproveRunner(
  answer: (answer: ImproveAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
  shelf: MeshShelf | null = null,
): Runner<ImproveRequest> {
  const put = createQuestions(shelf);
  const job = createNewestJob<ImproveAnswer>(later, clock);

  return {
    ask(request) {
      if (request.kind === 'mesh') {
        shelf?.put(request);
        return;
      }
      job.drop();
      if (request.kind === 'cancel') return;
      const { number, kind: of } = request;
      job.begin(of === 'search' ? searching(put, request) : answering(put, request), {
        hearProgress: (progress) => answer({ number, kind: 'progress', of, progress }),
        hearDone: answer,
      });
    },
  };
}
