/** What a fit found: whether all of it can be right, the curves, what is known better, what moved. */
import './fitOutcome.css';
import { useStore } from 'zustand';
import type { Fit, NoFit } from '../../../solver/fit/fit.ts';
import { fits } from '../../state/refitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { AnswerTable } from './AnswerTable.tsx';
import { FitButtons } from './FitButtons.tsx';
import { FitChart } from './FitChart.tsx';
import { MoveTable } from './MoveTable.tsx';
import { Verdict } from './Verdict.tsx';

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
          so that no reading counts twice. The model goes on stating how well each point was
          measured by itself: what is known better by all readings together is told here alone.
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

export function FitOutcome({ unit }: { readonly unit: LengthUnit }) {
  const asked = useStore(fits, (state) => state.asked);
  const found = useStore(fits, (state) => state.found);
  const isRunning = useStore(fits, (state) => state.isRunning);
  return (
    <section id="fit-outcome" className="fit-outcome" aria-label="The fit" aria-busy={isRunning}>
      {found !== null && !found.ok && <p role="status">{WHY[found.why]}</p>}
      {found?.ok === true && asked !== null && <Found fit={found} unit={unit} />}
    </section>
  );
}
