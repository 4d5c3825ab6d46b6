/** The numbers behind the large curves: swept, in the unit shown for the eye, and as CSV in the contract's own units. */
import { columnHead, csvText } from '../../solver/measures/fileUnits.ts';
import type { Sweep, SweepKey } from '../../solver/sweep.ts';
import { figureStyle } from '../words/figures.ts';
import { lengthUnitName } from '../words/format.ts';
import type { LengthUnit } from '../words/lengthUnit.ts';
import { sweepRow } from './sweepRows.ts';

/** What the curves run along. */
export type Along = 'travel' | 'rack';

const AXES: Readonly<Record<Along, string>> = {
  travel: 'travel [mm; + wheel up, - wheel down]',
  rack: 'rack [mm; + to the left, - to the right]',
};

/** Digits that count: a micrometre in ten metres, and far more than anything on a vehicle is measured to. */
const DIGITS = 9;
/** Smaller than this is what is left over where 0 is meant. */
const NOTHING = 1e-9;

function number(value: number): string {
  if (!Number.isFinite(value)) return '';
  return Math.abs(value) < NOTHING ? '0' : String(Number(value.toPrecision(DIGITS)));
}

/** A design beside the present one, by its name. */
export interface NamedSweep {
  readonly name: string;
  readonly sweep: Sweep;
}

/** The sweeps' columns as CSV: units and signs in the first line, nothing where there is no number. */
export function curvesCsv(
  along: Along,
  at: number,
  keys: readonly SweepKey[],
  present: Sweep,
  beside: readonly NamedSweep[],
): string {
  const other: Along = along === 'travel' ? 'rack' : 'travel';
  const names = keys
    .map(sweepRow)
    .flatMap((row) => [columnHead(row), ...beside.map(({ name }) => columnHead(row, `, ${name}`))]);
  const lines = [[AXES[along], AXES[other], ...names]];
  const sweeps = [present, ...beside.map(({ sweep }) => sweep)];
  for (let i = 0; i < present.axis.length; i += 1) {
    const values = keys.flatMap((key) => sweeps.map(({ columns }) => number(columns[key][i]!)));
    lines.push([number(present.axis[i]!), number(at), ...values]);
  }
  return csvText(lines);
}

/** "travel, mm" and "camber, °": what the axes of a chart count. */
export function axisNames(
  along: Along,
  key: SweepKey,
  unit: LengthUnit,
): readonly [across: string, up: string] {
  const { kind, label } = sweepRow(key);
  // Charts are drawn in decimal inches where sixteenths are shown: their ticks are no sixteenths.
  const counted = figureStyle(kind, unit).unit.trim();
  return [`${along}, ${lengthUnitName(unit)}`, counted === '' ? label : `${label}, ${counted}`];
}
