/** One number of the lists: what is typed stays, in this visit and the next, until it is taken or given up. */
import { useId } from 'react';
import { useStore } from 'zustand';
import { improvePlan } from '../../state/improved.ts';
import type { Quantity } from '../../words/quantity.ts';

export function PlanField({
  name,
  label,
  value,
  quantity,
  isPositive = false,
  onTake,
}: {
  /** The row's id and the field's name: "3.from". */
  readonly name: string;
  readonly label: string;
  readonly value: number;
  readonly quantity: Quantity;
  readonly isPositive?: boolean;
  readonly onTake: (value: number) => void;
}) {
  const id = useId();
  const draft = useStore(improvePlan, (state) => state.drafts[name]);
  const message = draft?.message ?? null;
  const shown = quantity.text(value);

  function refusalOf(text: string): string | null {
    const entered = quantity.entered(text);
    if (!entered.ok) return entered.why;
    if (isPositive && entered.value <= 0) return `Found ${text.trim()}, wanted a number above 0.`;
    improvePlan.draft(name, null);
    onTake(entered.value);
    return null;
  }

  function enter(): void {
    if (draft === undefined) return;
    const { text } = draft;
    const why = text.trim() === shown ? null : refusalOf(text);
    improvePlan.draft(name, why === null ? null : { text, message: why });
  }

  return (
    <span className="plan-field">
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        aria-label={quantity.unitName === '' ? label : `${label}, ${quantity.unitName}`}
        aria-invalid={message !== null || undefined}
        aria-describedby={message === null ? undefined : id}
        value={draft?.text ?? shown}
        onChange={(event) => improvePlan.draft(name, { text: event.target.value, message: null })}
        onBlur={enter}
        onKeyDown={(event) => {
          if (event.key === 'Enter') enter();
          if (event.key !== 'Escape' || draft === undefined) return;
          // Gives up what was typed, and leaves the sheet open.
          event.preventDefault();
          event.stopPropagation();
          improvePlan.draft(name, null);
        }}
      />
      {quantity.unitName !== '' && <span aria-hidden="true">{quantity.unitName}</span>}
      {message !== null && (
        <span id={id} role="alert" className="plan-refusal">
          {message}
        </span>
      )}
    </span>
  );
}
