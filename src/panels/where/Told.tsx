/** The present place and the probe side by side, how well the present one is known, and what the ideal line says. */
import { useStore } from 'zustand';
import { angleOf, PLANE_AXES, placeOf, type Vector3 } from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import type { LengthUnit } from '../../state/view.ts';
import { limitOf, type WhereState } from '../../state/where.ts';
import { where } from '../../state/whereabouts.ts';
import { gapUnit, length } from '../../words/format.ts';
import { Icon } from '../icons.tsx';
import { shareWithin } from './bands.ts';
import { FactRows } from './Facts.tsx';
import { tryPlace } from './tryOn.ts';
import { aimName, aimText, moveWords, placeText, rateText, SUBJECT_WORDS } from './words.ts';

function name({ subject, aim, question }: WhereState): string {
  return aimName(subject, aim, question !== null && question.wanted !== 0);
}

function Value({
  value,
  state,
  unit,
}: {
  value: number | null;
  state: WhereState;
  unit: LengthUnit;
}) {
  if (value === null) return <td data-state="touch">cannot follow</td>;
  const isGood = value <= limitOf(state);
  return (
    <td data-state={isGood ? 'clear' : 'near'}>
      <Icon name={isGood ? 'clear' : 'warn'} size={14} />
      {aimText(value, state.aim, unit)}
    </td>
  );
}

/** One table: now, and under the probe. */
function Table({ state, unit }: { readonly state: WhereState; readonly unit: LengthUnit }) {
  const { start, probe } = state;
  if (start === null) return null;
  const { present } = start;
  const isTold = probe !== null && probe.value !== null;
  const columns = isTold ? [present.facts, probe.facts] : [present.facts];
  return (
    <table className="where-table">
      <thead>
        <tr>
          <td />
          <th scope="col">Now</th>
          {probe !== null && <th scope="col">Under the probe</th>}
        </tr>
      </thead>
      <tbody>
        <tr data-fact="value">
          <th scope="row">{name(state)}</th>
          <Value value={present.value} state={state} unit={unit} />
          {probe !== null && <Value value={probe.value} state={state} unit={unit} />}
        </tr>
        <FactRows columns={columns} unit={unit} />
      </tbody>
    </table>
  );
}

function ProbeLine({ state, unit }: { readonly state: WhereState; readonly unit: LengthUnit }) {
  const { start, probe, subject } = state;
  if (start === null || probe === null) {
    return (
      <p className="where-note">
        Press in the picture, or use the arrow keys on it: the probe tells what a place comes to.
      </p>
    );
  }
  const words = moveWords(start.present.place, probe.place, unit);
  return (
    <p className="where-probe" aria-live="polite">
      <span>
        <strong>Probe: {words}</strong>, at {placeText(probe.place, unit)}
      </span>
      {probe.value !== null && words !== 'where it is' && (
        <button
          type="button"
          className="bar-button"
          aria-label={`Try as ghost: ${SUBJECT_WORDS[subject][1]} ${words}`}
          onClick={() => tryPlace(subject, probe.place)}
        >
          Try as ghost
        </button>
      )}
    </p>
  );
}

function Known({ state, unit }: { readonly state: WhereState; readonly unit: LengthUnit }) {
  const { start, aim } = state;
  if (start === null) return null;
  if (start.known === null) {
    return (
      <p>
        How well the point is known: not stated. A tolerance in the model draws its uncertainty
        here.
      </p>
    );
  }
  const { sigma, within } = start.known;
  const [least, most] = within;
  return (
    <p>
      The point is known to ±{length(sigma, gapUnit(unit), 2)} in each direction (one sigma; the
      circles are one and two). Within two, {name(state)} lies between {aimText(least, aim, unit)}{' '}
      and {aimText(most, aim, unit)}.
    </p>
  );
}

/** The place that the ideal point is, in the plane of the picture. */
function idealPlace({ question, start }: WhereState, at: readonly [number, number]): Vector3 {
  const [i, j] = PLANE_AXES[question!.plane];
  return start!.present.place.map((value, axis) =>
    axis === i ? at[0] : axis === j ? at[1] : value,
  ) as unknown as Vector3;
}

function IdealWords({ state, unit }: { readonly state: WhereState; readonly unit: LengthUnit }) {
  const { start, question, subject } = state;
  if (start === null || question === null) return null;
  const of = angleOf(subject) === 'toe' ? 'bump steer' : 'bump camber';
  const rate = question.wanted === 0 ? 'zero' : rateText(question.wanted, unit);
  if (start.ideal === null) {
    return (
      <p>
        Dash-dotted: {of} at ride is {rate}. Ride is not the design pose here, or something is set,
        so the line is not quite straight and is drawn from the picture’s own numbers.
      </p>
    );
  }
  const { line, point } = start.ideal;
  if (line === null)
    return (
      <p>
        No place in this plane has {of} at ride of exactly {rate}.
      </p>
    );
  return (
    <p>
      Dash-dotted, the ideal line: {of} at ride is exactly {rate} with the point anywhere on it.
      {point !== null &&
        ` At the ideal point, the ring (${moveWords(start.present.place, idealPlace(state, point), unit)}), it does not begin to change either.`}
    </p>
  );
}

function Region({ state, unit }: { readonly state: WhereState; readonly unit: LengthUnit }) {
  const { picture, aim } = state;
  if (picture === null) return null;
  const limit = limitOf(state);
  const share = shareWithin(picture.values, limit);
  if (share === null) return null;
  const percent = share > 0 && share < 0.01 ? 'Less than 1' : String(Math.round(100 * share));
  return (
    <p data-part="region">
      {share === 0
        ? `No place in the picture is within ${aimText(limit, aim, unit)}.`
        : `${percent} % of the picture is within ${aimText(limit, aim, unit)}.`}
    </p>
  );
}

export function Told() {
  const state = useStore(where);
  const unit = useStore(view, (current) => current.unit);
  const model = useStore(documentStore, (current) => current.model);
  return (
    <section className="where-told" aria-label="What places come to">
      <ProbeLine state={state} unit={unit} />
      <Table state={state} unit={unit} />
      <div className="where-note">
        <Region state={state} unit={unit} />
        <Known state={state} unit={unit} />
        <IdealWords state={state} unit={unit} />
        <p>Now: {placeText(placeOf(model, state.subject), unit)}, in the design pose.</p>
      </div>
    </section>
  );
}
