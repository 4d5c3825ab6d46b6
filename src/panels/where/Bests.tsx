/** The best places, each solved for, with what they come to and the way to try them; and what is on trial. */
import { useId } from 'react';
import { useStore } from 'zustand';
import type { Best, Told } from '../../../solver/index.ts';
import { view } from '../../state/bench.ts';
import type { LengthUnit } from '../../state/view.ts';
import { limitOf, type WhereState } from '../../state/where.ts';
import { where, whereTrials } from '../../state/whereabouts.ts';
import { Icon } from '../icons.tsx';
import { FactRows, factText } from './Facts.tsx';
import { tryPlace } from './tryOn.ts';
import { aimText, moveWords, roomTitle, SUBJECT_WORDS } from './words.ts';

/** Letters of the marks in the picture. */
const MARKS: Readonly<Partial<Record<Best['room'], string>>> = { picture: 'A', reach: 'B' };

/** Places nearer than this, mm, are one. */
const SAME = 0.005;

/** What is to be said of where it stands; empty for nothing. */
function standWords({ room, isAtEdge, at }: Best, whole: Best): string {
  const isSame = Math.hypot(at[0] - whole.at[0], at[1] - whole.at[1]) < SAME;
  if (room !== 'picture' && isSame) return 'The same place as A.';
  if (!isAtEdge) return '';
  return room === 'picture'
    ? 'It stands on the picture’s edge: better ones may lie beyond.'
    : 'As far as it may move.';
}

/** Facts that are lengths to be cut. */
const CUT = new Set(['rodLength', 'frontLength', 'rearLength']);

/** How long the rod, or each leg of the arm, is to be made. */
function Lengths({
  best,
  present,
  unit,
}: {
  readonly best: Best;
  readonly present: Told;
  readonly unit: LengthUnit;
}) {
  return best.facts.map((fact, n) => {
    if (!CUT.has(fact.key)) return null;
    const before = present.facts[n];
    return (
      <p key={fact.key} data-cut={fact.key}>
        {fact.label} <b>{factText(fact, unit)}</b>
        {before !== undefined && ` (now ${factText(before, unit)})`}
      </p>
    );
  });
}

function Card({
  best,
  whole,
  present,
  state,
  unit,
}: {
  readonly best: Best;
  /** The best of the whole picture. */
  readonly whole: Best;
  readonly present: Told;
  readonly state: WhereState;
  readonly unit: LengthUnit;
}) {
  const id = useId();
  const { room, value } = best;
  const { aim, subject, plane } = state;
  const words = moveWords(present.place, best.place, unit);
  const isGood = value !== null && value <= limitOf(state);
  const note = standWords(best, whole);
  const isStill = words === 'where it is';
  return (
    <li
      className="where-best"
      data-room={room}
      data-state={isGood ? 'clear' : 'near'}
      aria-labelledby={id}
    >
      <h4 id={id}>
        {MARKS[room] !== undefined && <b aria-hidden="true">{MARKS[room]}</b>}
        {roomTitle(room, plane)}
      </h4>
      <p className="where-move">{isStill ? 'Where it is now: no place is better.' : words}</p>
      {value !== null && (
        <p className="where-value">
          <Icon name={isGood ? 'clear' : 'warn'} />
          <strong>{aimText(value, aim, unit)}</strong>
          {present.value !== null && ` (now ${aimText(present.value, aim, unit)})`}
        </p>
      )}
      {!isStill && <Lengths best={best} present={present} unit={unit} />}
      {note !== '' && <p className="where-note">{note}</p>}
      {!isStill && best.facts.length > 0 && (
        <>
          <details>
            <summary>What it comes to</summary>
            <table className="where-table">
              <thead>
                <tr>
                  <td />
                  <th scope="col">Now</th>
                  <th scope="col">There</th>
                </tr>
              </thead>
              <tbody>
                <FactRows columns={[present.facts, best.facts]} unit={unit} />
              </tbody>
            </table>
          </details>
          <button
            type="button"
            className="bar-button"
            aria-label={`Try as ghost: ${SUBJECT_WORDS[subject][1]} ${words}`}
            title="Put it on the bench and hold the present design as the ghost"
            onClick={() => tryPlace(subject, best.place)}
          >
            Try as ghost
          </button>
        </>
      )}
    </li>
  );
}

/** What this sheet has put on trial. */
export function OnTrial() {
  const words = useStore(whereTrials, (state) => state.trial?.subject ?? null);
  if (words === null) return null;
  return (
    <section className="where-trial" aria-label="On trial">
      <p>
        On trial: <strong>{words}</strong>. The design before it is the ghost.
      </p>
      <button type="button" className="bar-button" onClick={whereTrials.keep}>
        Keep
      </button>
      <button type="button" className="bar-button" onClick={whereTrials.takeBack}>
        Take back
      </button>
    </section>
  );
}

export function Bests() {
  const state = useStore(where);
  const unit = useStore(view, (current) => current.unit);
  const { bests, start } = state;
  return (
    <section className="where-bests" aria-label="Best places" aria-busy={bests === null}>
      <h3>Best places</h3>
      {bests === null || start === null ? (
        <p className="where-note">Solving for the best places…</p>
      ) : (
        <ul>
          {bests.map((best) => (
            <Card
              key={best.room}
              best={best}
              whole={bests[0]!}
              present={start.present}
              state={state}
              unit={unit}
            />
          ))}
        </ul>
      )}
    </section>
  );
}
