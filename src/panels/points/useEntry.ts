/** A text to type into with what is wrong with it: what every field that is taken when it is left has in common. */
import { type ChangeEvent, type KeyboardEvent, useId, useState } from 'react';
import { useDraft } from './useDraft.ts';

export interface EntryField {
  /** Why what was typed was not taken; null where nothing is wrong. */
  readonly refusal: string | null;
  /** Of the element that says so. */
  readonly refusalId: string;
  /** For the input itself. */
  readonly input: {
    readonly type: 'text';
    readonly autoComplete: 'off';
    readonly 'aria-invalid': true | undefined;
    readonly 'aria-describedby': string | undefined;
    readonly 'data-draft': true | undefined;
    readonly value: string;
    readonly onChange: (event: ChangeEvent<HTMLInputElement>) => void;
    readonly onBlur: () => void;
    readonly onKeyDown: (event: KeyboardEvent) => void;
  };
}

/** `shown` is the present value as text; `take` takes the typed text and answers null, or answers why not. */
export function useEntry(shown: string, take: (text: string) => string | null): EntryField {
  const [refusal, setRefusal] = useState<string | null>(null);
  const refusalId = useId();
  const draft = useDraft(
    shown,
    (text) => {
      const why = take(text);
      setRefusal(why);
      return why === null;
    },
    () => setRefusal(null),
  );
  return {
    refusal,
    refusalId,
    input: {
      type: 'text',
      autoComplete: 'off',
      'aria-invalid': refusal !== null || undefined,
      'aria-describedby': refusal === null ? undefined : refusalId,
      'data-draft': draft.isOpen || undefined,
      value: draft.text,
      onChange: (event) => draft.type(event.target.value),
      onBlur: draft.enter,
      onKeyDown: draft.onKeyDown,
    },
  };
}
