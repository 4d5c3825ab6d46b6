/** The pairs that are not watched, each with its reason: nothing is left out in silence. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { BY_DESIGN, unwatchedPairs } from '../../../solver/clearance/pairs.ts';
import { assemble } from '../../../solver/index.ts';
import { documentStore } from '../../state/bench.ts';
import { meshObstacles } from '../../state/meshes.ts';
import { pairWords } from '../../words/parts.ts';
import { editModel } from '../points/edit.ts';
import { withPair } from './leftOut.ts';

export function Unwatched() {
  const model = useStore(documentStore, (state) => state.model);
  const pairs = useMemo(() => {
    // Whether a mesh is at hand is said above the table; here it would only be said again.
    const isMesh = new Set(meshObstacles(model).map(({ name }) => name));
    return unwatchedPairs(assemble(model)).filter(({ names }) => !names.some((n) => isMesh.has(n)));
  }, [model]);
  return (
    <details className="clearance-unwatched">
      <summary>{pairs.length} pairs are not watched, and why</summary>
      <ul>
        {pairs.map(({ names, why }) => (
          <li key={names.join('/')}>
            <strong>{pairWords(names)}</strong>: {why}.{' '}
            {why === BY_DESIGN && (
              <button
                type="button"
                className="clearance-go"
                onClick={() => editModel((now) => withPair(now, names))}
              >
                Watch it again
              </button>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
