/** The numbers behind the large curves: swept, in the unit shown for the eye, and as CSV in the contract's own units. */
import type { UnitKind } from '../../solver/index.ts';
import type { Sweep, SweepKey } from '../../solver/sweep.ts';
import type { LengthUnit } from '../state/view.ts';
import { figureStyle } from '../words/figures.ts';
import { lengthUnitName } from '../words/format.ts';
import { type SweepRow, sweepRow } from './sweepRows.ts';

/** What the curves run along. */
export type Along = 'travel' | 'rack';

/** Units of the numbers in a file, whatever the page shows. */
const FILE_UNITS: Readonly<Record<UnitKind, string>> = {
  degree: 'deg',
  millimetre: 'mm',
  distance: 'mm',
  degreePerMm: 'deg/mm',
  degreePerRackMm: 'deg/mm',
  ratio: '1',
  perMm: '1/mm',
  percent: '%',
  newton: 'N',
  newtonPerMm: 'N/mm',
  hertz: 'Hz',
};

/** A field of a CSV line (RFC 4180). */
function field(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function bare(words: string): string {
  return words.replace(/ ?\{\}/, '').trim();
}

/** "camber [deg; + top leans out, - top leans in]". */
function header({ label, kind, sense }: SweepRow, whose: string): string {
  const signs = sense === undefined ? '' : `; + ${bare(sense.positive)}, - ${bare(sense.negative)}`;
  return `${label}${whose} [${FILE_UNITS[kind]}${signs}]`;
}

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

/** The sweep's columns as CSV: units and signs in the first line, nothing where there is no number. */
export function curvesCsv(
  along: Along,
  at: number,
  keys: readonly SweepKey[],
  present: Sweep,
  held: Sweep | null,
): string {
  const other: Along = along === 'travel' ? 'rack' : 'travel';
  const rows = keys.map(sweepRow);
  const names = rows.flatMap((row) =>
    held === null ? [header(row, '')] : [header(row, ''), header(row, ', held')],
  );
  const lines = [[AXES[along], AXES[other], ...names].map(field).join(',')];
  for (let i = 0; i < present.axis.length; i += 1) {
    const values = keys.flatMap((key) => {
      const own = number(present.columns[key][i]!);
      return held === null ? [own] : [own, number(held.columns[key][i]!)];
    });
    lines.push([number(present.axis[i]!), number(at), ...values].join(','));
  }
  return `${lines.join('\n')}\n`;
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
