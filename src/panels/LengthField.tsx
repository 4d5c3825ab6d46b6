/** A length to type into a sheet: above 0, or at least 0, in the unit shown; what is refused stays as it was typed. */
import './lengthField.css';
import { useId } from 'react';
import type { LengthUnit } from '../state/view.ts';
import { enteredLength } from '../words/entry.ts';
import { lengthUnitName, toShown } from '../words/format.ts';
import { useEntry } from './points/useEntry.ts';

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
  const id = useId();
  function take(text: string): string | null {
    const entered = enteredLength(text, unit);
    const tooSmall = mayBeNone
      ? `“${text.trim()}” is below 0: write 0 or more.`
      : `“${text.trim()}” is not above 0: write more than 0.`;
    const isEnough = (mm: number): boolean => (mayBeNone ? mm >= 0 : mm > 0);
    if (!entered.ok) return entered.why;
    if (!isEnough(entered.value)) return tooSmall;
    onTake(entered.value);
    return null;
  }
  const shown = String(Number(toShown(value, unit).toFixed(3)));
  const { input, refusal, refusalId } = useEntry(shown, take);
  return (
    <span className="length-field">
      <label htmlFor={id}>{label}</label>
      <input {...input} id={id} inputMode="decimal" />
      <span aria-hidden="true">{lengthUnitName(unit)}</span>
      {refusal !== null && (
        <span id={refusalId} role="alert" className="length-field-refusal">
          {refusal}
        </span>
      )}
    </span>
  );
}
