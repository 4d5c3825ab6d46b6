/** What an answer moves: the points on the list, and all else that moves or comes closer for it. */
import { useStore } from 'zustand';
import type { Answer } from '../../../solver/improve/answer.ts';
import { dimensionValue, isStill } from '../../../solver/improve/dimension.ts';
import { movingOf } from '../../../solver/improve/moving.ts';
import type { MarginUnit, Moved } from '../../../solver/index.ts';
import { improve } from '../../state/improved.ts';
import type { LengthUnit } from '../../state/view.ts';
import { quantityOf } from '../../words/quantity.ts';
import { moveWords } from './words.ts';

/** Worse gaps that are named; the others are counted. */
const MOST_WORSE = 4;
const TURNED = { touch: 'now touches', tight: 'now tight', met: 'now passed' } as const;
/** The points that move: where to, and by how much which way. */
export function AnswerMoves({
  answer,
  unit,
}: {
  readonly answer: Answer;
  readonly unit: LengthUnit;
}) {
  const { plan, model } = useStore(improve);
  if (plan === null || model === null) return null;
  const moving = movingOf(model, plan.movers);
  const atBound = (place: number): boolean => {
    const value = answer.values[place] ?? Number.NaN;
    return value === moving.low[place] || value === moving.high[place];
  };
  const all = moving.dimensions.flatMap((group, place) =>
    group.map((dimension) => [dimension, atBound(place)] as const),
  );
  return (
    <dl>
      {all.map(([dimension, isAtBound]) => {
        const { key, label } = dimension;
        const kind = dimension.unit === 'degree' ? 'degree' : 'millimetre';
        const was = dimensionValue(model, dimension);
        const is = dimensionValue(answer.model, dimension);
        const { figure } = quantityOf(kind, unit);
        return (
          <div key={key} className="answer-row">
            <dt>{label}</dt>
            <dd>
              {isStill(was, is)
                ? 'stays'
                : `${figure(is)}: ${moveWords(dimension, kind, is - was, unit)}`}
              {isAtBound && ', at its bound'}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}

function amount(value: number, of: MarginUnit, unit: LengthUnit): string {
  return quantityOf(of === 'mm' ? 'millimetre' : 'degree', unit).figure(value);
}

function MovedRows({ rows, unit }: { readonly rows: readonly Moved[]; readonly unit: LengthUnit }) {
  return (
    <dl>
      {rows.map(({ label, before, after, unit: of }) => (
        <div key={label} className="answer-row">
          <dt>{label}</dt>
          <dd>
            {before !== null && `${amount(before, of, unit)} → `}
            {amount(after, of, unit)}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** Folded away: alignment, lock and track that move with it, and gaps that are closer for it. */
export function Besides({ answer, unit }: { readonly answer: Answer; readonly unit: LengthUnit }) {
  const { effects, worsened } = answer;
  const more = worsened.length - MOST_WORSE;
  const closer = worsened.slice(0, MOST_WORSE).map(({ turned, ...moved }) => ({
    ...moved,
    label: turned === null ? moved.label : `${moved.label}, ${TURNED[turned]}`,
  }));
  return (
    <details className="answer-besides">
      <summary>What else moves{worsened.length > 0 && ', and what comes closer'}</summary>
      {effects.length === 0 && <p>Nothing else of alignment, lock and track moves.</p>}
      <MovedRows rows={effects} unit={unit} />
      {closer.length > 0 && <h5>Closer for it, and not among what must hold</h5>}
      <MovedRows rows={closer} unit={unit} />
      {more > 0 && <p>And {more} more, with more room left than these.</p>}
    </details>
  );
}
