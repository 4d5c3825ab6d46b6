/** How the fit stands, in sight while readings are typed, and the way down to it. */
import { useStore } from 'zustand';
import { fits } from '../../state/refitted.ts';
import { Icon } from '../icons.tsx';
import { ICONS, STATES } from './Verdict.tsx';

const SHORT = {
  agree: 'They agree',
  strained: 'They agree badly',
  disagree: 'Not all can be right',
} as const;

export function FitBar() {
  const { rows, asked, found, isRunning, progress } = useStore(fits);
  const outcome = found?.ok === true ? found.verdict : null;
  if (rows.length === 0) return null;
  const count = asked?.readings.length ?? 0;
  const words =
    outcome !== null
      ? `${SHORT[outcome]}: ${count} ${count === 1 ? 'reading' : 'readings'}`
      : found === null
        ? 'Nothing to fit to yet'
        : 'Not fitted';
  return (
    <div className="fit-bar" data-state={outcome === null ? undefined : STATES[outcome]}>
      <span role="status">
        {outcome !== null && <Icon name={ICONS[outcome]} />}
        {isRunning && found === null ? 'Fitting…' : words}
      </span>
      {isRunning && <progress value={progress} max={1} aria-label="Progress of the fit" />}
      {outcome !== null && (
        <button
          type="button"
          className="fit-more"
          onClick={() => document.getElementById('fit-outcome')?.scrollIntoView()}
        >
          Show the fit
        </button>
      )}
    </div>
  );
}
