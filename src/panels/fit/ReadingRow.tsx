/** One reading as it is typed, and under it what the fit makes of it. */
import { useStore } from 'zustand';
import { READ_TABLE } from '../../../solver/fit/reading.ts';
import {
  asksFor,
  type CellName,
  type FitRow,
  isBetween,
  isLength,
  readRow,
} from '../../state/fitRows.ts';
import { fits } from '../../state/refitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { fixed } from '../../words/format.ts';
import { Icon } from '../icons.tsx';
import { useSettledModel } from '../useSettledModel.ts';
import { BetweenPoints } from './BetweenPoints.tsx';
import { CellField } from './CellField.tsx';
import { readAmount, readSense, readSpread, timesWords } from './fitWords.ts';
import { type RowResult, resultOf } from './results.ts';

const CELL_WORDS: Readonly<Record<CellName, readonly [before: string, label: string]>> = {
  travel: ['at', 'travel it was read at'],
  rack: ['rack', 'rack it was read at'],
  value: ['read', 'what was read'],
  plusMinus: ['±', 'its ±'],
};
const EMPTY: Readonly<Partial<Record<CellName, string>>> = { travel: 'ride', rack: 'straight' };

/** Half a line beside the middle, so that what is left over is seen without reading: the bar ends at three times the ±. */
function OffBar({ off }: { readonly off: number }) {
  const size = (Math.min(3, Math.abs(off)) / 3) * 50;
  return (
    <span className="fit-off-bar" aria-hidden="true">
      <i style={{ left: `${off < 0 ? 50 - size : 50}%`, width: `${size}%` }} />
    </span>
  );
}

/** A ± that its height makes this much larger is told. */
const WIDER = 1.1;

function Result({ result, unit }: { readonly result: RowResult; readonly unit: LengthUnit }) {
  const { fitted, alone, isSuspect } = result;
  const { quantity } = fitted.reading;
  const { before, after, off, plusMinus } = fitted;
  const isWider = plusMinus > WIDER * fitted.reading.plusMinus;
  const isMet = Math.abs(off) < 0.05;
  return (
    <div className="fit-result">
      <p>
        <span>
          points <span className="fit-number">{readAmount(quantity, before, unit)}</span> →{' '}
          <strong>{readAmount(quantity, after, unit)}</strong>
        </span>
        <OffBar off={off} />
        <span className="fit-off">
          {isWider && `${readSpread(quantity, plusMinus, unit)} with its height; `}
          {isMet ? 'met' : `read ${timesWords(off)} ${off > 0 ? 'above' : 'below'}`}
        </span>
      </p>
      {isSuspect && alone !== null && (
        <p className="fit-suspect">
          <Icon name="warn" />
          <span>
            The rest says {readAmount(quantity, alone.expected, unit)}, known together with it to{' '}
            {readSpread(quantity, alone.plusMinus, unit)}: this is{' '}
            {fixed(Math.abs(alone.distance), 1)} times that away. Read it again.
          </span>
        </p>
      )}
    </div>
  );
}

/** Leaves the reading out of the fit, or takes it in again; what was typed stays. */
function LeaveOut({ row, number }: { readonly row: FitRow; readonly number: number }) {
  const { isLeftOut } = row;
  const words = isLeftOut ? 'Take it in again' : 'Leave it out';
  return (
    <button
      type="button"
      className="fit-more"
      aria-label={`${words}: reading ${number}, ${READ_TABLE[row.quantity].label}`}
      onClick={() => fits.change(row.id, { isLeftOut: !isLeftOut })}
    >
      {words}
    </button>
  );
}

function senseOf(row: FitRow, read: ReturnType<typeof readRow>): string | undefined {
  return read.ok ? readSense(row.quantity, read.reading.value) : undefined;
}

export function ReadingRow({
  row,
  number,
  unit,
}: {
  readonly row: FitRow;
  readonly number: number;
  readonly unit: LengthUnit;
}) {
  const model = useSettledModel();
  const asked = useStore(fits, (state) => state.asked);
  const found = useStore(fits, (state) => state.found);
  const read = readRow(row, model);
  const result = resultOf({ asked, found }, row.id);
  const { label } = READ_TABLE[row.quantity];
  const isSuspect = !row.isLeftOut && typeof result === 'object' && result?.isSuspect === true;
  const isBlank = !read.ok && read.why === null;
  const cells = (['travel', 'rack', 'value', 'plusMinus'] as const).filter((name) =>
    asksFor(row.quantity, name),
  );
  return (
    <li
      className="fit-row"
      data-row={row.id}
      data-quantity={row.quantity}
      data-suspect={isSuspect || undefined}
      data-left-out={row.isLeftOut || undefined}
    >
      <div className="fit-row-head">
        <strong>
          {number}. {label}
        </strong>
        <span className="fit-sense">
          {senseOf(row, read)}
          {isBlank && 'not read yet'}
        </span>
        <button
          type="button"
          className="fit-remove"
          aria-label={`Take reading ${number} away: ${label}`}
          title="Take this reading away"
          onClick={() => fits.remove([row.id])}
        >
          <Icon name="close" size={14} />
        </button>
      </div>
      {isBetween(row.quantity) && <BetweenPoints row={row} number={number} />}
      <div className="fit-cells">
        {cells.map((name) => (
          <CellField
            key={name}
            name={name}
            label={`Reading ${number}, ${label}: ${CELL_WORDS[name][1]}`}
            before={CELL_WORDS[name][0]}
            cell={row[name]}
            isLength={name === 'travel' || name === 'rack' || isLength(row.quantity)}
            unit={unit}
            empty={EMPTY[name] ?? ''}
            why={!read.ok && read.cell === name ? read.why : null}
            onType={(cell) => fits.change(row.id, { [name]: cell })}
          />
        ))}
      </div>
      {!read.ok && read.cell === null && (
        <p className="fit-refusal" role="alert">
          {read.why} It is left out.
        </p>
      )}
      {read.ok && result === 'unreached' && (
        <p className="fit-refusal" role="alert">
          These points cannot bring the wheel there: it is left out.
        </p>
      )}
      {read.ok && !row.isLeftOut && typeof result === 'object' && result !== null && (
        <Result result={result} unit={unit} />
      )}
      {isSuspect && <LeaveOut row={row} number={number} />}
      {row.isLeftOut && (
        <p className="fit-left-out">
          Left out of the fit. <LeaveOut row={row} number={number} />
        </p>
      )}
    </li>
  );
}
