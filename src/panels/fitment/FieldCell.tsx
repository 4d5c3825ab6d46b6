/** One field of a candidate: what was typed stays until it is taken, and a refusal stands under it with a way on. */
import { useId } from 'react';
import { backspacingOf, offsetOf } from '../../../solver/fitment/candidate.ts';
import type { Field, FieldDraft, Slot } from '../../state/fitment.ts';
import { fitment } from '../../state/fitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { lengthNumber } from '../../words/format.ts';
import type { Column } from './columns.ts';
import type { FieldSpec } from './fields.ts';
import { enterField, takeReading } from './take.ts';

function Refusal({ id, slot, draft }: { id: string; slot: Slot; draft: FieldDraft }) {
  const { nearest } = draft;
  return (
    <div id={id} className="fitment-refusal" role="alert">
      <p>{draft.message}</p>
      {nearest !== undefined && (
        <button type="button" onClick={() => takeReading(slot.name, nearest, false)}>
          Take {nearest}
        </button>
      )}
      {draft.asWritten === true && (
        <button type="button" onClick={() => takeReading(slot.name, draft.text, true)}>
          Use it as written
        </button>
      )}
    </div>
  );
}

/** The field of the sheet that a refusal of the whole candidate belongs under. */
function refusalOf({ refusal, candidate }: Column, field: Field): string | null {
  if (refusal === null) return null;
  const at = refusal.field === 'mounting' ? candidate.mounting.by : refusal.field;
  return at === field ? refusal.message : null;
}

/** In sixteenths the nearest one stands under the exact decimal. */
function fractionOf({ candidate }: Column, field: Field, unit: LengthUnit): string | null {
  if (unit !== 'sixteenth') return null;
  const lengths: Partial<Record<Field, number>> = {
    offset: offsetOf(candidate),
    backspacing: backspacingOf(candidate),
    spacer: candidate.spacer,
  };
  const mm = lengths[field];
  return mm === undefined || mm === 0 ? null : `≈ ${lengthNumber(mm, unit)} in`;
}

/** Says of offset and backspacing which was stated and which follows. */
function followWords({ candidate }: Column, field: Field): string | null {
  if (field !== 'offset' && field !== 'backspacing') return null;
  return candidate.mounting.by === field ? null : `follows the ${candidate.mounting.by}`;
}

export function FieldCell({
  column,
  slot,
  spec,
  unit,
}: {
  column: Column;
  slot: Slot;
  spec: FieldSpec;
  unit: LengthUnit;
}) {
  const id = useId();
  const { field } = spec;
  const draft = slot.drafts[field];
  const standing = refusalOf(column, field);
  const refused: FieldDraft | null =
    draft?.message != null ? draft : standing === null ? null : { text: '', message: standing };
  const type = (text: string): void => fitment.draft(slot.name, field, { text, message: null });
  const below = [fractionOf(column, field, unit), followWords(column, field)].filter(Boolean);
  return (
    <>
      <span className="fitment-field">
        <input
          type="text"
          autoComplete="off"
          spellCheck={false}
          aria-label={`${column.title}: ${spec.label}`}
          aria-invalid={refused !== null}
          aria-describedby={refused === null ? undefined : id}
          data-draft={draft !== undefined || undefined}
          value={draft?.text ?? spec.shown(slot.candidate, unit)}
          onChange={(event) => type(event.target.value)}
          onBlur={() => enterField(slot.name, spec, unit)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') enterField(slot.name, spec, unit);
            if (event.key !== 'Escape' || draft === undefined) return;
            // Gives up what was typed, and leaves the sheet open.
            event.preventDefault();
            event.stopPropagation();
            fitment.draft(slot.name, field, null);
          }}
        />
        <span aria-hidden="true">{spec.unitName(unit)}</span>
      </span>
      {below.length > 0 && <small>{below.join(', ')}</small>}
      {refused !== null && <Refusal id={id} slot={slot} draft={refused} />}
    </>
  );
}
