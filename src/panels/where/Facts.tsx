/** What places come to, side by side: one row a number, with what its sign means. */
import { type Fact, inWords } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { figureNumber, figureSteps, figureStyle } from '../../words/figures.ts';
import { gapUnit } from '../../words/format.ts';

/** The number with its unit; a dash where there is none. */
export function factText({ value, kind }: Fact, unit: LengthUnit): string {
  if (value === null) return '–';
  // Lengths to be cut, and gaps: never rounded to sixteenths.
  const style = figureStyle(kind, kind === 'millimetre' ? gapUnit(unit) : unit);
  return `${figureNumber(figureSteps(value, style), style)}${style.unit}`;
}

/** What a number's sign means. */
function wordsOf({ key, row, value }: Fact): string | undefined {
  if (value === null) return undefined;
  if (key === 'wheelGap' && value <= 0) return 'they meet: less than none';
  return row === undefined ? undefined : inWords(row, value);
}

function Row({ facts, unit }: { readonly facts: readonly Fact[]; readonly unit: LengthUnit }) {
  const last = facts.at(-1)!;
  const words = wordsOf(last);
  return (
    <tr data-fact={last.key}>
      <th scope="row">
        {last.label}
        {words !== undefined && <small>{words}</small>}
      </th>
      {facts.map((fact, n) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: columns stand still.
        <td key={n}>{factText(fact, unit)}</td>
      ))}
    </tr>
  );
}

/** `columns` are facts of places about the same subject; the words belong to the last column. */
export function FactRows({
  columns,
  unit,
}: {
  readonly columns: readonly (readonly Fact[])[];
  readonly unit: LengthUnit;
}) {
  return columns[0]!.map((fact, n) => (
    <Row key={fact.key} facts={columns.map((column) => column[n]!)} unit={unit} />
  ));
}
