/** The rows of least gaps, filled as they come in from behind the page. */
import { useStore } from 'zustand';
import type { PairResult } from '../../../solver/certify/result.ts';
import { fittedGaps } from '../../state/fitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { pairWords, partWords } from '../../words/parts.ts';
import { Icon } from '../icons.tsx';
import type { Column } from './columns.ts';
import { Group, RowHead } from './Group.tsx';
import {
  type Gaps,
  type GapText,
  gapsOf,
  gapText,
  type PairNames,
  pairKey,
  pairRows,
  tyreLeast,
} from './gapRow.ts';

/** A column with what is known of its gaps so far. */
interface Known {
  readonly column: Column;
  readonly gaps: Gaps;
  /** Part of the proof that is done, 1 when all is proven; null where there is nothing to prove. */
  readonly progress: number | null;
}

const NONE: Gaps = new Map();

function useKnown(columns: readonly Column[]): readonly Known[] {
  const known = useStore(fittedGaps, (state) => state.columns);
  return columns.map((column) => {
    const { model, key } = column;
    if (model === null) return { column, gaps: NONE, progress: null };
    const own = known[key];
    const answer = own?.model === model ? own.answer : null;
    if (answer === null) return { column, gaps: NONE, progress: 0 };
    return { column, gaps: gapsOf(answer), progress: answer.progress };
  });
}

const MARKS = { clear: 'clear', near: 'warn', touch: 'touch' } as const;

function Gap({ text }: { text: GapText }) {
  return (
    <>
      <span className="fitment-figure fitment-gap" data-state={text.state}>
        <Icon name={MARKS[text.state]} size={14} />
        {text.figure}
      </span>
      <small>{text.words}</small>
      <small>{text.where}</small>
      {text.proof !== '' && <small>{text.proof}</small>}
    </>
  );
}

function GapCell({
  known,
  pair,
  present,
  unit,
}: {
  known: Known;
  pair: string;
  present: PairResult | null;
  unit: LengthUnit;
}) {
  const { column, gaps, progress } = known;
  const own = gaps.get(pair);
  const isComing = own === undefined && progress !== null && progress < 1;
  return (
    <td data-column={column.key} aria-busy={isComing}>
      {own ? (
        <Gap text={gapText(own, column.slot === null ? null : present, unit)} />
      ) : (
        <span className="fitment-figure">{isComing ? '…' : '–'}</span>
      )}
    </td>
  );
}

/** The tyre's least gap of all, when all is proven. */
function TyreRow({ known, unit }: { known: readonly Known[]; unit: LengthUnit }) {
  const base = known[0] === undefined ? null : tyreLeast(known[0].gaps);
  return (
    <tr data-gap="tyre">
      <RowHead label="Tyre, least of all" hint="to whatever part comes nearest" />
      {known.map(({ column, gaps, progress }) => {
        const isComing = progress !== null && progress < 1;
        const least = isComing ? null : tyreLeast(gaps);
        const text =
          least && gapText(least.gap, column.slot === null ? null : (base?.gap ?? null), unit);
        return (
          <td key={column.key} data-column={column.key} aria-busy={isComing}>
            {text === null || least === null ? (
              <span className="fitment-figure">{isComing ? '…' : '–'}</span>
            ) : (
              <Gap text={{ ...text, where: `to the ${partWords(least.to)}`, proof: '' }} />
            )}
          </td>
        );
      })}
    </tr>
  );
}

/** How far the proofs are, with what stops them and what takes them up again. */
function Progress({ known }: { known: readonly Known[] }) {
  const isStopped = useStore(fittedGaps, (state) => state.isStopped);
  const isOpen = known.some(({ progress }) => progress !== null && progress < 1);
  if (!isOpen) return null;
  return (
    <tr>
      <th scope="row">
        {isStopped ? (
          <button type="button" className="fitment-button" onClick={fittedGaps.goOn}>
            Go on proving
          </button>
        ) : (
          <button type="button" className="fitment-button" onClick={fittedGaps.halt}>
            Stop proving
          </button>
        )}
      </th>
      {known.map(({ column, progress }) => (
        <td key={column.key} data-column={column.key}>
          {progress !== null && progress < 1 && (
            <progress
              aria-label={`${column.title}: part of its gaps that is proven`}
              value={progress}
            />
          )}
        </td>
      ))}
    </tr>
  );
}

function Far({ pairs, width }: { pairs: readonly PairNames[]; width: number }) {
  if (pairs.length === 0) return null;
  return (
    <tr>
      <RowHead label="Farther than 80 mm" hint="in every column" />
      <td colSpan={width}>
        <small>{pairs.map(pairWords).join(', ')}</small>
      </td>
    </tr>
  );
}

export function GapRows({
  columns,
  unit,
}: {
  readonly columns: readonly Column[];
  readonly unit: LengthUnit;
}) {
  const known = useKnown(columns);
  const { near, far } = pairRows(known.map(({ gaps }) => gaps));
  const present = known[0]?.gaps;
  return (
    <Group title="Least gaps over travel and lock" source="Gaps" width={columns.length}>
      <TyreRow known={known} unit={unit} />
      {near.map((pair) => {
        const key = pairKey(pair);
        return (
          <tr key={key} data-gap={key}>
            <RowHead label={pairWords(pair)} />
            {known.map((one) => (
              <GapCell
                key={one.column.key}
                known={one}
                pair={key}
                present={present?.get(key) ?? null}
                unit={unit}
              />
            ))}
          </tr>
        );
      })}
      <Far pairs={far} width={columns.length} />
      <Progress known={known} />
    </Group>
  );
}
