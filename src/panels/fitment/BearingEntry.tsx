/** How far behind the hub face the bearing's middle lies: typed once for all columns. */
import { useState } from 'react';
import { useStore } from 'zustand';
import { fitment } from '../../state/fitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { enteredLength } from '../../words/entry.ts';
import { lengthUnitName, toShown } from '../../words/format.ts';
import { useDraft } from '../points/useDraft.ts';

/** A bearing farther from its face than this, mm, is none of a wheel hub. */
const FARTHEST = 300;

export function BearingEntry({ unit }: { unit: LengthUnit }) {
  const bearing = useStore(fitment, (state) => state.bearing);
  const [message, setMessage] = useState<string | null>(null);
  const draft = useDraft(
    String(Number(toShown(bearing, unit).toFixed(3))),
    (text) => {
      const entered = enteredLength(text, unit);
      const why = !entered.ok
        ? entered.why
        : Math.abs(entered.value) > FARTHEST
          ? `A hub’s bearing is not ${FARTHEST} mm from its face.`
          : null;
      setMessage(why);
      if (!entered.ok || why !== null) return false;
      fitment.setState({ bearing: entered.value });
      return true;
    },
    () => setMessage(null),
  );
  return (
    <>
      <span className="fitment-field">
        <input
          type="text"
          autoComplete="off"
          aria-label="Bearing’s middle behind the hub face"
          aria-invalid={message !== null}
          aria-describedby={message === null ? undefined : 'bearing-refusal'}
          data-draft={draft.isOpen || undefined}
          value={draft.text}
          onChange={(event) => draft.type(event.target.value)}
          onKeyDown={draft.onKeyDown}
          onBlur={draft.enter}
        />
        <span aria-hidden="true">{lengthUnitName(unit)}</span>
      </span>
      {message !== null && (
        <p id="bearing-refusal" className="fitment-refusal" role="alert">
          {message}
        </p>
      )}
    </>
  );
}
