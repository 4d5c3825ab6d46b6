/** From a wanted travel: the lengths, stops and angles it needs, and the way to state them all in the model. */
import { useStore } from 'zustand';
import type { WantedTravel as Wanted, WantedRow, Wish } from '../../../solver/index.ts';
import { withWanted } from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import { stops } from '../../state/stopped.ts';
import type { LengthUnit } from '../../state/view.ts';
import { enteredLength } from '../../words/entry.ts';
import { lengthNumber, lengthUnitName } from '../../words/format.ts';
import { amount } from '../../words/margins.ts';
import { Icon } from '../icons.tsx';
import { editModel } from '../points/edit.ts';
import { useEntry } from '../points/useEntry.ts';

function WishField({
  label,
  value,
  unit,
  onTake,
}: {
  readonly label: string;
  readonly value: number;
  readonly unit: LengthUnit;
  readonly onTake: (mm: number) => void;
}) {
  const take = (text: string): string | null => {
    const entered = enteredLength(text, unit);
    if (!entered.ok) return entered.why;
    if (entered.value <= 0) return 'Write more than 0.';
    onTake(entered.value);
    return null;
  };
  const { input, refusal, refusalId } = useEntry(lengthNumber(value, unit), take);
  return (
    <label className="stops-wish">
      {label}
      <input {...input} inputMode="decimal" />
      {lengthUnitName(unit)}
      {refusal !== null && (
        <span id={refusalId} role="alert">
          {refusal}
        </span>
      )}
    </label>
  );
}

function standing({ isEnough }: WantedRow): 'clear' | 'touch' | 'none' {
  if (isEnough === null) return 'none';
  return isEnough ? 'clear' : 'touch';
}

function Row({ row, unit }: { readonly row: WantedRow; readonly unit: LengthUnit }) {
  const has = row.has === null ? 'not stated' : amount(row.has, row.unit, unit);
  return (
    <tr data-state={standing(row)}>
      <th scope="row">{row.label}</th>
      <td>{amount(row.demand, row.unit, unit)}</td>
      <td>
        <strong>
          {row.sense === 'exactly' ? '' : `${row.sense} `}
          {amount(row.wanted, row.unit, unit)}
        </strong>
      </td>
      <td className="stops-has">
        {row.isEnough !== null && <Icon name={row.isEnough ? 'clear' : 'touch'} />}
        {has}
        {row.isEnough === false && ', not enough'}
      </td>
    </tr>
  );
}

function Table({ wanted, unit }: { readonly wanted: Wanted; readonly unit: LengthUnit }) {
  if (wanted.fails !== null) {
    return (
      <p className="stops-already">
        The linkage itself cannot reach this travel at every lock: nothing can be told of its parts.
      </p>
    );
  }
  return (
    <>
      <table className="stops-table">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Motion alone</th>
            <th scope="col">With reserve</th>
            <th scope="col">Model has</th>
          </tr>
        </thead>
        <tbody>
          {wanted.rows.map((row) => (
            <Row key={row.key} row={row} unit={unit} />
          ))}
        </tbody>
      </table>
      {wanted.missing.length > 0 && (
        <p>Not told, since the model has no points for: {wanted.missing.join(', ')}.</p>
      )}
      <button
        type="button"
        className="bar-button"
        onClick={() => editModel((model) => withWanted(model, wanted))}
      >
        State this travel and these limits in the model
      </button>
    </>
  );
}

export function WantedTravel() {
  const unit = useStore(view, (state) => state.unit);
  const own = useStore(documentStore, (state) => state.model.travel);
  const wish = useStore(stops, (state) => state.wish);
  const wanted = useStore(stops, (state) => state.wanted);
  const { bump, droop }: Wish = wish ?? own;
  return (
    <section className="stops-wanted">
      <h3>From a wanted travel</h3>
      <div className="stops-wishes">
        <WishField
          label="Bump"
          value={bump}
          unit={unit}
          onTake={(mm) => stops.setWish({ bump: mm, droop })}
        />
        <WishField
          label="Droop"
          value={droop}
          unit={unit}
          onTake={(mm) => stops.setWish({ bump, droop: mm })}
        />
      </div>
      <p className="stops-note">
        Reserves are common practice, no source: 10 mm of shaft left at full bump, the strap tight
        15 mm before the damper tops out, 3° and 5 mm unused elsewhere.
      </p>
      {wanted === null ? (
        <p className="stops-wait">Working out what it needs…</p>
      ) : (
        <Table wanted={wanted} unit={unit} />
      )}
    </section>
  );
}
