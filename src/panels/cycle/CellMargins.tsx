/** Every margin of one cell, the least to spare first. */
import type { CycleCell, CycleMargin } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { marginWords, placeWords } from '../../words/margins.ts';
import { Icon, type IconName } from '../icons.tsx';

const MARKS: Readonly<
  Record<CycleMargin['standing'], { readonly word: string; readonly icon: IconName | null }>
> = {
  pass: { word: 'pass', icon: 'clear' },
  near: { word: 'near', icon: 'warn' },
  contact: { word: 'contact', icon: 'touch' },
  meant: { word: 'met by what this place is', icon: null },
};

/** What is to spare in units of what is wanted. */
function share({ margin, value }: CycleMargin): number {
  return margin.near > 0 ? value / margin.near : value;
}

export function CellMargins({
  cell,
  unit,
}: {
  readonly cell: CycleCell;
  readonly unit: LengthUnit;
}) {
  const { travel, rack, isReached, lastTravel, lastRack } = cell;
  const place = placeWords(travel, rack, unit);
  if (!isReached) {
    return (
      <section className="cycle-margins">
        <h3>{place}</h3>
        <p>
          Out of the linkage’s reach; the last reachable place on the way is{' '}
          {placeWords(lastTravel, lastRack, unit)}.
        </p>
      </section>
    );
  }
  const margins = [...cell.margins].sort((a, b) => share(a) - share(b));
  return (
    <section className="cycle-margins">
      <h3>{place}</h3>
      <table>
        <tbody>
          {margins.map(({ margin, value, standing }) => {
            const { word, icon } = MARKS[standing];
            return (
              <tr key={margin.key} data-state={standing}>
                <td className="cycle-mark">
                  {icon !== null && <Icon name={icon} />}
                  {word}
                </td>
                <th scope="row">{margin.label}</th>
                <td>{marginWords(margin, value, unit)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
