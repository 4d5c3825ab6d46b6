/** How well the answers that people build on are known at the set pose, in plain words. */
import { useStore } from 'zustand';
import { type KnownAnswer, type MeasureKey, measureRow } from '../../../solver/index.ts';
import { view } from '../../state/bench.ts';
import { spreads } from '../../state/trusted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { figureNumber, figureSteps, figureStyle } from '../../words/figures.ts';
import { knownFigure } from '../../words/known.ts';

const KEYS = ['bumpSteer', 'caster', 'kingpinInclination', 'scrubRadius'] as const;

function sentence(key: MeasureKey, answer: KnownAnswer | undefined, unit: LengthUnit): string {
  if (answer === undefined) return 'does not exist there.';
  const { value, uncertainty } = answer;
  const plain = figureStyle(measureRow(key).kind, unit);
  const known = knownFigure(plain, uncertainty);
  const figure = known?.figure ?? plain;
  const text = `${figureNumber(figureSteps(value, figure), figure)}${figure.unit}`;
  if (known === undefined) return `is ${text}; nothing that goes into it states a ±.`;
  if (known.spread === '') return `is ${text}, known beyond the digits shown.`;
  const side = Math.abs(value) < 2 * uncertainty ? ' Even its sign is not sure.' : '';
  return `is ${text}, and not known to better than ${known.spread}${figure.unit} from these points.${side}`;
}

export function KnownSentences() {
  const set = useStore(spreads, (state) => state.set);
  const isPending = useStore(spreads, (state) => state.isSetPending);
  const unit = useStore(view, (state) => state.unit);
  return (
    <section className="trust-known" aria-labelledby="trust-known" aria-busy={isPending}>
      <h3 id="trust-known">What these points are good for, at the set pose</h3>
      {set === null ? (
        <p className="trust-note">Working out how well it is known…</p>
      ) : set.answers === null ? (
        <p>The set pose cannot be reached: nothing can be said of it.</p>
      ) : (
        <ul>
          {KEYS.map((key) => (
            <li key={key} data-known={key}>
              <strong>{measureRow(key).label}</strong> {sentence(key, set.answers?.[key], unit)}
            </li>
          ))}
        </ul>
      )}
      <p className="trust-note">
        Every ± is one standard uncertainty: two times in three the true value lies within it, 95
        times in 100 within twice as much.
      </p>
    </section>
  );
}
