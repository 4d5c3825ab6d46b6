/** How far behind the hub face the bearing's middle lies: typed once for all columns. */
import { useStore } from 'zustand';
import { fitment } from '../../state/fitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { enteredLength } from '../../words/entry.ts';
import { lengthUnitName, toShown } from '../../words/format.ts';
import { useEntry } from '../points/useEntry.ts';

/** A bearing farther from its face than this, mm, is none of a wheel hub. */
const FARTHEST = 300;

export function BearingEntry({ unit }: { unit: LengthUnit }) {
  const bearing = useStore(fitment, (state) => state.bearing);
  const shown = String(Number(toShown(bearing, unit).toFixed(3)));
  const { input, refusal, refusalId } = useEntry(shown, (text) => {
    const entered = enteredLength(text, unit);
    if (!entered.ok) return entered.why;
    if (Math.abs(entered.value) > FARTHEST)
      return `A hub’s bearing is not ${FARTHEST} mm from its face.`;
    fitment.setState({ bearing: entered.value });
    return null;
  });
  return (
    <>
      <span className="fitment-field">
        <input {...input} aria-label="Bearing’s middle behind the hub face" />
        <span aria-hidden="true">{lengthUnitName(unit)}</span>
      </span>
      {refusal !== null && (
        <p id={refusalId} className="fitment-refusal" role="alert">
          {refusal}
        </p>
      )}
    </>
  );
}
