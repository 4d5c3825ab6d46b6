/** What the fit moved, largest first by its own ±. */
import { useEffect, useState } from 'react';
import type { Fit, FitMove } from '../../../solver/fit/fit.ts';
import { view } from '../../state/bench.ts';
import type { LengthUnit } from '../../state/view.ts';
import { figureNumber, figureSteps, figureStyle } from '../../words/figures.ts';
import { fixed, gapUnit } from '../../words/format.ts';
import { spreadWords } from '../../words/known.ts';

/** Rows that are shown at first. */
const FIRST = 6;

/** Readings nearer than this, in their ±, are met. */
const LEAST_OFF = 0.05;

/** Which way a coordinate went: x forward, y outboard, z up for the left wheel. */
const WAYS = [
  ['forward', 'rearward'],
  ['outboard', 'inboard'],
  ['up', 'down'],
] as const;

function wayOf({ input: { component }, before, after }: FitMove): string {
  if (component === null) return after > before ? 'more' : 'less';
  const [more, less] = WAYS[component];
  return after > before ? more : less;
}

function MoveRow({ move, unit }: { readonly move: FitMove; readonly unit: LengthUnit }) {
  const { input, before, after, moved, plusMinusBefore, plusMinusAfter } = move;
  const style = figureStyle(input.unit === 'degree' ? 'degree' : 'millimetre', gapUnit(unit));
  const number = (value: number): string => figureNumber(figureSteps(value, style), style);
  const light = (isLit: boolean): void => {
    if (input.component !== null) view.light(isLit ? `point:${input.path}` : null);
  };
  return (
    <tr
      data-input={input.key}
      onPointerEnter={() => light(true)}
      onPointerLeave={() => light(false)}
    >
      <th scope="row">
        {input.label}
        <small>
          {number(before)} → {number(after)}
          {style.unit}
        </small>
      </th>
      <td>
        <strong>
          {number(Math.abs(after - before))}
          {style.unit}
        </strong>{' '}
        {wayOf(move)}
      </td>
      <td>
        {fixed(Math.abs(moved), 2)}
        <small>
          {spreadWords(style, plusMinusBefore)} → {spreadWords(style, plusMinusAfter)}
        </small>
      </td>
    </tr>
  );
}

export function MoveTable({ fit, unit }: { readonly fit: Fit; readonly unit: LengthUnit }) {
  const [isWhole, setWhole] = useState(false);
  useEffect(() => () => view.light(null), []);
  const { moves } = fit;
  if (moves.length === 0) {
    return fit.readings.every(({ off }) => Math.abs(off) < LEAST_OFF) ? (
      <p>No point has to move: the readings say what the points say.</p>
    ) : (
      <p>Nothing that these readings depend on has a ± to move by.</p>
    );
  }
  const more = moves.length - FIRST;
  return (
    <>
      <table className="fit-table fit-moves">
        <thead>
          <tr>
            <th scope="col">Point</th>
            <th scope="col">Moved</th>
            <th scope="col">Times its ±</th>
          </tr>
        </thead>
        <tbody>
          {moves.slice(0, isWhole ? moves.length : FIRST).map((move) => (
            <MoveRow key={move.input.key} move={move} unit={unit} />
          ))}
        </tbody>
      </table>
      {more > 0 && (
        <button type="button" className="fit-more" onClick={() => setWhole(!isWhole)}>
          {isWhole
            ? 'Show the largest only'
            : `Show ${more} smaller ${more === 1 ? 'move' : 'moves'}`}
        </button>
      )}
    </>
  );
}
