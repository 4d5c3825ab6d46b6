/** The cut list of one side, with what is to be deducted at the ends. */
import type { Allowances } from '../../../solver/index.ts';
import { saveText } from '../../files/save.ts';
import { type CutTable, cutListCsv } from '../../paper/drawing/drawings.ts';
import type { LengthUnit } from '../../state/view.ts';
import { LengthField } from '../LengthField.tsx';

const ALLOWED: readonly (readonly [keyof Allowances, string])[] = [
  ['pivot', 'at a pivot'],
  ['ball', 'at a ball joint'],
  ['rodEnd', 'at a rod end'],
];

export function CutList({
  table,
  allowances,
  unit,
  name,
  onAllow,
}: {
  readonly table: CutTable;
  readonly allowances: Allowances;
  readonly unit: LengthUnit;
  readonly name: string;
  readonly onAllow: (allowances: Allowances) => void;
}) {
  return (
    <div className="cut-list">
      <h3>Cut list, one side</h3>
      <fieldset>
        <legend>To be left off a tube, from the joint’s centre</legend>
        {ALLOWED.map(([key, words]) => (
          <LengthField
            key={key}
            label={words}
            value={allowances[key]}
            unit={unit}
            mayBeNone
            onTake={(mm) => onAllow({ ...allowances, [key]: mm })}
          />
        ))}
      </fieldset>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys. */}
      <section className="cut-list-scroll" tabIndex={0} aria-label="Cut list">
        <table>
          <thead>
            <tr>
              {table.heads.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map(([piece, ...cells]) => (
              <tr key={piece}>
                <th scope="row">{piece}</th>
                {cells.map((cell, at) => (
                  <td key={table.heads[at + 1]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <button
        type="button"
        className="bar-button"
        onClick={() => saveText(cutListCsv(table), `${name}-cut-list.csv`, 'text/csv')}
      >
        Save as CSV
      </button>
    </div>
  );
}
