/** Ready-made lists to begin with, and the way back to those that stood before. */
import { useStore } from 'zustand';
import { startersOf } from '../../../solver/improve/starters.ts';
import { improvePlan } from '../../state/improved.ts';
import { NO_ROWS, planOf } from '../../state/improvePlan.ts';
import type { Design } from './useDesign.ts';

export function Starters({ design }: { readonly design: Design }) {
  const isEmpty = useStore(
    improvePlan,
    ({ movers, wishes }) => movers.length + wishes.length === 0,
  );
  const hasBefore = useStore(improvePlan, ({ before }) => before !== null);
  return (
    <details className="plan-starters" open={isEmpty}>
      <summary>Ready-made starts</summary>
      <div className="plan-buttons">
        {startersOf(design.corner).map(({ key, label, plan }) => (
          <button
            key={key}
            type="button"
            className="bar-button"
            onClick={() => improvePlan.take(plan)}
          >
            {label}
          </button>
        ))}
      </div>
      <p className="plan-note">
        Their bounds and values are common practice, no source: change them below.
      </p>
      <div className="plan-buttons">
        {!isEmpty && (
          <button
            type="button"
            className="bar-button"
            onClick={() => improvePlan.take(planOf(NO_ROWS))}
          >
            Empty the lists
          </button>
        )}
        {hasBefore && (
          <button type="button" className="bar-button" onClick={improvePlan.putBack}>
            Put back my lists
          </button>
        )}
      </div>
    </details>
  );
}
