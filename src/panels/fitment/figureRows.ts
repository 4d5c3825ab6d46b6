/** The rows of figures under the fields: how each is read off a column and told as a difference from the present. */
import { bearingChange } from '../../../solver/fitment/bearing.ts';
import type { FitmentFigures } from '../../../solver/fitment/figures.ts';
import { speedometerError } from '../../../solver/fitment/rolling.ts';
import type { LengthUnit } from '../../state/view.ts';
import { fixed, length, signed, signedLength } from '../../words/format.ts';

/** What a cell says: the figure, and beneath it what it means or by how much it differs. */
export interface CellText {
  readonly figure: string;
  readonly below?: string;
}

/** One column's figures beside the present's, and how lengths are shown. */
export interface RowContext {
  readonly own: FitmentFigures;
  readonly present: FitmentFigures;
  readonly isPresent: boolean;
  readonly unit: LengthUnit;
  /** The bearing's middle inboard of the hub face, mm. */
  readonly bearing: number;
}

export interface FigureRow {
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
  readonly cell: (context: RowContext) => CellText;
}

export interface FigureGroup {
  readonly title: string;
  readonly rows: readonly FigureRow[];
}

const NONE: CellText = { figure: '–' };

/** Differences below this, mm, are none that could be measured. */
const SAME = 0.05;

interface Words {
  readonly more: string;
  readonly less: string;
}

function difference(change: number, unit: LengthUnit, { more, less }: Words): string {
  if (Math.abs(change) < SAME) return 'as now';
  return `${signedLength(change, unit)} ${change > 0 ? more : less}`;
}

/** A length told with its difference; null where the pose it is read at is out of reach. */
function lengthRow(
  key: string,
  label: string,
  read: (figures: FitmentFigures) => number | null,
  words: Words,
  hint?: string,
): FigureRow {
  return {
    key,
    label,
    ...(hint === undefined ? {} : { hint }),
    cell: ({ own, present, isPresent, unit }) => {
      const [value, base] = [read(own), read(present)];
      if (value === null) return NONE;
      const figure = length(value, unit);
      if (isPresent || base === null) return { figure };
      return { figure, below: difference(value - base, unit, words) };
    },
  };
}

function turnsRow(
  key: string,
  label: string,
  read: (figures: FitmentFigures) => number,
): FigureRow {
  return {
    key,
    label,
    cell: ({ own, present, isPresent }) => {
      const figure = fixed(read(own), 1);
      return isPresent ? { figure } : { figure, below: signed(read(own) - read(present), 1) };
    },
  };
}

const SPEEDOMETER: FigureRow = {
  key: 'speedometer',
  label: 'Speedometer',
  hint: 'taken to read true with the present tyre',
  cell: ({ own, present, isPresent }) => {
    if (isPresent) return { figure: 'true' };
    const error = speedometerError(present.overallDiameter, own.overallDiameter);
    if (Math.abs(error) < 0.05) return { figure: 'true', below: 'as now' };
    const actual = (100 * own.overallDiameter) / present.overallDiameter;
    return {
      figure: `${signed(error, 1)} %`,
      below: `reads too ${error > 0 ? 'much' : 'little'}: 100 is ${fixed(actual, 1)}`,
    };
  },
};

const LEVER: FigureRow = {
  key: 'bearing',
  label: 'Bearing’s lever',
  hint: 'from the bearing’s middle to the wheel’s centre plane; no check of strength',
  cell: ({ own, present, isPresent, unit, bearing }) => {
    const { after, change, percent } = bearingChange(present.centrePlane, own.centrePlane, bearing);
    const side = after < 0 ? ' inboard' : '';
    const figure = `${length(Math.abs(after), unit)}${side}`;
    if (isPresent) return { figure };
    if (Math.abs(change) < SAME) return { figure, below: 'as now' };
    const share = percent === null ? 'from next to nothing' : `${signed(percent, 0)} %`;
    return { figure, below: `${signedLength(change, unit)}, ${share}` };
  },
};

const MASS: FigureRow = {
  key: 'mass',
  label: 'Mass of the wheel',
  cell: ({ own, present, isPresent }) => {
    if (own.mass === null) return { figure: '–', below: 'not stated' };
    const figure = `${fixed(own.mass, 1)} kg`;
    if (isPresent || present.mass === null) return { figure };
    const change = own.mass - present.mass;
    if (Math.abs(change) < 0.05) return { figure, below: 'as now' };
    return { figure, below: `${signed(change, 1)} kg ${change > 0 ? 'heavier' : 'lighter'}` };
  },
};

const OUT: Words = { more: 'farther out', less: 'farther in' };
const WIDER: Words = { more: 'wider', less: 'narrower' };
const TALLER: Words = { more: 'taller', less: 'lower' };

export const FIGURE_GROUPS: readonly FigureGroup[] = [
  {
    title: 'Tyre',
    rows: [
      lengthRow('overallDiameter', 'Overall diameter', (own) => own.overallDiameter, TALLER),
      lengthRow('sectionWidth', 'Section width', (own) => own.sectionWidth, WIDER, 'on this rim'),
      lengthRow('loadedRadius', 'Loaded radius', (own) => own.loadedRadius, {
        more: 'vehicle higher',
        less: 'vehicle lower',
      }),
      turnsRow('revolutionsPerKm', 'Revolutions per km', (own) => own.revolutionsPerKm),
      turnsRow('revolutionsPerMile', 'Revolutions per mile', (own) => own.revolutionsPerMile),
      SPEEDOMETER,
    ],
  },
  {
    title: 'Place, from the hub face',
    rows: [
      lengthRow(
        'poke',
        'Outermost',
        ({ places }) => places.outermost,
        { more: 'poke', less: 'tucked in' },
        'of wheel and tyre, outboard of the hub face; the difference is the poke',
      ),
      lengthRow(
        'outerLip',
        'Outer lip',
        ({ places }) => places.outerLip.fromFace,
        OUT,
        'outboard of the hub face',
      ),
      lengthRow(
        'innerLip',
        'Inner lip',
        ({ places }) => -places.innerLip.fromFace,
        { more: 'farther in', less: 'farther out' },
        'inboard of the hub face',
      ),
      lengthRow(
        'innermost',
        'Innermost',
        ({ places }) => -places.innermost,
        { more: 'farther in', less: 'farther out' },
        'of wheel and tyre, inboard of the hub face',
      ),
      lengthRow(
        'lip',
        'Over the lips',
        ({ places }) => 2 * places.innerLip.radius,
        WIDER,
        'diameter of the inner lip',
      ),
      lengthRow(
        'centrePlane',
        'Centre plane',
        (own) => own.centrePlane,
        OUT,
        'outboard of the hub face +, inboard −',
      ),
    ],
  },
  {
    title: 'Steering, at the set pose',
    rows: [
      lengthRow('track', 'Track', (own) => own.track, WIDER, 'at the ground, both wheels'),
      lengthRow(
        'scrubRadius',
        'Scrub radius',
        (own) => own.scrubRadius,
        { more: 'outboard', less: 'inboard' },
        'contact outboard of the steering axis +',
      ),
      lengthRow(
        'casterTrail',
        'Caster trail',
        (own) => own.casterTrail,
        { more: 'longer', less: 'shorter' },
        'axis ahead of the contact +',
      ),
    ],
  },
  { title: 'Hub and bearing', rows: [LEVER, MASS] },
];
