/** A short text to type into: it stays as typed until it is taken, and what is refused is said under it. */
import { useId } from 'react';
import { useEntry } from '../points/useEntry.ts';

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
  const { input, refusal, refusalId } = useEntry(shown, take);
  return (
    <div className="align-entry" title={hint}>
      {label !== '' && <label htmlFor={id}>{label}</label>}
      <span className="align-entry-box">
        <input
          {...input}
          id={id}
          inputMode="text"
          spellCheck={false}
          placeholder={placeholder}
          aria-label={name}
        />
        {unit !== undefined && <span aria-hidden="true">{unit}</span>}
      </span>
      {refusal !== null && (
        <span id={refusalId} role="alert" className="align-refusal">
          {refusal}
        </span>
      )}
    </div>
  );
}
