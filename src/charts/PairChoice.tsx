/** Chooses the pair that the map is of: any watched pair, or whichever is worst off. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { pairKey, WORST } from '../../solver/clearance/gapField.ts';
import { watchedPairs } from '../../solver/clearance/pairs.ts';
import { assemble, type Model } from '../../solver/index.ts';
import { documentStore } from '../state/bench.ts';
import { lockMaps } from '../state/mapped.ts';
import { surfacesOf } from '../state/surfaces.ts';
import { pairWords } from '../words/parts.ts';

/** Which parts a model has: the pairs depend on nothing else. */
function partsOf(model: Model): string {
  const parts = ['coilover', 'antiRollBar', 'halfShaft', 'knuckle', 'brake'] as const;
  const fitted = parts.filter((part) => model[part] !== undefined);
  const carriers = [model.coilover?.on, model.antiRollBar?.on];
  const obstacles = (model.obstacles ?? []).map(({ name, shape }) => [name, shape]);
  return JSON.stringify([fitted, carriers, obstacles]);
}

interface Choice {
  readonly key: string;
  readonly words: string;
}

/** Places of the pairs that come first. */
const FIRST: readonly string[] = ['tieRod/wheel', 'tieRod/tyre'];

/** Every pair of the model, the tie rod's to wheel and tyre first. */
function pairsOf(model: Model): readonly Choice[] {
  const pairs = watchedPairs(assemble(model), surfacesOf(model)).map(({ names }) => ({
    key: pairKey(names),
    words: pairWords(names),
  }));
  const rank = ({ key }: Choice): number => {
    const at = FIRST.indexOf(key);
    return at < 0 ? FIRST.length : at;
  };
  return pairs.sort((a, b) => rank(a) - rank(b));
}

export function PairChoice() {
  const chosen = useStore(lockMaps, (state) => state.pair);
  const parts = useStore(documentStore, (state) => partsOf(state.model));
  // biome-ignore lint/correctness/useExhaustiveDependencies: the pairs follow the parts, not where they stand.
  const pairs = useMemo(() => pairsOf(documentStore.getState().model), [parts]);
  const isKnown = chosen === WORST || pairs.some(({ key }) => key === chosen);
  return (
    <div className="map-pair">
      <select
        aria-label="Pair on the map"
        value={isKnown ? chosen : FIRST[0]}
        onChange={(event) => lockMaps.choose(event.target.value)}
      >
        <option value={WORST}>Worst of all pairs</option>
        {pairs.map(({ key, words }) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}
