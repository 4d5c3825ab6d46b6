/** A comparison as CSV: a line for each design at each station, units and signs in the head, numbers unrounded. */
import { columnHead, csvText } from '../measures/fileUnits.ts';
import type { MeasuredDesign } from './measured.ts';
import { COMPARED_ROWS, comparedCell, unreachedWords } from './rows.ts';
import { STATION_LABELS, STATIONS, type Station } from './stations.ts';

export interface NamedDesign {
  readonly name: string;
  readonly measured: MeasuredDesign;
}

/** Smaller than this is what is left over where two designs are the same. */
const NOTHING = 1e-9;

function number(value: number | string): string {
  return typeof value === 'number' ? String(value + 0) : '';
}

function difference(value: number | string, from: number | string): string {
  if (typeof value !== 'number' || typeof from !== 'number') return '';
  return Math.abs(value - from) < NOTHING ? '0' : String(value - from);
}

/** Why numbers are lacking, each reason once. */
function remarks(design: MeasuredDesign, station: Station): string {
  const unreached = unreachedWords(design, station);
  if (unreached !== null) return unreached;
  const cells = COMPARED_ROWS.map((row) => comparedCell(design, station, row));
  return [...new Set(cells.filter((cell) => typeof cell === 'string'))].join('; ');
}

function lineOf(designs: readonly NamedDesign[], index: number, base: number, station: Station) {
  const { name, measured } = designs[index]!;
  const other = designs[base]!.measured;
  const cells = COMPARED_ROWS.map((row) => comparedCell(measured, station, row));
  const differences = COMPARED_ROWS.map((row, at) =>
    index === base ? '' : difference(cells[at]!, comparedCell(other, station, row)),
  );
  const label = STATION_LABELS[station];
  return [name, label, ...cells.map(number), ...differences, remarks(measured, station)];
}

/**
 * The whole comparison. After the values come the differences from the design at place `base`, then what is lacking and
 * why. RFC 4180, lines ended by a line feed.
 */
export function comparisonCsv(designs: readonly NamedDesign[], base: number): string {
  const from = `, difference from ${designs[base]?.name ?? ''}`;
  const head = [
    'design',
    'station',
    ...COMPARED_ROWS.map((row) => columnHead(row)),
    ...COMPARED_ROWS.map((row) => columnHead(row, from)),
    'lacking',
  ];
  const lines = STATIONS.flatMap((station) =>
    designs.map((_, index) => lineOf(designs, index, base, station)),
  );
  return csvText([head, ...lines]);
}
