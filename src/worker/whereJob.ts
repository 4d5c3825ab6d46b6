/** Where a point may go: the picture coarse first, then the best places; and single places, told at once. */
import {
  type Best,
  bestsInSteps,
  type Ideal,
  idealOf,
  type Known,
  knownOf,
  type Model,
  type Picture,
  pictureInSteps,
  placeTold,
  presentTold,
  type Question,
  type Steps,
  type Told,
  thinned,
  writeModel,
} from '../../solver/index.ts';
import type { Runner } from './background.ts';
import { createWait, TURN } from './turns.ts';

export type WhereRequest =
  | {
      readonly kind: 'where';
      /** Grows with every request. */
      readonly number: number;
      readonly model: Model;
      readonly question: Question;
    }
  /** Tells of one place; `number` is that of the question before. */
  | { readonly kind: 'probe'; readonly number: number; readonly at: readonly [number, number] }
  | { readonly kind: 'cancel' };

/** What is known at once: the present place and what theory says of the plane. */
export interface WhereStart {
  readonly present: Told;
  readonly known: Known | null;
  readonly ideal: Ideal | null;
}

export type WhereAnswer = { readonly number: number } & (
  | { readonly kind: 'start'; readonly start: WhereStart }
  | { readonly kind: 'picture'; readonly picture: Picture; readonly progress: number }
  | { readonly kind: 'bests'; readonly bests: readonly Best[] }
  | { readonly kind: 'probe'; readonly told: Told }
);

/** Buffers of an answer that are handed over: those of a picture that was made for it. */
export function handedOf(answer: WhereAnswer): Transferable[] {
  if (answer.kind !== 'picture') return [];
  const { xs, ys, values, rates } = answer.picture;
  return [xs.buffer, ys.buffer, values.buffer, rates.buffer];
}

interface Job {
  readonly number: number;
  readonly model: Model;
  readonly question: Question;
}

/** What a picture depends on. */
function keyOf({ model, question }: Job): string {
  return JSON.stringify([writeModel(model), { ...question, reach: null }]);
}

export function createWhereRunner(
  answer: (answer: WhereAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
): Runner<WhereRequest> {
  let job: Job | null = null;
  let steps: Steps<void> | null = null;
  const wait = createWait(later, turn);
  /** The last whole picture: how far the point may move changes the best places and not the picture. */
  let whole: { readonly key: string; readonly picture: Picture } | null = null;

  function tell(number: number, picture: Picture, progress: number): void {
    const { xs, ys, values, rates } = picture;
    const copy = { xs: xs.slice(), ys: ys.slice(), values: values.slice(), rates: rates.slice() };
    answer({ number, kind: 'picture', picture: copy, progress });
  }

  function* picture(now: Job): Steps<Picture> {
    const { number, model, question } = now;
    const key = keyOf(now);
    if (whole?.key === key) {
      tell(number, whole.picture, 1);
      return whole.picture;
    }
    const made = yield* pictureInSteps(model, question, (part, stride) =>
      tell(number, thinned(part, stride), 1 / stride ** 2),
    );
    whole = { key, picture: made };
    return made;
  }

  function* work(now: Job): Steps<void> {
    const { number, model, question } = now;
    const present = presentTold(model, question);
    const start = { present, known: knownOf(model, question), ideal: idealOf(model, question) };
    answer({ number, kind: 'start', start });
    const made = yield* picture(now);
    const bests = yield* bestsInSteps(model, question, made);
    answer({ number, kind: 'bests', bests });
  }

  function turn(): void {
    const end = clock() + TURN;
    while (steps !== null) {
      if (steps.next().done === true) steps = null;
      else if (clock() >= end) {
        wait();
        return;
      }
    }
  }

  function probe(number: number, at: readonly [number, number]): void {
    if (job === null || job.number !== number) return;
    answer({ number, kind: 'probe', told: placeTold(job.model, job.question, at) });
  }

  return {
    ask(request) {
      if (request.kind === 'probe') {
        probe(request.number, request.at);
        return;
      }
      steps = null;
      if (request.kind === 'cancel') return;
      const { number, model, question } = request;
      job = { number, model, question };
      steps = work(job);
      wait();
    },
  };
}
