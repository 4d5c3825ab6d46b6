/** The rows of a comparison: what is compared, in what unit, and what stands where there is no number. */
import type { Outcome } from '../linkage/solve.ts';
import type { Sense, UnitKind } from '../measures/rows/row.ts';
import { MEASURE_TABLE, type MeasureGroup, missingParts } from '../measures/table.ts';
import type { ComparedKey, MeasuredDesign } from './measured.ts';
import type { Station } from './stations.ts';

export type ComparedGroup = MeasureGroup | 'place' | 'gaps';

export const GROUP_TITLES: Readonly<Record<ComparedGroup, string>> = {
  place: 'Place',
  alignment: 'Alignment',
  steeringAxis: 'Steering axis',
  bump: 'Bump',
  springing: 'Springing',
  centres: 'Centres',
  steering: 'Steering',
  halfShaft: 'Half-shaft',
  joints: 'Joints',
  gaps: 'Gaps of the tie rod',
};

export interface ComparedRow {
  readonly key: ComparedKey;
  readonly group: ComparedGroup;
  readonly kind: UnitKind;
  readonly label: string;
  readonly sense?: Sense;
  readonly needs?: readonly string[];
  readonly absent?: string;
}

const APART: Sense = { positive: 'apart {}', negative: 'overlap {}', none: 'touching' };

/** Every row, in the order people read them. */
export const COMPARED_ROWS: readonly ComparedRow[] = [
  {
    key: 'travel',
    group: 'place',
    kind: 'millimetre',
    label: 'travel',
    sense: { positive: 'wheel up {}', negative: 'wheel down {}', none: 'as measured' },
  },
  {
    key: 'rack',
    group: 'place',
    kind: 'millimetre',
    label: 'rack',
    sense: { positive: 'to the left {}', negative: 'to the right {}', none: 'centred' },
  },
  ...MEASURE_TABLE,
  { key: 'wheelGap', group: 'gaps', kind: 'millimetre', label: 'tie rod to wheel', sense: APART },
  { key: 'tyreGap', group: 'gaps', kind: 'millimetre', label: 'tie rod to tyre', sense: APART },
];

/** Words for what a model lacks, by its key. */
const LACKING: Readonly<Record<string, string>> = {
  coilover: 'no coilover',
  'coilover.springRate': 'no spring rate',
  'coilover.designForce': 'no design force',
  antiRollBar: 'no anti-roll bar',
  strap: 'no strap',
  halfShaft: 'no half-shaft',
  vehicle: 'no vehicle data',
  'vehicle.wheelbase': 'no wheelbase',
  'vehicle.cornerMass': 'no corner mass',
};

/** A part before its keys: without a coilover nobody misses its spring rate. */
function lacking(design: MeasuredDesign, row: ComparedRow): string | null {
  const [first] = missingParts(design.model, row);
  if (first === undefined) return null;
  const [part = first] = first.split('.');
  const isPartThere = Object.hasOwn(design.model, part);
  return LACKING[isPartThere ? first : part] ?? `no ${first}`;
}

const PARTS: Readonly<Record<Exclude<Outcome, 'reached'>, string>> = {
  lowerArm: 'lower arm',
  upperArm: 'upper arm',
  tieRod: 'tie rod',
};

/** "out of reach: the tie rod cannot keep its length"; null for a station that is reached. */
export function unreachedWords({ stations }: MeasuredDesign, station: Station): string | null {
  const { place, outcome } = stations[station];
  if (place === null) return 'no steering limit stated';
  if (outcome === 'reached') return null;
  return `out of reach: the ${PARTS[outcome]} cannot keep its length`;
}

/** The number of a row, or words for why there is none. */
export function comparedCell(
  design: MeasuredDesign,
  station: Station,
  row: ComparedRow,
): number | string {
  const { place, outcome, values } = design.stations[station];
  const value = values.get(row.key);
  if (value !== undefined) return value;
  if (place === null) return 'no lock stated';
  const part = lacking(design, row);
  if (part !== null) return part;
  if (outcome !== 'reached') return 'out of reach';
  // The station says which pose it is.
  return (row.absent ?? 'none').replace(/ in this pose$/, '');
}
