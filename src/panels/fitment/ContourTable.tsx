/** The contour's points as numbers, for typing what was measured. */
import { useState } from 'react';
import type { SectionPoint } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { enteredLength } from '../../words/entry.ts';
import { lengthUnitName, toShown } from '../../words/format.ts';
import { useDraft } from '../points/useDraft.ts';
import { type Contour, divided, moved } from './contour.ts';

interface CellProps {
  readonly contour: Contour;
  readonly index: number;
  readonly axis: 0 | 1;
  readonly unit: LengthUnit;
  readonly label: string;
  readonly onMessage: (message: string | null) => void;
}

function Cell({ contour, index, axis, unit, label, onMessage }: CellProps) {
  const point = contour.points[index] ?? [0, 0];
  const draft = useDraft(
    String(Number(toShown(point[axis], unit).toFixed(3))).replace('-', '−'),
    (text) => {
      const entered = enteredLength(text, unit);
      const to: SectionPoint =
        axis === 0
          ? [entered.ok ? entered.value : 0, point[1]]
          : [point[0], entered.ok ? entered.value : 0];
      const why = entered.ok ? contour.set(moved(contour.points, index, to)) : entered.why;
      onMessage(why);
      return why === null;
    },
    () => onMessage(null),
  );
  return (
    <input
      type="text"
      autoComplete="off"
      aria-label={label}
      data-draft={draft.isOpen || undefined}
      value={draft.text}
      onChange={(event) => draft.type(event.target.value)}
      onKeyDown={draft.onKeyDown}
      onBlur={draft.enter}
    />
  );
}

function Row({ contour, index, unit }: { contour: Contour; index: number; unit: LengthUnit }) {
  const [message, setMessage] = useState<string | null>(null);
  const { points } = contour;
  const number = index + 1;
  const words = `contour point ${number}`;
  return (
    <tr>
      <th scope="row">{number}</th>
      <td>
        <Cell
          contour={contour}
          index={index}
          axis={0}
          unit={unit}
          label={`Outboard of the centre plane, ${words}`}
          onMessage={setMessage}
        />
      </td>
      <td>
        <Cell
          contour={contour}
          index={index}
          axis={1}
          unit={unit}
          label={`Radius, ${words}`}
          onMessage={setMessage}
        />
      </td>
      <td className="fitment-point-buttons">
        <button
          type="button"
          className="fitment-button"
          disabled={index === points.length - 1}
          aria-label={`Add a point behind ${words}`}
          onClick={() => contour.set(divided(points, index))}
        >
          Add
        </button>
        <button
          type="button"
          className="fitment-button"
          disabled={points.length <= 2}
          aria-label={`Remove ${words}`}
          onClick={() => contour.set(points.filter((_, i) => i !== index))}
        >
          Remove
        </button>
        {message !== null && (
          <p className="fitment-refusal" role="alert">
            {message}
          </p>
        )}
      </td>
    </tr>
  );
}

export function ContourTable({ contour, unit }: { contour: Contour; unit: LengthUnit }) {
  return (
    <div className="fitment-contour">
      <p>
        The metal’s middle from inner to outer lip.{' '}
        {contour.isDrawn
          ? 'Drawn: these points are the wheel’s own.'
          : 'Not drawn: this is the default for the rim’s size (barrel depths common practice, no source). Moving a point draws it.'}
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">Point</th>
            <th scope="col">Outboard of the centre plane, {lengthUnitName(unit)}</th>
            <th scope="col">Radius, {lengthUnitName(unit)}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {contour.points.map((_, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the list.
            <Row key={index} contour={contour} index={index} unit={unit} />
          ))}
        </tbody>
      </table>
      <button
        type="button"
        className="fitment-button"
        disabled={!contour.isDrawn}
        onClick={() => contour.set(null)}
      >
        Back to the default contour
      </button>
    </div>
  );
}
