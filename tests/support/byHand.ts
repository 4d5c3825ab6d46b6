/** Work behind the page whose turns are taken by hand: the clock leaps at every look, so that a turn is short. */
import type { CreateRunner, Runner } from '../../src/worker/background.ts';

export interface ByHand<Request, Answer> {
  readonly runner: Runner<Request>;
  readonly answers: Answer[];
  /** Takes the next turn; false when none waits. */
  readonly turn: () => boolean;
}

/** `leap` is what the clock goes on at every look, ms. */
export function byHand<Request, Answer>(
  create: CreateRunner<Request, Answer>,
  leap: number,
): ByHand<Request, Answer> {
  const answers: Answer[] = [];
  const waiting: (() => void)[] = [];
  let now = 0;
  const runner = create(
    (answer) => answers.push(answer),
    (run) => waiting.push(run),
    () => {
      now += leap;
      return now;
    },
  );
  const turn = (): boolean => {
    const run = waiting.shift();
    run?.();
    return run !== undefined;
  };
  return { runner, answers, turn };
}
