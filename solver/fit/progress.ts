/** A part of longer work tells its progress as a part of the whole. */
import type { Steps } from '../stops/steps.ts';

/** Does the steps, their progress 0 to 1 told as `from` to `to`. */
export function* scaled<T>(steps: Steps<T>, from: number, to: number): Steps<T> {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield from + (to - from) * step.value;
  }
}
