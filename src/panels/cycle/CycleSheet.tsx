/** The work sheet of the cycle: five heights by three locks, every margin of each, the worst marked. */
import './cycleSheet.css';
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { CycleCell, CycleGrid, CycleHeight } from '../../../solver/index.ts';
import { inputs, view } from '../../state/bench.ts';
import { stops } from '../../state/stopped.ts';
import type { LengthUnit } from '../../state/view.ts';
import { signedLength } from '../../words/format.ts';
import { marginWords } from '../../words/margins.ts';
import { Icon, type IconName } from '../icons.tsx';
import { CellMargins } from './CellMargins.tsx';

const KINDS = ['cycle'] as const;

export const STANDINGS: Readonly<
  Record<CycleCell['standing'], { readonly word: string; readonly icon: IconName }>
> = {
  pass: { word: 'pass', icon: 'clear' },
  near: { word: 'near', icon: 'warn' },
  contact: { word: 'contact', icon: 'touch' },
};

const LOCKS = { left: 'Left lock', straight: 'Straight', right: 'Right lock' } as const;

function keyOf({ height, lock }: CycleCell): string {
  return `${height}/${lock}`;
}

function Cell({
  cell,
  isWorst,
  isChosen,
  unit,
  onChoose,
}: {
  readonly cell: CycleCell;
  readonly isWorst: boolean;
  readonly isChosen: boolean;
  readonly unit: LengthUnit;
  readonly onChoose: () => void;
}) {
  const { word, icon } = STANDINGS[cell.standing];
  const { worst } = cell;
  return (
    <td>
      <button
        type="button"
        className="cycle-cell"
        data-state={cell.standing}
        data-worst={isWorst || undefined}
        aria-pressed={isChosen}
        onClick={onChoose}
      >
        <span className="cycle-mark">
          <Icon name={icon} />
          {word}
          {isWorst && <b>worst</b>}
        </span>
        {cell.isReached ? (
          worst !== null && (
            <>
              <strong>{worst.margin.label}</strong>
              <span>{marginWords(worst.margin, worst.value, unit)}</span>
            </>
          )
        ) : (
          <strong>out of reach</strong>
        )}
      </button>
    </td>
  );
}

function HeightHead({ height, unit }: { readonly height: CycleHeight; readonly unit: LengthUnit }) {
  return (
    <th scope="row" title={height.because}>
      {height.label}
      <small>{signedLength(height.travel, unit, 0)}</small>
    </th>
  );
}

function summary({ cells }: CycleGrid): string {
  const count = (standing: CycleCell['standing']): number =>
    cells.filter((cell) => cell.standing === standing).length;
  return `${count('contact')} contact, ${count('near')} near, ${count('pass')} pass, of ${cells.length} cells.`;
}

function Grid({ grid, unit }: { readonly grid: CycleGrid; readonly unit: LengthUnit }) {
  const [chosen, setChosen] = useState<string | null>(null);
  const choose = (cell: CycleCell): void => {
    setChosen(keyOf(cell));
    inputs.play(null);
    inputs.move(cell.travel, cell.rack);
  };
  const racks = grid.racks.filter(({ rack }) => rack !== null);
  const shown = grid.cells.find((cell) => keyOf(cell) === chosen) ?? grid.worst;
  return (
    <>
      <p className="cycle-summary" aria-live="polite">
        {summary(grid)}
        {racks.length < 3 && ' The model states no steering limit: straight ahead only.'}
      </p>
      <table className="cycle-grid">
        <thead>
          <tr>
            <td />
            {racks.map(({ lock, rack }) => (
              <th key={lock} scope="col">
                {LOCKS[lock]}
                <small>rack {signedLength(rack ?? 0, unit, 0)}</small>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {grid.heights.map((height) => (
            <tr key={height.height}>
              <HeightHead height={height} unit={unit} />
              {grid.cells
                .filter((cell) => cell.height === height.height)
                .map((cell) => (
                  <Cell
                    key={cell.lock}
                    cell={cell}
                    unit={unit}
                    isWorst={cell === grid.worst}
                    isChosen={cell === shown}
                    onChoose={() => choose(cell)}
                  />
                ))}
            </tr>
          ))}
        </tbody>
      </table>
      {shown !== null && <CellMargins cell={shown} unit={unit} />}
      <ul className="cycle-because">
        {grid.heights.map(({ height, label, because }) => (
          <li key={height}>
            {label}: {because}
          </li>
        ))}
      </ul>
    </>
  );
}

export default function CycleSheet() {
  useEffect(() => stops.watch(KINDS), []);
  const grid = useStore(stops, (state) => state.cycle);
  const isPending = useStore(stops, (state) => state.pending.has('cycle'));
  const unit = useStore(view, (state) => state.unit);
  return (
    <div className="cycle" aria-busy={isPending}>
      {grid === null ? <p>Cycling the corner…</p> : <Grid grid={grid} unit={unit} />}
      <p className="cycle-caution">
        Near: less than 3° or 5 mm unused (common practice, no source), or less than the gap wanted
        of a pair. A cycle on the vehicle with the real parts, springs out, comes before anything is
        welded for good.
      </p>
    </div>
  );
}
