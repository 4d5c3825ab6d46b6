/** A number to type: it stays as typed until it is taken, and what is refused is said under it. */
import { useId, useState } from 'react';
import { useDraft } from '../points/useDraft.ts';

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
    <div className="where-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        aria-label={name}
        aria-invalid={refusal !== null || undefined}
        aria-describedby={refusal === null ? undefined : `${id}why`}
        value={draft.text}
        onChange={(event) => draft.type(event.target.value)}
        onBlur={draft.enter}
        onKeyDown={draft.onKeyDown}
      />
      <span aria-hidden="true">{unit}</span>
      {refusal === null ? (
        says !== undefined && <small>{says}</small>
      ) : (
        <span id={`${id}why`} role="alert">
          {refusal}
        </span>
      )}
    </div>
  );
}
