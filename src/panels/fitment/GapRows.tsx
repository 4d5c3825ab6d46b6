/** The rows of least gaps, filled as they come in from behind the page. */
import { useStore } from 'zustand';
import { fittedGaps } from '../../state/fitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import type { FitmentAnswer } from '../../worker/fitmentJob.ts';
import { Icon } from '../icons.tsx';
import type { Column } from './columns.ts';
import { Group, RowHead } from './Group.tsx';
import { type GapText, gapText } from './gapWords.ts';

const PAIRS = [
  ['wheel', 'Tie rod to wheel'],
  ['tyre', 'Tie rod to tyre'],
] as const;

const MARKS = { clear: 'clear', near: 'warn', touch: 'touch' } as const;

function Gap({ text }: { text: GapText }) {
  return (
    <>
      <span className="fitment-figure fitment-gap" data-state={text.state}>
        <Icon name={MARKS[text.state]} size={14} />
        {text.figure}
      </span>
      <small>
        {text.word}
        {text.change !== null && `, ${text.change}`}
      </small>
      <small>{text.where}</small>
    </>
  );
}

export function GapRows({
  columns,
  unit,
}: {
  readonly columns: readonly Column[];
  readonly unit: LengthUnit;
}) {
  const known = useStore(fittedGaps);
  const answerOf = ({ key, model }: Column): FitmentAnswer | null => {
    const column = known[key];
    return column?.model === model ? column.answer : null;
  };
  const [present] = columns;
  const base = present === undefined ? null : answerOf(present);
  return (
    <Group title="Least gaps over travel and lock" source="Gaps" width={columns.length}>
      {PAIRS.map(([part, label]) => (
        <tr key={part} data-gap={part}>
          <RowHead label={label} />
          {columns.map((column) => {
            const answer = answerOf(column);
            const worst = answer?.gaps[part];
            return (
              <td
                key={column.key}
                data-column={column.key}
                aria-busy={column.model !== null && answer === null}
              >
                {column.model === null || worst === null ? (
                  <span className="fitment-figure">–</span>
                ) : worst === undefined ? (
                  <small>working it out…</small>
                ) : (
                  <Gap
                    text={gapText(
                      column.model,
                      part,
                      worst,
                      column.slot === null ? null : (base?.gaps[part] ?? null),
                      unit,
                    )}
                  />
                )}
              </td>
            );
          })}
        </tr>
      ))}
    </Group>
  );
}
