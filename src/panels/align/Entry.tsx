/** A short text to type into: it stays as typed until it is taken, and what is refused is said under it. */
import { useId, useState } from 'react';
import { useDraft } from '../points/useDraft.ts';

export interface EntryProps {
  readonly label: string;
  /** Name for readers where the label alone does not say it. */
  readonly name?: string;
  /** The present value as text. */
  readonly shown: string;
  readonly unit?: string;
  readonly placeholder?: string;
  readonly hint?: string;
  /** Takes the text; answers null, or why not. */
  readonly take: (text: string) => string | null;
}

export function Entry({ label, name, shown, unit, placeholder, hint, take }: EntryProps) {
  const id = useId();
  const [refusal, setRefusal] = useState<string | null>(null);
  const draft = useDraft(
    shown,
    (text) => {
      const why = take(text);
      setRefusal(why);
      return why === null;
    },
    () => setRefusal(null),
  );
  return (
    <div className="align-entry" title={hint}>
      {label !== '' && <label htmlFor={id}>{label}</label>}
      <span className="align-entry-box">
        <input
          id={id}
          type="text"
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          placeholder={placeholder}
          aria-label={name}
          aria-invalid={refusal !== null || undefined}
          aria-describedby={refusal === null ? undefined : `${id}why`}
          value={draft.text}
          onChange={(event) => draft.type(event.target.value)}
          onBlur={draft.enter}
          onKeyDown={draft.onKeyDown}
        />
        {unit !== undefined && <span aria-hidden="true">{unit}</span>}
      </span>
      {refusal !== null && (
        <span id={`${id}why`} role="alert" className="align-refusal">
          {refusal}
        </span>
      )}
    </div>
  );
}
