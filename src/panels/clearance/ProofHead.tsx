/** How far the proof has come, and its verdict in one sentence. */
import { useStore } from 'zustand';
import type { CertifiedRange } from '../../../solver/certify/range.ts';
import type { PairResult } from '../../../solver/certify/result.ts';
import { view } from '../../state/bench.ts';
import { proofs } from '../../state/proven.ts';
import type { LengthUnit } from '../../state/view.ts';
import { lengthUnitName, signedLength } from '../../words/format.ts';
import { Icon } from '../icons.tsx';

type Verdict = PairResult['verdict'];

function count(results: readonly PairResult[], verdict: Verdict): number {
  return results.filter((result) => result.verdict === verdict).length;
}

function pairs(number: number): string {
  return number === 1 ? '1 pair' : `${number} pairs`;
}

/** "2 pairs touch, 1 pair is tighter than wanted, 20 are clear." */
function verdictWords(results: readonly PairResult[]): string {
  const touch = count(results, 'touch');
  const tight = count(results, 'tight');
  const clear = count(results, 'clear');
  const words = [
    ...(touch === 0 ? [] : [`${pairs(touch)} ${touch === 1 ? 'touches' : 'touch'}`]),
    ...(tight === 0 ? [] : [`${pairs(tight)} ${tight === 1 ? 'is' : 'are'} tighter than wanted`]),
  ];
  if (words.length === 0)
    return `Nothing touches: all ${pairs(clear)} keep the gap that is wanted.`;
  return `${words.join(', ')}; ${clear} clear.`;
}

/** "Proven over travel −105 to +105 mm and rack −72 to +72 mm." */
function rangeWords({ travel, rack }: CertifiedRange, unit: LengthUnit): string {
  const between = ([low, high]: readonly [number, number]): string =>
    `${signedLength(low, unit, 0).replace(` ${lengthUnitName(unit)}`, '')} to ${signedLength(high, unit, 0)}`;
  const lock =
    rack[0] === rack[1]
      ? 'straight ahead only, since the model states no steering limit'
      : `rack ${between(rack)}`;
  return `Proven over travel ${between(travel)} (stops do not cut it short) and ${lock}.`;
}

const STATE = { touch: 'touch', tight: 'near', clear: 'clear' } as const;

function Verdict({ results }: { readonly results: readonly PairResult[] }) {
  const worst: Verdict =
    count(results, 'touch') > 0 ? 'touch' : count(results, 'tight') > 0 ? 'tight' : 'clear';
  const icon = worst === 'tight' ? 'warn' : worst;
  return (
    <p className="clearance-verdict" data-state={STATE[worst]} aria-live="polite">
      <Icon name={icon} size={20} />
      {verdictWords(results)}
    </p>
  );
}

export function ProofHead() {
  const { stage, progress, results, count: all, range } = useStore(proofs);
  const unit = useStore(view, (state) => state.unit);
  if (stage === 'done') {
    return (
      <header className="clearance-head">
        <Verdict results={results} />
        {range !== null && <p className="clearance-range">{rangeWords(range, unit)}</p>}
      </header>
    );
  }
  const isRunning = stage === 'running';
  return (
    <header className="clearance-head">
      <p className="clearance-verdict">
        {isRunning
          ? `Proving: ${results.length} of ${all === 0 ? '…' : pairs(all)}`
          : `Stopped: ${results.length} of ${pairs(all)} proven`}
      </p>
      <div className="clearance-progress">
        <progress value={progress} max={1} aria-label="Progress of the proof" />
        <button
          type="button"
          className="bar-button"
          onClick={() => (isRunning ? proofs.stop() : proofs.prove())}
        >
          {isRunning ? 'Stop' : 'Prove again'}
        </button>
      </div>
    </header>
  );
}
