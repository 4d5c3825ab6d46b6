/** The points that a length or a width was read between: those of the design, and the one that is chosen. */
import {
  POINT_TABLE,
  READ_POINTS,
  type ReadPoint,
  readPoints,
} from '../../../solver/fit/points.ts';
import type { FitRow } from '../../state/fitRows.ts';
import { fits } from '../../state/refitted.ts';
import { useSettledModel } from '../useSettledModel.ts';

function PointChoice({
  row,
  place,
  number,
}: {
  readonly row: FitRow;
  readonly place: 0 | 1;
  readonly number: number;
}) {
  const model = useSettledModel();
  const has = readPoints(model);
  const points = READ_POINTS.filter((point) => has.includes(point) || point === row.between[place]);
  const choose = (point: ReadPoint): void => {
    const [one, other] = row.between;
    fits.change(row.id, { between: place === 0 ? [point, other] : [one, point] });
  };
  return (
    <select
      aria-label={`Reading ${number}: ${place === 0 ? 'from' : 'to'}`}
      value={row.between[place]}
      onChange={(event) => choose(event.target.value as ReadPoint)}
    >
      {points.map((point) => (
        <option key={point} value={point}>
          {POINT_TABLE[point].label}
        </option>
      ))}
    </select>
  );
}

export function BetweenPoints({ row, number }: { readonly row: FitRow; readonly number: number }) {
  return (
    <span className="fit-between">
      <PointChoice row={row} place={0} number={number} />
      <span>to</span>
      {row.quantity === 'width' ? (
        <span>the other side’s</span>
      ) : (
        <PointChoice row={row} place={1} number={number} />
      )}
    </span>
  );
}
