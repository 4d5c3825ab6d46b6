/** Measure again: which inputs spoil a chosen answer, and what its ± becomes when the worst are measured better. */
import { useState } from 'react';
import { useStore } from 'zustand';
import {
  type Knowledge,
  type KnownKey,
  measureAgain,
  type Spoiler,
  USUAL_BETTER,
} from '../../../solver/index.ts';
import { view } from '../../state/bench.ts';
import { spreads } from '../../state/trusted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { type FigureStyle, figureStyle } from '../../words/figures.ts';
import { fixed, gapUnit, length } from '../../words/format.ts';
import { spreadWords } from '../../words/known.ts';
import { LengthField } from '../LengthField.tsx';
import { answerRow, answerRows } from './answers.ts';

/** Rows that are shown; the rest are counted together. */
const MOST = 8;
const COUNTED = ['first', 'first two', 'first three'] as const;

function percent(share: number): string {
  return share < 0.005 ? 'under 1 %' : `${fixed(100 * share, 0)} %`;
}

function SpoilerRow({
  spoiler,
  plain,
}: {
  readonly spoiler: Spoiler;
  readonly plain: FigureStyle;
}) {
  const { input, share, effect } = spoiler;
  const light = (isLit: boolean): void => {
    if (input.component !== null) view.light(isLit ? `point:${input.path}` : null);
  };
  return (
    <li
      data-input={input.key}
      onPointerEnter={(event) => event.pointerType === 'mouse' && light(true)}
      onPointerLeave={(event) => event.pointerType === 'mouse' && light(false)}
    >
      <button
        type="button"
        className="trust-spoiler"
        title="Show the point in the picture"
        onFocus={() => light(true)}
        onBlur={() => light(false)}
        onClick={() => light(true)}
      >
        {input.label}
      </button>
      <span className="trust-bar" aria-hidden="true">
        <i style={{ width: `${100 * share}%` }} />
      </span>
      <span>
        {percent(share)} <small>alone {spreadWords(plain, effect)}</small>
      </span>
    </li>
  );
}

function Ranked({
  known,
  chosen,
  better,
  unit,
}: {
  readonly known: Knowledge;
  readonly chosen: KnownKey;
  readonly better: number;
  readonly unit: LengthUnit;
}) {
  const answer = known.answers?.[chosen];
  if (answer === undefined) return <p>It does not exist in the set pose.</p>;
  const plain = figureStyle(answerRow(chosen).kind, gapUnit(unit));
  if (Number.isNaN(answer.uncertainty)) {
    return <p>It stands at exactly 0 there, where no straight line holds: draw corners instead.</p>;
  }
  const { spoilers, steps } = measureAgain(known, answer, better);
  if (spoilers.length === 0) {
    return <p>Nothing that states a ± goes into it: it is as exact as what was typed in.</p>;
  }
  const rest = spoilers.slice(MOST);
  const restShare = rest.reduce((sum, { share }) => sum + share, 0);
  return (
    <>
      <ol className="trust-spoilers">
        {spoilers.slice(0, MOST).map((spoiler) => (
          <SpoilerRow key={spoiler.input.key} spoiler={spoiler} plain={plain} />
        ))}
      </ol>
      {rest.length > 0 && (
        <p className="trust-note">
          {rest.length} more, together {percent(restShare)}.
        </p>
      )}
      <table className="trust-steps">
        <tbody>
          {steps.map((uncertainty, i) => (
            <tr key={COUNTED[i - 1] ?? 'now'} data-step={i}>
              <th scope="row">{i === 0 ? 'As it is' : `The ${COUNTED[i - 1]} measured again`}</th>
              <td>{spreadWords(plain, uncertainty)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

export function MeasureAgain() {
  const known = useStore(spreads, (state) => state.set);
  const unit = useStore(view, (state) => state.unit);
  const [chosen, setChosen] = useState<KnownKey>('bumpSteer');
  const [better, setBetter] = useState(USUAL_BETTER);
  return (
    <section className="trust-again" aria-labelledby="trust-again">
      <h3 id="trust-again">What to measure again</h3>
      <div className="trust-asked">
        <label>
          Answer that matters{' '}
          <select value={chosen} onChange={(event) => setChosen(event.target.value as KnownKey)}>
            {answerRows(known).map(({ key, label }) => (
              <option key={key} value={key}>
                {label}
              </option>
            ))}
          </select>
        </label>
        <LengthField label="Measured again to ±" value={better} unit={unit} onTake={setBetter} />
      </div>
      {known !== null && <Ranked {...{ known, chosen, better, unit }} />}
      <p className="trust-note">
        Shares of the answer’s variance at the set pose. Lengths are taken as measured again to ±
        {length(better, gapUnit(unit), 2)}, angles to ±0.05°, other numbers to half their ±.
      </p>
    </section>
  );
}
