/** More readings: one of a kind, or a whole table of heights pasted in. */
import { useState } from 'react';
import { useStore } from 'zustand';
import {
  canBeRead,
  READ_QUANTITIES,
  READ_TABLE,
  type ReadQuantity,
} from '../../../solver/fit/reading.ts';
import { documentStore } from '../../state/bench.ts';
import { isLength, newRow } from '../../state/fitRows.ts';
import { fits } from '../../state/refitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { lengthUnitName } from '../../words/format.ts';
import { type HeightTable, readHeightTable } from '../../words/heightTable.ts';
import { useSettledModel } from '../useSettledModel.ts';

/** Read at several heights, one below the other. */
const TABLED = ['toe', 'toeChange', 'camber', 'caster', 'damperLength'] as const;
type Tabled = (typeof TABLED)[number];

function take(quantity: Tabled, { lines }: HeightTable, unit: LengthUnit): void {
  const { model } = documentStore.getState();
  let next = 0;
  fits.addRows((id) => {
    const { height, value, plusMinus } = lines[next]!;
    next += 1;
    const row = newRow(id, quantity, model);
    return {
      ...row,
      travel: { text: height, unit },
      value: { text: value, unit },
      ...(plusMinus === null ? {} : { plusMinus: { text: plusMinus, unit } }),
    };
  }, lines.length);
}

function Refused({ bad }: Pick<HeightTable, 'bad'>) {
  if (bad.length === 0) return null;
  return (
    <div className="fit-refusal" role="alert">
      <p>{bad.length === 1 ? 'One line stays here:' : `${bad.length} lines stay here:`}</p>
      <ul>
        {bad.map(({ line, why }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines may be alike, and are never moved.
          <li key={index}>
            “{line.trim()}”: {why}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Adds a reading, and goes to where it is typed. */
function addOne(quantity: ReadQuantity): void {
  fits.add(quantity);
  requestAnimationFrame(() => {
    const fields = document.querySelectorAll<HTMLElement>('.fit-row [data-cell="value"] input');
    fields[fields.length - 1]?.focus();
  });
}

function PasteTable({ unit }: { readonly unit: LengthUnit }) {
  const model = useSettledModel();
  const [quantity, setQuantity] = useState<Tabled>('toe');
  const text = useStore(fits, (state) => state.pasted);
  const [bad, setBad] = useState<HeightTable['bad']>([]);
  function enter(): void {
    const table = readHeightTable(text, unit, isLength(quantity));
    if (table.lines.length > 0) take(quantity, table, unit);
    setBad(table.bad);
    fits.setState({ pasted: table.bad.map(({ line }) => line).join('\n') });
  }
  return (
    <details className="fit-paste" open={text !== '' || undefined}>
      <summary>Paste or type a table of heights</summary>
      <label>
        Read at each height{' '}
        <select value={quantity} onChange={(event) => setQuantity(event.target.value as Tabled)}>
          {TABLED.filter((one) => canBeRead(model, one)).map((one) => (
            <option key={one} value={one}>
              {READ_TABLE[one].label}
            </option>
          ))}
        </select>
      </label>
      <textarea
        rows={5}
        aria-label="Table of heights"
        placeholder={`−50  0.12\n0  0.05\n50  −0.10`}
        spellCheck={false}
        value={text}
        onChange={(event) => {
          setBad([]);
          fits.setState({ pasted: event.target.value });
        }}
      />
      <p className="fit-note">
        One line a height: travel in {lengthUnitName(unit)} (up from the design pose, − in droop),
        then what was read, then its ± where it has one of its own.
      </p>
      <Refused bad={bad} />
      <button type="button" className="bar-button" disabled={text.trim() === ''} onClick={enter}>
        Add these readings
      </button>
    </details>
  );
}

export function AddReadings({ unit }: { readonly unit: LengthUnit }) {
  const model = useSettledModel();
  const removed = useStore(fits, (state) => state.removed);
  const count = useStore(fits, (state) => state.rows.length);
  return (
    <div className="fit-add">
      <fieldset className="fit-kinds">
        <legend>Add a reading of</legend>
        {READ_QUANTITIES.filter((one) => canBeRead(model, one)).map((one) => (
          <button key={one} type="button" className="bar-button" onClick={() => addOne(one)}>
            {READ_TABLE[one].label}
          </button>
        ))}
      </fieldset>
      {count > 1 && (
        <button
          type="button"
          className="bar-button"
          onClick={() => fits.remove(fits.getState().rows.map(({ id }) => id))}
        >
          Take all away
        </button>
      )}
      {removed.length > 0 && (
        <button type="button" className="bar-button" onClick={fits.putBack}>
          Put back {removed.length === 1 ? 'the reading' : `the ${removed.length} readings`} taken
          away
        </button>
      )}
      <PasteTable unit={unit} />
    </div>
  );
}
