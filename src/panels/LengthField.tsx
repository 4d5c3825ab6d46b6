/** A length to type into a sheet: above 0, or at least 0, in the unit shown; what is refused stays as it was typed. */
import './lengthField.css';
import { useId, useState } from 'react';
import type { LengthUnit } from '../state/view.ts';
import { enteredLength } from '../words/entry.ts';
import { lengthUnitName, toShown } from '../words/format.ts';
import { useDraft } from './points/useDraft.ts';

export function LengthField({
  label,
  value,
  unit,
  mayBeNone = false,
  onTake,
}: {
  readonly label: string;
  /** mm. */
  readonly value: number;
  readonly unit: LengthUnit;
  /** Whether 0 is a length here. */
  readonly mayBeNone?: boolean;
  readonly onTake: (mm: number) => void;
}) {
  const [refusal, setRefusal] = useState<string | null>(null);
  const id = useId();
  function take(text: string): boolean {
    const entered = enteredLength(text, unit);
    const tooSmall = mayBeNone
      ? `“${text.trim()}” is below 0: write 0 or more.`
      : `“${text.trim()}” is not above 0: write more than 0.`;
    const isEnough = (mm: number): boolean => (mayBeNone ? mm >= 0 : mm > 0);
    const why = !entered.ok ? entered.why : isEnough(entered.value) ? null : tooSmall;
    setRefusal(why);
    if (why !== null || !entered.ok) return false;
    onTake(entered.value);
    return true;
  }
  const draft = useDraft(String(Number(toShown(value, unit).toFixed(3))), take, () =>
    setRefusal(null),
  );
  return (
    <span className="length-field">
      <label htmlFor={`${id}field`}>{label}</label>
      <input
        id={`${id}field`}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? undefined : id}
        data-draft={draft.isOpen || undefined}
        value={draft.text}
        onChange={(event) => draft.type(event.target.value)}
        onBlur={draft.enter}
        onKeyDown={draft.onKeyDown}
      />
      <span aria-hidden="true">{lengthUnitName(unit)}</span>
      {refusal !== null && (
        <span id={id} role="alert" className="length-field-refusal">
          {refusal}
        </span>
      )}
    </span>
  );
}
