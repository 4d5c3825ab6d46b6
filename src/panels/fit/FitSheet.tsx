/** The work sheet of readings: what was read, what the points make of it, and the points fitted to it. */
import './fitSheet.css';
import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { Fit, NoFit } from '../../../solver/fit/fit.ts';
import { fitInputs, statesPlusMinus } from '../../../solver/fit/fitInputs.ts';
import { GRADES, withGrade } from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import { readHeights } from '../../state/fitRows.ts';
import { fits } from '../../state/refitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { angle, gapUnit, length } from '../../words/format.ts';
import { Icon } from '../icons.tsx';
import { editModel } from '../points/edit.ts';
import { AddReadings } from './AddReadings.tsx';
import { AnswerTable } from './AnswerTable.tsx';
import { CellField } from './CellField.tsx';
import { FitButtons } from './FitButtons.tsx';
import { FitChart } from './FitChart.tsx';
import { MoveTable } from './MoveTable.tsx';
import { ReadingRow } from './ReadingRow.tsx';
import { ICONS, STATES, Verdict } from './Verdict.tsx';

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

/** Without a ± no point may move: the grades of common practice are offered, none is taken silently. */
function GradeOffer({ unit }: { readonly unit: LengthUnit }) {
  const model = useStore(documentStore, (state) => state.model);
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
function Heights({ unit }: { readonly unit: LengthUnit }) {
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
function AngleNote() {
  const model = useStore(documentStore, (state) => state.model);
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

const SHORT = {
  agree: 'They agree',
  strained: 'They agree badly',
  disagree: 'Not all can be right',
} as const;

const WHY: Readonly<Record<NoFit['why'], string>> = {
  noReadings: 'None of the readings can be taken on these points.',
  noPlusMinus: 'No point may move: state how well they were measured.',
  stuck:
    'The corner cannot be moved about where it stands: a pose that was read is at its very limit.',
};

function Found({ fit, unit }: { readonly fit: Fit; readonly unit: LengthUnit }) {
  const putBack = useStore(fits, (state) => state.asked?.putBack ?? 0);
  return (
    <>
      <Verdict fit={fit} unit={unit} />
      {putBack > 0 && (
        <p className="fit-note">
          The bench stands on fitted points. This fit starts from the points as they were measured,
          so that no reading counts twice.
        </p>
      )}
      {fit.curves.map((curve) => (
        <FitChart key={curve.quantity} fit={fit} curve={curve} unit={unit} />
      ))}
      <FitButtons fit={fit} />
      <h3>What is known better</h3>
      <AnswerTable fit={fit} unit={unit} />
      <h3>What moved</h3>
      <MoveTable fit={fit} unit={unit} />
    </>
  );
}

function Outcome({ unit }: { readonly unit: LengthUnit }) {
  const { asked, found, isRunning } = useStore(fits);
  return (
    <section id="fit-outcome" className="fit-outcome" aria-label="The fit" aria-busy={isRunning}>
      {found !== null && !found.ok && <p role="status">{WHY[found.why]}</p>}
      {found?.ok === true && asked !== null && <Found fit={found} unit={unit} />}
    </section>
  );
}

/** How the fit stands, in sight while readings are typed, and the way down to it. */
function Bar() {
  const { rows, asked, found, isRunning, progress } = useStore(fits);
  const outcome = found?.ok === true ? found.verdict : null;
  if (rows.length === 0) return null;
  const count = asked?.readings.length ?? 0;
  const words =
    outcome !== null
      ? `${SHORT[outcome]}: ${count} ${count === 1 ? 'reading' : 'readings'}`
      : found === null
        ? 'Nothing to fit to yet'
        : 'Not fitted';
  return (
    <div className="fit-bar" data-state={outcome === null ? undefined : STATES[outcome]}>
      <span role="status">
        {outcome !== null && <Icon name={ICONS[outcome]} />}
        {isRunning && found === null ? 'Fitting…' : words}
      </span>
      {isRunning && <progress value={progress} max={1} aria-label="Progress of the fit" />}
      {outcome !== null && (
        <button
          type="button"
          className="fit-more"
          onClick={() => document.getElementById('fit-outcome')?.scrollIntoView()}
        >
          Show the fit
        </button>
      )}
    </div>
  );
}

export default function FitSheet() {
  const unit = useStore(view, (state) => state.unit);
  useEffect(() => fits.watch(), []);
  return (
    <div className="fit">
      <Bar />
      <GradeOffer unit={unit} />
      <Rows unit={unit} />
      <AddReadings unit={unit} />
      <Heights unit={unit} />
      <AngleNote />
      <Outcome unit={unit} />
      <p className="fit-note">
        Every ± is one standard uncertainty: two readings in three lie within it. Readings, heights
        and points are taken as independent of each other. Toe is this wheel’s alone, half of what
        both read together. Rigid parts: play and bushes are not in it. Before cutting or setting
        anything by fitted points, measure those that moved most again.
      </p>
    </div>
  );
}
