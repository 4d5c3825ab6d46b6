/** One number as it is typed: what is typed stands at once and stays; what is wrong with it is said when the field is left. */
import { useId, useState } from 'react';
import type { Cell, CellName } from '../../state/fitRows.ts';
import type { LengthUnit } from '../../state/view.ts';
import { enteredLength } from '../../words/entry.ts';
import { lengthUnitName, toShown } from '../../words/format.ts';

/** A unit that was typed with the number. */
const HAS_UNIT = /[a-z"'″′”’]\.?\s*$/i;

/** A length typed in the other unit, in the one shown now; anything else as it was typed. */
export function cellText({ text, unit: typed }: Cell, isLength: boolean, unit: LengthUnit): string {
  const isSame = (typed === 'mm') === (unit === 'mm');
  if (!isLength || isSame || text.trim() === '' || HAS_UNIT.test(text)) return text;
  const entered = enteredLength(text, typed);
  return entered.ok ? String(Number(toShown(entered.value, unit).toFixed(4))) : text;
}

export function CellField({
  name,
  label,
  before,
  cell,
  isLength,
  unit,
  empty = '',
  why,
  onType,
}: {
  readonly name: CellName | 'heights';
  /** For readers, with the reading's number. */
  readonly label: string;
  /** Stands before the field. */
  readonly before: string;
  readonly cell: Cell;
  readonly isLength: boolean;
  readonly unit: LengthUnit;
  /** What an empty field stands for. */
  readonly empty?: string;
  readonly why: string | null;
  readonly onType: (cell: Cell) => void;
}) {
  const whyId = useId();
  const [isTyping, setTyping] = useState(false);
  const refusal = isTyping ? null : why;
  return (
    <span className="fit-cell" data-cell={name}>
      <span aria-hidden="true">{before}</span>
      <input
        type="text"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        aria-label={label}
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? undefined : whyId}
        placeholder={empty}
        value={cellText(cell, isLength, unit)}
        onChange={(event) => onType({ text: event.target.value, unit })}
        onFocus={() => setTyping(true)}
        onBlur={() => setTyping(false)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') setTyping(false);
        }}
      />
      <span aria-hidden="true">{isLength ? lengthUnitName(unit) : '°'}</span>
      {refusal !== null && (
        <span id={whyId} role="alert" className="fit-refusal">
          {refusal}
        </span>
      )}
    </span>
  );
}
