/** A number to type: it stays as typed until it is taken, and what is refused is said under it. */
import { useId } from 'react';
import { useEntry } from '../points/useEntry.ts';

interface Props {
  readonly label: string;
  /** Name for readers where the label alone does not say it. */
  readonly name?: string;
  /** The present value as text. */
  readonly shown: string;
  readonly unit: string;
  /** What the value means in plain words. */
  readonly says?: string;
  /** Takes the text; answers null, or why not. */
  readonly take: (text: string) => string | null;
}

export function FigureField({ label, name, shown, unit, says, take }: Props) {
  const id = useId();
  const { input, refusal, refusalId } = useEntry(shown, take);
  return (
    <div className="where-field">
      <label htmlFor={id}>{label}</label>
      <input {...input} id={id} inputMode="text" spellCheck={false} aria-label={name} />
      <span aria-hidden="true">{unit}</span>
      {refusal === null ? (
        says !== undefined && <small>{says}</small>
      ) : (
        <span id={refusalId} role="alert">
          {refusal}
        </span>
      )}
    </div>
  );
}
