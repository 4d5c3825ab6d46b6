/** Text being typed into a field: it stays as typed until it is taken, or given up. */
import { type KeyboardEvent, useEffect, useState } from 'react';

export interface Draft {
  readonly text: string;
  readonly isOpen: boolean;
  type(text: string): void;
  /** Tries to have the text taken; what is refused stays. */
  enter(): void;
  drop(): void;
  /** Enter takes, Escape gives up. */
  onKeyDown(event: KeyboardEvent): void;
}

/** `shown` is the present value as text; `take` answers whether the typed text was taken. */
export function useDraft(
  shown: string,
  take: (text: string) => boolean,
  onDrop: () => void,
): Draft {
  const [draft, setDraft] = useState<string | null>(null);
  // The value has changed elsewhere: what was typed against the old one is past.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the change of `shown` itself is what counts.
  useEffect(() => setDraft(null), [shown]);

  function drop(): void {
    setDraft(null);
    onDrop();
  }

  function enter(): void {
    if (draft === null) return;
    if (draft.trim() === shown) drop();
    else if (take(draft)) setDraft(null);
  }

  function onKeyDown(event: KeyboardEvent): void {
    if (event.key === 'Enter') enter();
    if (event.key === 'Escape' && draft !== null) {
      event.preventDefault();
      event.stopPropagation();
      drop();
    }
  }

  return { text: draft ?? shown, isOpen: draft !== null, type: setDraft, enter, drop, onKeyDown };
}
