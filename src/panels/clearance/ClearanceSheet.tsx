/** The work sheet of clearances: every watched pair's proven least gap over travel × lock, worst first. */
import './clearanceSheet.css';
import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import type { PairResult } from '../../../solver/certify/result.ts';
import { pairKey } from '../../../solver/clearance/gapField.ts';
import { documentStore, view } from '../../state/bench.ts';
import { cures } from '../../state/cured.ts';
import { lockMaps } from '../../state/mapped.ts';
import { meshes, uncheckedMeshes } from '../../state/meshes.ts';
import { proofs } from '../../state/proven.ts';
import { gapUnit } from '../../words/format.ts';
import { pairWords } from '../../words/parts.ts';
import { CureList } from '../cures/CureList.tsx';
import { PairRow } from './PairRow.tsx';
import { ProofHead } from './ProofHead.tsx';
import { Unwatched } from './Unwatched.tsx';

const RANK = { touch: 0, tight: 1, clear: 2 } as const;

/** Touching pairs first, then tight, then clear; in each the one with the least to spare first. */
function sorted(results: readonly PairResult[]): PairResult[] {
  const spare = ({ least, required }: PairResult): number => least - required;
  return [...results].sort((a, b) => RANK[a.verdict] - RANK[b.verdict] || spare(a) - spare(b));
}

function Unchecked() {
  const model = useStore(documentStore, (state) => state.model);
  const files = useStore(meshes);
  const names = uncheckedMeshes(model, files);
  if (names.length === 0) return null;
  return (
    <p className="clearance-unchecked" role="note">
      <strong>Not checked:</strong> {names.join(', ')}. The mesh file is not at hand; open it again.
    </p>
  );
}

/** Cures of the chosen pair where it has less than it wants; of the pair on trial while a cure of it is tried. */
function Cured({ results }: { readonly results: readonly PairResult[] }) {
  const chosen = useStore(lockMaps, (state) => state.pair);
  const asked = useStore(cures, (state) => state.asked);
  const isOnTrial = useStore(cures.trials, ({ trial }) => trial !== null);
  if (isOnTrial && asked !== null) return <CureList {...asked} />;
  const result = results.find(({ names }) => pairKey(names) === chosen);
  if (result === undefined || result.verdict === 'clear') return null;
  return <CureList cureKey={chosen} name={pairWords(result.names)} />;
}

export default function ClearanceSheet() {
  useEffect(() => proofs.watch(), []);
  const results = useStore(proofs, (state) => state.results);
  const unit = useStore(view, (state) => gapUnit(state.unit));
  const rows = useMemo(() => sorted(results), [results]);
  return (
    <div className="clearance">
      <ProofHead />
      <Unchecked />
      <Cured results={results} />
      <table className="clearance-table">
        <thead>
          <tr>
            <th scope="col">Pair</th>
            <th scope="col" className="clearance-number">
              Least gap
            </th>
            <th scope="col">Wanted</th>
            <th scope="col">Where</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((result) => (
            <PairRow key={result.names.join('/')} result={result} unit={unit} />
          ))}
        </tbody>
      </table>
      <Unwatched />
      <p className="clearance-caution">
        Rigid parts, no bush or joint play, no tyre deflection. Hoses, wires, valve and stick-on
        weights that the model does not state are not checked: turn the wheel by hand at both locks,
        at bump and at droop, before anything is cut.
      </p>
    </div>
  );
}
