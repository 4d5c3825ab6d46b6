/** What a fit may move, and by how much: how well points, angles and heights are known. */
import { useStore } from 'zustand';
import { fitInputs, statesPlusMinus } from '../../../solver/fit/fitInputs.ts';
import { GRADES, withGrade } from '../../../solver/index.ts';
import { readHeights } from '../../state/fitRows.ts';
import { fits } from '../../state/refitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { angle, gapUnit, length } from '../../words/format.ts';
import { editModel } from '../points/edit.ts';
import { useSettledModel } from '../useSettledModel.ts';
import { CellField } from './CellField.tsx';

/** Without a ± no point may move: the grades of common practice are offered, none is taken silently. */
export function GradeOffer({ unit }: { readonly unit: LengthUnit }) {
  const model = useSettledModel();
  if (statesPlusMinus(model)) return null;
  return (
    <div className="fit-offer">
      <p>The model does not say how well its points were measured, so none may move. State it:</p>
      <div className="fit-buttons">
        {GRADES.map((grade) => (
          <button
            key={grade.name}
            type="button"
            className="bar-button"
            onClick={() => editModel((now) => withGrade(now, grade))}
          >
            ±{length(grade.mm, gapUnit(unit), 2)}, {grade.label}
          </button>
        ))}
      </div>
      <p className="fit-note">
        Common practice, no source. The Trust sheet states it point by point.
      </p>
    </div>
  );
}

/** How well the heights of all readings are known: part of every reading that changes with height. */
export function Heights({ unit }: { readonly unit: LengthUnit }) {
  const cell = useStore(fits, (state) => state.heights);
  const known = readHeights(cell);
  return (
    <div className="fit-heights">
      <CellField
        name="heights"
        label="How well heights are known"
        before="Heights are known to ±"
        cell={cell}
        isLength
        unit={unit}
        empty="0"
        why={known.ok ? null : `${known.why} Until then heights are taken as exact.`}
        onType={fits.setHeights}
      />
      <span className="fit-note">added to every reading that changes with height</span>
    </div>
  );
}

/** The design pose's camber and toe may move too: what for a ± is used, where the model states none. */
export function AngleNote() {
  const model = useSettledModel();
  const notes = fitInputs(model).flatMap(({ input, source, plusMinus }) => {
    if (source === 'stated') return [];
    const name = input.key === 'hub.camber' ? 'camber' : 'toe';
    const because =
      source === 'open'
        ? 'left out of the file, so unknown'
        : 'no ± stated, so taken as the tape grade';
    return [`${name} ±${angle(plusMinus)} (${because})`];
  });
  if (notes.length === 0) return null;
  return (
    <p className="fit-note">
      The design pose’s own angles may move with the points: {notes.join('; ')}. Common practice, no
      source.
    </p>
  );
}
