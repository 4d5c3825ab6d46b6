/** The work sheet of moves: one point moved, or one arm made longer, and all that moves with it. */
import './movingSheet.css';
import { useMemo } from 'react';
import { useStore } from 'zustand';
import {
  type EffectPlace,
  type Effects,
  effectsOf,
  formatModelError,
  type Model,
  type Movable,
  movableLengths,
  movablePoints,
  moved,
  readModel,
} from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import { moves, moving } from '../../state/moving.ts';
import { refusalWords } from '../../words/refusal.ts';
import { useSettledModel } from '../useSettledModel.ts';
import { EffectTable } from './EffectTable.tsx';
import { MoveChoice } from './MoveChoice.tsx';
import { moveWords } from './words.ts';

type Found =
  | { readonly ok: true; readonly model: Model; readonly effects: Effects }
  | { readonly ok: false; readonly why: string };

const LOST: Readonly<Record<EffectPlace, string>> = {
  set: 'the set pose',
  bump: 'full bump',
  droop: 'full droop',
  lock: 'full left lock',
};

function isIn(model: Model, what: Exclude<Movable, { kind: 'arm' }>): boolean {
  if (what.kind === 'point') return movablePoints(model).includes(what.path);
  return movableLengths(model).some(({ path }) => path === what.path);
}

function find(model: Model, what: Movable, by: number): Found {
  const read = readModel(moved(model, what, by), documentStore.getState().origin);
  if (!read.ok) {
    const path = what.kind === 'arm' ? `${what.arm}.ballJoint` : what.path;
    return { ok: false, why: refusalWords(formatModelError(read.error), path) };
  }
  return { ok: true, model: read.model, effects: effectsOf(model, read.model) };
}

/** The way to try the move, or while one is on the bench, to keep it or take it back. */
function Trial({ name, model }: { readonly name: string; readonly model: Model | null }) {
  const on = useStore(moves, ({ trial }) => trial?.subject ?? null);
  if (on === null) {
    if (model === null) return null;
    return (
      <div className="moving-trial">
        <button
          type="button"
          className="bar-button"
          title="Put it on the bench and hold the present design as the ghost"
          onClick={() => moves.tryOn(name, documentStore.getState().model, model)}
        >
          Try as ghost
        </button>
      </div>
    );
  }
  return (
    <div className="moving-trial" data-on="">
      <p role="status">On the bench: {on}. The design before it is the ghost.</p>
      <button type="button" className="bar-button" onClick={moves.keep}>
        Keep
      </button>
      <button type="button" className="bar-button" onClick={moves.takeBack}>
        Take back
      </button>
    </div>
  );
}

export default function MovingSheet() {
  const present = useSettledModel();
  const base = useStore(moves, ({ trial }) => trial?.before ?? null) ?? present;
  const { what: chosen, by } = useStore(moving);
  const unit = useStore(view, (state) => state.unit);
  // Another design may lack the point or the length.
  const isThere = chosen.kind === 'arm' || isIn(base, chosen);
  const what = useMemo<Movable>(
    () => (isThere ? chosen : { kind: 'point', path: 'tieRod.inner', axis: 2 }),
    [isThere, chosen],
  );
  const found = useMemo(() => find(base, what, by), [base, what, by]);
  return (
    <div className="moving">
      <MoveChoice model={base} what={what} by={by} />
      <Trial name={moveWords(base, what, by, unit)} model={found.ok ? found.model : null} />
      {found.ok ? (
        <>
          {found.effects.lost.map((place) => (
            <p key={place} className="moving-lost">
              Out of reach with it: {LOST[place]}.
            </p>
          ))}
          <EffectTable effects={found.effects.effects} unit={unit} />
        </>
      ) : (
        <p className="moving-lost" role="alert">
          {found.why}
        </p>
      )}
      <p className="moving-note">
        A point can also be chosen by its handle in the picture. Both designs are solved, and sorted
        by the change divided by a usual size of each measure (common practice, no source). A point
        moved is a design drawn anew: arms, rod and knuckle are made to fit it, and camber and toe
        of the design pose stay as the file states them. Set the alignment after any such change;
        the strength of new parts is not checked.
      </p>
    </div>
  );
}
