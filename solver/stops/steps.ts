/** Work done in steps, so that a worker can tell how far it is and be stopped between them. */

/** Yields the share done, 0 to 1, between steps, and returns the answer. */
export type Steps<T> = Generator<number, T>;

/** One part of a larger piece of work: its share of the whole begins at `from`. */
export function* within<T>(steps: Steps<T>, from: number, share: number): Steps<T> {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield from + share * step.value;
  }
}

/** Does all steps at once. */
export function allSteps<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
