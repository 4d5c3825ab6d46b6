/** Trying a candidate on the bench, and keeping it. */
import { useStore } from 'zustand';
import type { CandidateName } from '../../state/fitment.ts';
import { fitment } from '../../state/fitted.ts';
import type { Column } from './columns.ts';

export function TrialButtons({ column, name }: { column: Column; name: CandidateName }) {
  const isOn = useStore(fitment, (state) => state.trial?.name === name);
  const cannot = column.model === null || column.isPresent;
  const why = column.model === null ? 'It does not fit yet.' : 'It is what is fitted already.';
  return (
    <div className="fitment-trial-buttons">
      {isOn ? (
        <button
          type="button"
          className="fitment-button"
          aria-label={`Take it back: candidate ${name}`}
          onClick={fitment.takeBack}
        >
          Take it back
        </button>
      ) : (
        <button
          type="button"
          className="fitment-button"
          disabled={cannot}
          title={cannot ? why : 'Put it on the bench and hold the present design as the ghost'}
          aria-label={`Try as a ghost: candidate ${name}`}
          onClick={() => fitment.tryOn(name)}
        >
          Try as a ghost
        </button>
      )}
      <button
        type="button"
        className="fitment-button"
        disabled={cannot}
        title={cannot ? why : 'Leave it on the bench; undo leads back'}
        aria-label={`Keep: candidate ${name}`}
        onClick={() => fitment.keep(name)}
      >
        Keep
      </button>
    </div>
  );
}

/** Says during a trial what is on the bench and how to have back what was there. */
export function TrialBar({ onSee }: { onSee: () => void }) {
  const trial = useStore(fitment, (state) => state.trial);
  if (trial === null) return null;
  return (
    <div className="fitment-trial" role="status">
      <p>
        Candidate {trial.name} is on the bench; the design before it is held as the ghost, and all
        differences are taken from it.
      </p>
      <button type="button" className="fitment-button" onClick={onSee}>
        See it on the bench
      </button>
      <button type="button" className="fitment-button" onClick={() => fitment.keep(trial.name)}>
        Keep it
      </button>
      <button type="button" className="fitment-button" onClick={fitment.takeBack}>
        Take it back
      </button>
    </div>
  );
}
