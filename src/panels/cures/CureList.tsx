/** What would cure a pair or limit that fails: looked for by hand, listed, tried. */
import './cures.css';
import { useStore } from 'zustand';
import type { Cures } from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import { cures } from '../../state/cured.ts';
import type { CureQuestion } from '../../state/cures.ts';
import { sameModel } from '../../state/document.ts';
import type { LengthUnit } from '../../state/view.ts';
import { CureCard } from './CureCard.tsx';

function Running() {
  const progress = useStore(cures, (state) => state.progress);
  return (
    <div className="cures-progress">
      <progress value={progress} max={1} aria-label="Progress of the search for cures" />
      <button type="button" className="bar-button" onClick={cures.stop}>
        Stop
      </button>
    </div>
  );
}

function Found({ found, unit }: { readonly found: Cures | null; readonly unit: LengthUnit }) {
  if (found === null) return <p>Nothing fails here any more.</p>;
  if (found.cures.length === 0) {
    return <p>No single change that the bench knows of makes it any better.</p>;
  }
  const isGap = found.key.includes('/');
  return (
    <ul className="cures-list">
      {found.cures.map((cure) => (
        <CureCard key={cure.kind} cure={cure} isGap={isGap} of={found.unit} unit={unit} />
      ))}
    </ul>
  );
}

/** The section for one pair or limit, by its key; `name` is what people call it. */
export function CureList({ cureKey, name }: CureQuestion) {
  const { asked, model, stage, found } = useStore(cures);
  const isOnTrial = useStore(cures.trials, ({ trial }) => trial !== null);
  const now = useStore(documentStore, (state) => state.model);
  const unit = useStore(view, (state) => state.unit);
  const isOfThis = asked?.cureKey === cureKey && (isOnTrial || sameModel(model, now));
  const isRunning = isOfThis && stage === 'running';
  const isDone = isOfThis && stage === 'done';
  return (
    <section className="cures" aria-label={`What would cure it: ${name}`}>
      <h3>What would cure it: {name}</h3>
      {isRunning && <Running />}
      {isDone && <Found found={found} unit={unit} />}
      {!isRunning && !isDone && (
        <button type="button" className="bar-button" onClick={() => cures.look({ cureKey, name })}>
          Look for the smallest cure
        </button>
      )}
      {isDone && (
        <p className="cure-note">
          Each is the smallest single change of its kind, solved for and rounded up. The strength of
          spacers, studs, rods and mounts is not checked; greatest changes tried are common
          practice, no source.
        </p>
      )}
    </section>
  );
}
