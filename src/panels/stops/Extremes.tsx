/** The worst of every angle and length anywhere in travel × lock, not at the corners only. */
import { useStore } from 'zustand';
import type { Extreme, ExtremePlace } from '../../../solver/index.ts';
import { inputs, view } from '../../state/bench.ts';
import { stops } from '../../state/stopped.ts';
import type { LengthUnit } from '../../state/view.ts';
import { amount, placeWords } from '../../words/margins.ts';

const LABELS: Readonly<Partial<Record<Extreme['key'], string>>> = {
  outerAngle: 'Outer CV angle',
  innerAngle: 'Inner CV angle',
  plunge: 'Half-shaft plunge',
  lowerBallJoint: 'Lower ball joint',
  upperBallJoint: 'Upper ball joint',
  tieRodOuter: 'Tie rod end, outer',
  tieRodInner: 'Tie rod end, inner',
  damperLength: 'Coilover length',
  strapLength: 'Strap’s points apart',
};

interface Row {
  readonly label: string;
  readonly unit: Extreme['unit'];
  readonly place: ExtremePlace;
}

/** Angles have a greatest only; lengths have both ends. */
function rowsOf(extremes: readonly Extreme[]): Row[] {
  return extremes.flatMap(({ key, unit, least, greatest }): Row[] => {
    const label = LABELS[key];
    if (label === undefined) return [];
    if (unit === 'degree') return [{ label, unit, place: greatest }];
    const [low, high] = key === 'plunge' ? ['out', 'in'] : ['least', 'greatest'];
    return [
      { label: `${label}, ${low}`, unit, place: least },
      { label: `${label}, ${high}`, unit, place: greatest },
    ];
  });
}

function ExtremeRow({ row, unit }: { readonly row: Row; readonly unit: LengthUnit }) {
  const { label, place } = row;
  const where = placeWords(place.travel, place.rack, unit);
  return (
    <tr>
      <th scope="row">{label}</th>
      <td>
        <strong>{amount(place.value, row.unit, unit)}</strong>
        {!place.isProven && <small> found, not proven</small>}
      </td>
      <td>
        <button
          type="button"
          className="stops-go"
          aria-label={`Go to the worst of ${label}: ${where}`}
          onClick={() => inputs.move(place.travel, place.rack)}
        >
          {where}
        </button>
      </td>
    </tr>
  );
}

export function Extremes() {
  const extremes = useStore(stops, (state) => state.extremes);
  const unit = useStore(view, (state) => state.unit);
  if (extremes === null) return <p className="stops-wait">Looking for the worst angles…</p>;
  return (
    <section>
      <h3>Worst anywhere in travel and lock</h3>
      <table className="stops-table">
        <tbody>
          {rowsOf(extremes).map((row) => (
            <ExtremeRow key={row.label} row={row} unit={unit} />
          ))}
        </tbody>
      </table>
    </section>
  );
}
