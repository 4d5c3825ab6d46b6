/** What can be done with a fit: try it as a ghost, keep it, take it back, put it beside the design. */
import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Fit } from '../../../solver/fit/fit.ts';
import { designs } from '../../state/designs.ts';
import { sameModel } from '../../state/document.ts';
import { fits } from '../../state/refitted.ts';
import { useSettledModel } from '../useSettledModel.ts';

/** Says once what became of the design that was put beside. */
function besideWords(isKept: boolean, name: string): string {
  return isKept
    ? `Kept beside the present design as “${name}”: compare them.`
    : 'There are four designs already: take one away first.';
}

function OnTrial() {
  return (
    <>
      <button type="button" className="bar-button" onClick={fits.keep}>
        Keep the fitted points
      </button>
      <button type="button" className="bar-button" onClick={fits.takeBack}>
        Take back
      </button>
    </>
  );
}

export function FitButtons({ fit }: { readonly fit: Fit }) {
  const trial = useStore(fits.trials, (state) => state.trial);
  const model = useSettledModel();
  const name = `${model.name}, fitted`;
  const [said, setSaid] = useState<{ readonly of: Fit; readonly text: string } | null>(null);
  const isOnBench = useMemo(() => sameModel(model, fit.model), [model, fit]);
  const isOn = trial?.subject === fit;
  const standing = isOn
    ? 'On the bench; the design before it is the ghost. Undo takes it back as well.'
    : isOnBench && fit.moves.length > 0 && 'These points are on the bench.';
  const nothing = fit.moves.length === 0;
  return (
    <div className="fit-acts">
      <div className="fit-buttons">
        {isOn ? (
          <OnTrial />
        ) : (
          <>
            <button
              type="button"
              className="bar-button"
              disabled={nothing || isOnBench}
              title="Put the fitted points on the bench and hold the present design as the ghost"
              onClick={() => {
                if (fits.tryOn()) return;
                setSaid({
                  of: fit,
                  text: 'The design has changed meanwhile: wait for the new fit.',
                });
              }}
            >
              Try as ghost
            </button>
            {trial !== null && (
              <button type="button" className="bar-button" onClick={fits.takeBack}>
                Take back the earlier fit
              </button>
            )}
          </>
        )}
        <button
          type="button"
          className="bar-button"
          disabled={nothing}
          onClick={() => {
            const isKept = designs.getState().add(name, fit.model);
            setSaid({ of: fit, text: besideWords(isKept, name) });
          }}
        >
          Keep as a second design
        </button>
      </div>
      <p role="status" className="fit-note">
        {standing} {said?.of === fit && said.text}
      </p>
    </div>
  );
}
