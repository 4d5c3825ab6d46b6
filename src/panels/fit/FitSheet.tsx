/** The work sheet of readings: what was read, what the points make of it, and the points fitted to it. */
import './fitSheet.css';
import './readingRow.css';
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { view } from '../../state/bench.ts';
import { fits } from '../../state/refitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { AddReadings } from './AddReadings.tsx';
import { AngleNote, GradeOffer, Heights } from './Allowed.tsx';
import { FitBar } from './FitBar.tsx';
import { FitOutcome } from './FitOutcome.tsx';
import { ReadingRow } from './ReadingRow.tsx';

function Rows({ unit }: { readonly unit: LengthUnit }) {
  const rows = useStore(fits, (state) => state.rows);
  if (rows.length === 0) {
    return (
      <p>
        Type what was read off the vehicle, one reading or thirty, each with its ±. The points are
        moved as little as their own ± allow until they say the same.
      </p>
    );
  }
  return (
    <ol className="fit-rows">
      {rows.map((row, index) => (
        <ReadingRow key={row.id} row={row} number={index + 1} unit={unit} />
      ))}
    </ol>
  );
}

export default function FitSheet() {
  const unit = useStore(view, (state) => state.unit);
  useEffect(() => fits.watch(), []);
  return (
    <div className="fit">
      <FitBar />
      <GradeOffer unit={unit} />
      <Rows unit={unit} />
      <AddReadings unit={unit} />
      <Heights unit={unit} />
      <AngleNote />
      <FitOutcome unit={unit} />
      <p className="fit-note">
        Every ± is one standard uncertainty: two readings in three lie within it. Readings, heights
        and points are taken as independent of each other. Toe is this wheel’s alone, half of what
        both read together. Rigid parts: play and bushes are not in it. Before cutting or setting
        anything by fitted points, measure those that moved most again.
      </p>
    </div>
  );
}
