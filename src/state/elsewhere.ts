/** Whether the work on the bench can be had again from somewhere else: a file, a shipped model, a link, a design beside it. */
import { type Model, writeModel } from '../../solver/index.ts';
import { type DocumentState, sameModel } from './document.ts';
import type { Shelf } from './shelf.ts';

/** What was last saved as a file. */
export const SAVED_KEY = 'armscribe.saved';

export function createElsewhere(shelf: Shelf) {
  /** Notes that a model was handed over as a file. */
  function noteSaved(model: Model): void {
    shelf.write(SAVED_KEY, writeModel(model));
  }

  /** `others` are designs that are kept by other means. */
  function holds(
    { model, origin, past }: Pick<DocumentState, 'model' | 'origin' | 'past'>,
    others: readonly Model[],
  ): boolean {
    // The origin changes by opening only, so nothing was done to it since.
    const before = past.at(-1);
    if (before !== undefined && before.origin !== origin) return true;
    if (others.some((other) => sameModel(other, model))) return true;
    return shelf.read(SAVED_KEY) === writeModel(model);
  }

  return { noteSaved, holds };
}

export type Elsewhere = ReturnType<typeof createElsewhere>;
