/** Tells the readings what is known of them, in the unit of length that is shown. */
import { MEASURE_TABLE } from '../../solver/index.ts';
import { figureStyle } from '../words/figures.ts';
import { knownFigure } from '../words/known.ts';
import { view } from './bench.ts';
import { type Known, tellKnown } from './known.ts';
import type { SpreadStore } from './spreads.ts';

/** Follows the uncertainties and the unit until the returned function is called. */
export function showKnown(spreads: SpreadStore): () => void {
  function tell(): void {
    const { pose } = spreads.getState();
    const { unit } = view.getState();
    if (pose === null) {
      tellKnown(null);
      return;
    }
    const entries = MEASURE_TABLE.flatMap(({ key, kind }): [string, Known][] => {
      const known = knownFigure(figureStyle(kind, unit), pose[key] ?? Number.NaN);
      return known === undefined ? [] : [[key, known]];
    });
    tellKnown(Object.fromEntries(entries));
  }
  const exits = [
    spreads.subscribe((state, before) => {
      if (state.pose !== before.pose) tell();
    }),
    view.subscribe((state, before) => {
      if (state.unit !== before.unit) tell();
    }),
  ];
  return () => {
    for (const exit of exits) exit();
  };
}
