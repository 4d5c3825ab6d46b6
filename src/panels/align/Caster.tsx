/** A caster sweep as done with turn plates: what a gauge would read by each formula, beside the true caster, and why they differ. */
import './caster.css';
import { useDeferredValue, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import {
  type CasterSweep,
  casterReasons,
  casterSweep,
  type SteerEnd,
} from '../../../solver/index.ts';
import { documentStore } from '../../state/bench.ts';
import { enteredNumber } from '../../words/entry.ts';
import { angle, fixed, signed } from '../../words/format.ts';
import { CasterChart } from './CasterChart.tsx';
import { casterCurve } from './casterCurve.ts';
import { Entry } from './Entry.tsx';

/** Usual angle either way, degrees, and the least and greatest that are taken. */
const USUAL = 20;
const LEAST = 1;
const MOST = 60;
const ENDS: Readonly<Record<SteerEnd, string>> = {
  limit: 'the steering limit',
  reach: 'the linkage',
};

/** Digits of an angle as it was typed, and no more. */
function plain(degrees: number): string {
  return fixed(degrees, 2).replace(/\.?0+$/, '');
}

function Row({
  name,
  how,
  value,
  isTrue = false,
  sweep,
}: {
  readonly name: string;
  readonly how: string;
  readonly value: number;
  readonly isTrue?: boolean;
  readonly sweep: CasterSweep;
}) {
  return (
    <tr data-true={isTrue || undefined}>
      <th scope="row">
        {name}
        <small>{how}</small>
      </th>
      <td>{angle(value)}</td>
      <td>{isTrue ? '' : `${signed(value - sweep.trueCaster, 2)}°`}</td>
    </tr>
  );
}

function Readings({ sweep }: { readonly sweep: CasterSweep }) {
  const { factor, steer, change, left, right } = sweep;
  return (
    <>
      <p className="align-note">
        Camber {angle(left.camber)} steered {plain(steer)}° left, {angle(right.camber)} steered as
        far right: a change of {angle(change)}.
      </p>
      <table className="align-table caster-table">
        <thead>
          <tr>
            <th scope="col">Caster</th>
            <th scope="col">reads</th>
            <th scope="col">off by</th>
          </tr>
        </thead>
        <tbody>
          <Row
            sweep={sweep}
            name="true"
            how="of this linkage, at ride height"
            value={sweep.trueCaster}
            isTrue
          />
          <Row
            sweep={sweep}
            name="workshop rule"
            how={`change × ${plain(factor)}${Math.abs(steer - USUAL) < 0.005 ? '' : ': 1.5 is for 20°'}`}
            value={sweep.byRule}
          />
          <Row
            sweep={sweep}
            name="small angles"
            how={`change ÷ (2 sin ${plain(steer)}°)`}
            value={sweep.bySmallAngles}
          />
          <Row
            sweep={sweep}
            name="exact for a still axis"
            how="with the kingpin inclination, no static toe"
            value={sweep.byFixedAxis}
          />
        </tbody>
      </table>
    </>
  );
}

function Short({ sweep }: { readonly sweep: CasterSweep }) {
  const { asked, steer, ends } = sweep;
  const end = ends.left ?? ends.right;
  if (end === null) return null;
  return (
    <p className="align-short">
      ±{plain(asked)}° cannot be steered: {ENDS[end]} ends it{' '}
      {ends.left === null ? 'right' : 'left'}. Done with ±{fixed(steer, 1)}°, the most there is both
      ways.
    </p>
  );
}

function Why({ sweep }: { readonly sweep: CasterSweep }) {
  const reasons = casterReasons(sweep);
  if (reasons.length === 0)
    return <p className="align-note">The rule reads the true caster here.</p>;
  return (
    <>
      <h4>Why the rule is off by {signed(sweep.byRule - sweep.trueCaster, 2)}°</h4>
      <ul className="caster-why">
        {reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </>
  );
}

export function Caster() {
  // The dials go first: a sweep is some hundred poses.
  const model = useDeferredValue(useStore(documentStore, (state) => state.model));
  const [asked, setAsked] = useState(USUAL);
  const sweep = useMemo(() => casterSweep(model, asked), [model, asked]);
  const points = useMemo(() => (sweep === null ? [] : casterCurve(model, sweep)), [model, sweep]);
  const take = (text: string): string | null => {
    const entered = enteredNumber(text.replace(/^\s*±/, ''));
    if (!entered.ok) return entered.why;
    const size = Math.abs(entered.value);
    if (size < LEAST || size > MOST)
      return `Found ${plain(size)}°: write ${LEAST} to ${MOST} degrees.`;
    setAsked(size);
    return null;
  };
  return (
    <section className="align-caster" aria-label="Caster sweep">
      <h3>Caster, as read on turn plates</h3>
      <Entry
        label="Steered either way"
        name="Caster sweep: steer angle either way, degrees"
        shown={plain(asked)}
        unit="°"
        take={take}
      />
      {sweep === null ? (
        <p className="align-short">
          With these settings the corner hardly steers, or does not stand.
        </p>
      ) : (
        <>
          <Short sweep={sweep} />
          <CasterChart sweep={sweep} points={points} />
          <Readings sweep={sweep} />
          <Why sweep={sweep} />
        </>
      )}
    </section>
  );
}
