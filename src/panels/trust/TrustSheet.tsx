/** The work sheet of trust: what the numbers are good for, the ± of what was measured, and what to measure again. */
import './trustSheet.css';
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { GRADES, inputSigma, inputsOf, withGrade } from '../../../solver/index.ts';
import { view } from '../../state/bench.ts';
import { plusMinus, spreads } from '../../state/trusted.ts';
import { gapUnit } from '../../words/format.ts';
import { editModel } from '../points/edit.ts';
import { useSettledModel } from '../useSettledModel.ts';
import { GRADE_WORDS, gradeWorth } from './GradeChoice.tsx';
import { KnownSentences } from './KnownSentences.tsx';
import { MeasureAgain } from './MeasureAgain.tsx';
import { MonteCarloCheck } from './MonteCarlo.tsx';
import { DefaultRow, PlusMinusTable } from './PlusMinusTable.tsx';

function ShowSwitch() {
  const isShown = useStore(plusMinus, (state) => state.isShown);
  return (
    <label className="trust-switch">
      <input
        type="checkbox"
        checked={isShown}
        onChange={(event) => plusMinus.show(event.target.checked)}
      />
      Readings and curves show their ±, and no digits beyond it
    </label>
  );
}

/** Offers the grades where the model says nothing of its coordinates, and where it leaves out its hub's angles. */
function Offer() {
  const model = useSettledModel();
  const unit = useStore(view, (state) => gapUnit(state.unit));
  const measured = inputsOf(model).filter(({ isMeasured }) => isMeasured);
  const unstated = measured.filter((input) => inputSigma(model, input) === null);
  const points = unstated.filter(({ component }) => component !== null).length;
  const angles = unstated.filter(({ unit: of }) => of === 'degree').length;
  if (points + angles === 0) return null;
  const what = points === 0 ? 'its design camber and toe' : 'its points';
  return (
    <div className="trust-offer">
      <p>
        The model does not state how well {what} {points === 0 ? 'are' : 'were'} known: taken as
        exact. State it as measured by
      </p>
      <div className="trust-buttons">
        {GRADES.map((grade) => (
          <button
            key={grade.name}
            type="button"
            className="bar-button"
            title={grade.label}
            onClick={() => editModel((now) => withGrade(now, grade))}
          >
            {GRADE_WORDS[grade.name]}, ±{gradeWorth(grade, points === 0 ? 'degree' : 'mm', unit)}
          </button>
        ))}
      </div>
      <p className="trust-note">Common practice, no source; each can be typed below instead.</p>
    </div>
  );
}

export default function TrustSheet() {
  useEffect(() => spreads.watch('set'), []);
  return (
    <div className="trust">
      <KnownSentences />
      <ShowSwitch />
      <section aria-labelledby="trust-measured">
        <h3 id="trust-measured">How well was it measured?</h3>
        <Offer />
        <DefaultRow />
        <details className="trust-details">
          <summary>Points and numbers one by one</summary>
          <PlusMinusTable />
        </details>
      </section>
      <MeasureAgain />
      <MonteCarloCheck />
      <p className="trust-note">
        Inputs are taken as independent of each other, and combined by the law of propagation (JCGM
        100:2008, 5.1); what states no ± is taken as exact. Play in joints, bushes and a frame that
        is not level are not in it: cut metal by what is measured on the part.
      </p>
    </div>
  );
}
