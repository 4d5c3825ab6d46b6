/** The table: fields to type into, and under them the figures of every column beside the present ones. */
import { useStore } from 'zustand';
import { documentStore, view } from '../../state/bench.ts';
import { MOST_CANDIDATES } from '../../state/fitment.ts';
import { fitment } from '../../state/fitted.ts';
import type { LengthUnit } from '../../state/view.ts';
import { Icon } from '../icons.tsx';
import { BearingEntry } from './BearingEntry.tsx';
import type { Column } from './columns.ts';
import { FieldCell } from './FieldCell.tsx';
import { FIELD_SPECS } from './fields.ts';
import type { FigureRow } from './figureRow.ts';
import { FIGURE_GROUPS } from './figureRows.ts';
import { GapRows } from './GapRows.tsx';
import { Group, RowHead } from './Group.tsx';
import { TrialButtons } from './TrialButtons.tsx';

interface TableProps {
  readonly columns: readonly Column[];
}

function Heads({ columns }: TableProps) {
  const isTrial = useStore(fitment, (state) => state.trial !== null);
  return (
    <thead>
      <tr>
        <td className="fitment-corner">
          {columns.length <= MOST_CANDIDATES && (
            <button type="button" className="fitment-button" onClick={() => fitment.add()}>
              Add a candidate
            </button>
          )}
        </td>
        {columns.map(({ key, title, slot }) => (
          <th key={key} scope="col" data-column={key}>
            <span className="fitment-swatch" aria-hidden="true" />
            {slot === null && isTrial ? 'Before the trial' : title}
            {slot !== null && (
              <button
                type="button"
                className="bar-button bar-icon"
                aria-label={`Remove candidate ${slot.name}`}
                title={`Remove candidate ${slot.name}`}
                onClick={() => fitment.remove(slot.name)}
              >
                <Icon name="close" size={14} />
              </button>
            )}
          </th>
        ))}
      </tr>
    </thead>
  );
}

function Fields({ columns, unit }: TableProps & { unit: LengthUnit }) {
  return (
    <Group title="Wheel and tyre" source="fields" width={columns.length}>
      {FIELD_SPECS.map((spec) => (
        <tr key={spec.field} data-field={spec.field}>
          <RowHead label={spec.label} hint={spec.hint} />
          {columns.map((column) => (
            <td key={column.key} data-column={column.key}>
              {column.slot === null ? (
                <span className="fitment-figure">
                  {spec.shown(column.candidate, unit) || '–'} {spec.unitName(unit)}
                </span>
              ) : (
                <FieldCell column={column} slot={column.slot} spec={spec} unit={unit} />
              )}
            </td>
          ))}
        </tr>
      ))}
      <tr>
        <td />
        {columns.map((column) => (
          <td key={column.key}>
            {column.slot !== null && <TrialButtons column={column} name={column.slot.name} />}
          </td>
        ))}
      </tr>
    </Group>
  );
}

function FigureCells({
  row,
  columns,
  unit,
  bearing,
}: TableProps & { row: FigureRow; unit: LengthUnit; bearing: number }) {
  const present = columns[0]?.figures;
  return columns.map(({ key, figures, slot }) => {
    const told =
      !figures || !present
        ? { figure: '–' }
        : row.cell({ own: figures, present, isPresent: slot === null, unit, bearing });
    return (
      <td key={key} data-column={key}>
        <span className="fitment-figure">{told.figure}</span>
        {told.below !== undefined && <small>{told.below}</small>}
      </td>
    );
  });
}

export function FitmentTable({ columns }: TableProps) {
  const unit = useStore(view, (state) => state.unit);
  const bearing = useStore(fitment, (state) => state.bearing);
  const name = useStore(documentStore, (state) => state.model.name);
  const groups = FIGURE_GROUPS.map(({ title, rows }) => (
    <Group key={title} title={title} source={title} width={columns.length}>
      {rows.map((row) => (
        <tr key={row.key} data-figure={row.key}>
          <RowHead label={row.label} hint={row.hint} />
          <FigureCells row={row} columns={columns} unit={unit} bearing={bearing} />
        </tr>
      ))}
      {title === 'Hub and bearing' && (
        <tr>
          <RowHead label="Bearing’s middle" hint="behind the hub face; the same for all" />
          <td colSpan={columns.length}>
            <BearingEntry unit={unit} />
          </td>
        </tr>
      )}
    </Group>
  ));
  const [tyre, ...others] = groups;
  return (
    <table className="fitment-table">
      <caption className="hidden-text">Wheel and tyre of {name} beside candidates</caption>
      <Heads columns={columns} />
      <Fields columns={columns} unit={unit} />
      {tyre}
      <GapRows columns={columns} unit={unit} />
      {others}
    </table>
  );
}
