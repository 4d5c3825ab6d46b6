/** One watched pair: its verdict, its proven least gap, the gap wanted (which can be typed), and the way to its worst place. */
import { useStore } from 'zustand';
import type { PairResult } from '../../../solver/certify/result.ts';
import { pairKey } from '../../../solver/clearance/gapField.ts';
import { inputs } from '../../state/bench.ts';
import { showCloseUp } from '../../state/closeUp.ts';
import { lockMaps } from '../../state/mapped.ts';
import type { LengthUnit } from '../../state/view.ts';
import { length, lengthNumber, signedLength } from '../../words/format.ts';
import { pairWords } from '../../words/parts.ts';
import { Icon } from '../icons.tsx';
import { editModel } from '../points/edit.ts';
import { withoutPair } from './leftOut.ts';
import { WantedField } from './WantedField.tsx';

const WORDS = { touch: 'touch', tight: 'tight', clear: 'clear' } as const;
const ICONS = { touch: 'touch', tight: 'warn', clear: 'clear' } as const;
const STATES = { touch: 'touch', tight: 'near', clear: 'clear' } as const;

/** Nearer to the bound than this, mm, least and proven are one number to whoever reads. */
const SAME = 0.06;

/** "8.2 mm deep", "28.3 mm", and how sure: "at least 210 mm proven" where the proof is coarser. */
function gapWords({ least }: PairResult, unit: LengthUnit): string {
  return least <= 0 ? `${length(-least, unit)} deep` : length(least, unit);
}

function provenWords({ least, provenAtLeast }: PairResult, unit: LengthUnit): string {
  if (!Number.isFinite(provenAtLeast)) return 'not proven';
  if (least - provenAtLeast <= SAME) return 'proven';
  return `proven ≥ ${lengthNumber(Math.floor(provenAtLeast * 10) / 10, unit)}`;
}

/** Shows the pair and moves the bench to its worst place. */
function go(key: string, travel: number, rack: number): void {
  lockMaps.choose(key);
  showCloseUp(true);
  inputs.play(null);
  inputs.move(travel, rack);
}

export function PairRow({
  result,
  unit,
}: {
  readonly result: PairResult;
  readonly unit: LengthUnit;
}) {
  const { names, verdict, travel, rack } = result;
  const key = pairKey(names);
  const isChosen = useStore(lockMaps, (state) => state.pair === key);
  const title = pairWords(names);
  const place = `travel ${signedLength(travel, unit, 0)}, rack ${signedLength(rack, unit, 0)}`;
  return (
    <tr data-state={STATES[verdict]} data-pair={key} data-chosen={isChosen || undefined}>
      <th scope="row">
        <span className="clearance-mark">
          <Icon name={ICONS[verdict]} />
          {WORDS[verdict]}
        </span>
        <button
          type="button"
          className="clearance-choose"
          aria-pressed={isChosen}
          title={`Show ${title} on the map and in the picture`}
          onClick={() => lockMaps.choose(key)}
        >
          {title}
        </button>
      </th>
      <td className="clearance-number">
        <strong>{gapWords(result, unit)}</strong>
        <small>{provenWords(result, unit)}</small>
      </td>
      <td>
        <WantedField result={result} unit={unit} title={title} />
      </td>
      <td>
        <button
          type="button"
          className="clearance-go"
          aria-label={`Go to the worst place of ${title}: ${place}`}
          onClick={() => go(key, travel, rack)}
        >
          <span>travel {signedLength(travel, unit, 0)}</span>
          <span>rack {signedLength(rack, unit, 0)}</span>
        </button>
        {verdict === 'touch' && (
          <button
            type="button"
            className="clearance-leave"
            title="Do not watch this pair: its parts touch by design"
            aria-label={`Leave out ${title}: touches by design`}
            onClick={() => editModel((model) => withoutPair(model, names))}
          >
            leave out
          </button>
        )}
      </td>
    </tr>
  );
}
