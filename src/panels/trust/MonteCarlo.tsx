/** The check by drawing: corners at random within the ± of what was measured, beside what the straight line says. */
import { useStore } from 'zustand';
import {
  type DrawnAnswer,
  type KnownKey,
  type MonteCarlo,
  USUAL_DRAWS,
} from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import { sameModel } from '../../state/document.ts';
import { monteCarlo } from '../../state/drawn.ts';
import { answerRow } from './answers.ts';
import { DrawnRow } from './DrawnRow.tsx';

/** Answers that people build on come first; the others wait behind a button. */
const FIRST: readonly KnownKey[] = [
  'bumpSteer',
  'toeToBump',
  'toeToDroop',
  'caster',
  'kingpinInclination',
  'scrubRadius',
  'casterTrail',
  'bumpCamber',
  'rollCentreHeight',
];

function Running() {
  const progress = useStore(monteCarlo, (state) => state.progress);
  return (
    <div className="trust-progress">
      <progress value={progress} max={1} aria-label="Progress of the drawing" />
      <button type="button" className="bar-button" onClick={monteCarlo.cancel}>
        Stop
      </button>
    </div>
  );
}

function Table({ answers }: { readonly answers: readonly DrawnAnswer[] }) {
  const unit = useStore(view, (state) => state.unit);
  return (
    <table className="trust-drawn">
      <thead>
        <tr>
          <th scope="col">Answer; 95 of 100 drawn lie</th>
          <th scope="col">By the law</th>
          <th scope="col">How it spreads</th>
        </tr>
      </thead>
      <tbody>
        {answers.map((answer) => (
          <DrawnRow key={answer.key} answer={answer} unit={unit} />
        ))}
      </tbody>
    </table>
  );
}

/** "All 35 answers agree" or which do not. */
function Verdict({ found }: { readonly found: MonteCarlo }) {
  const { draws, unbuilt, answers } = found;
  const moved = answers.filter(({ linear }) => linear.uncertainty !== 0);
  const bad = moved.filter(({ isLinearGood }) => !isLinearGood);
  const named = bad.map(({ key }) => answerRow(key).label).join('; ');
  return (
    <p role="status">
      {draws.toLocaleString('en')} corners drawn
      {unbuilt > 0 && `, ${unbuilt} of them cannot be built or do not reach the set pose`}.{' '}
      {bad.length === 0
        ? `The law of propagation agrees for all ${moved.length} answers.`
        : `The law of propagation differs for ${bad.length} of ${moved.length} answers: ${named}. There, trust what was drawn.`}
    </p>
  );
}

function Found({ found }: { readonly found: MonteCarlo | null }) {
  if (found === null) return <p>The set pose cannot be reached: nothing can be drawn.</p>;
  if (found.isExact) return <p>Nothing states a ±: every corner drawn would be the same.</p>;
  const moved = found.answers.filter(({ linear }) => linear.uncertainty !== 0);
  const first = FIRST.flatMap((key) => moved.filter((answer) => answer.key === key));
  const rest = moved.filter(({ key }) => !FIRST.includes(key));
  return (
    <>
      <Verdict found={found} />
      <Table answers={first} />
      {rest.length > 0 && (
        <details className="trust-details">
          <summary>The other {rest.length} answers</summary>
          <Table answers={rest} />
        </details>
      )}
    </>
  );
}

export function MonteCarloCheck() {
  const { stage, found, model } = useStore(monteCarlo);
  const isOld = useStore(
    documentStore,
    (state) => stage === 'done' && !sameModel(model, state.mark ?? state.model),
  );
  return (
    <section className="trust-check" aria-labelledby="trust-check">
      <h3 id="trust-check">Check it by drawing corners at random</h3>
      {stage === 'running' ? (
        <Running />
      ) : (
        <button type="button" className="bar-button" onClick={monteCarlo.run}>
          Draw {USUAL_DRAWS.toLocaleString('en')} corners
        </button>
      )}
      {isOld && <p className="trust-note">The design has changed since: draw again.</p>}
      {stage === 'done' && <Found found={found} />}
      <p className="trust-note">
        Each corner is drawn with every input normal about what the file states, and solved whole:
        no straight line is assumed (JCGM 101:2008). The law agrees where both ends of its 95 % lie
        within half of the last digit of its ±.
      </p>
    </section>
  );
}
