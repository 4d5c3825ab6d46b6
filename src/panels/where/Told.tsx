/** The present place and the probe side by side, and what is said below them. */
import { useStore } from 'zustand';
import { placeOf } from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import type { LengthUnit } from '../../state/view.ts';
import { limitOf, type WhereState } from '../../state/where.ts';
import { where } from '../../state/whereabouts.ts';
import { Icon } from '../icons.tsx';
import { FactRows } from './Facts.tsx';
import { Notes, nameOf } from './Notes.tsx';
import { tryPlace } from './tryOn.ts';
import { aimText, moveWords, placeText, SUBJECT_WORDS } from './words.ts';

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
          <th scope="row">{nameOf(state)}</th>
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

export function Told() {
  const state = useStore(where);
  const unit = useStore(view, (current) => current.unit);
  const model = useStore(documentStore, (current) => current.model);
  return (
    <section className="where-told" aria-label="What places come to">
      <ProbeLine state={state} unit={unit} />
      <Table state={state} unit={unit} />
      <div className="where-note">
        <Notes state={state} unit={unit} />
        <p>Now: {placeText(placeOf(model, state.subject), unit)}, in the design pose.</p>
      </div>
    </section>
  );
}
