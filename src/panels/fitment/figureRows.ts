/** The rows of figures under the fields, by group. */
import { bearingChange } from '../../../solver/fitment/bearing.ts';
import { speedometerError } from '../../../solver/fitment/rolling.ts';
import { fixed, length, signed, signedLength } from '../../words/format.ts';
import { difference, type FigureRow, lengthRow, SAME, turnsRow, type Words } from './figureRow.ts';

export interface FigureGroup {
  readonly title: string;
  readonly rows: readonly FigureRow[];
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
      below: `reads too ${error > 0 ? 'much' : 'little'}: at 100 it is ${fixed(actual, 1)}`,
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

const TALLER: Words = { more: 'taller', less: 'lower' };

const OVERALL: FigureRow = {
  key: 'overallDiameter',
  label: 'Overall diameter',
  cell: ({ own, present, isPresent, unit }) => {
    const figure = length(own.overallDiameter, unit);
    const nominal = own.form === 'flotation' ? ['nominal, often less'] : [];
    const change = own.overallDiameter - present.overallDiameter;
    const below = [...(isPresent ? [] : [difference(change, unit, TALLER)]), ...nominal].join('; ');
    return below === '' ? { figure } : { figure, below };
  },
};

const RIM_WORDS = {
  narrow: 'narrower than any rim in one maker’s table',
  within: 'within one maker’s table',
  wide: 'wider than any rim in one maker’s table',
} as const;

const RIM: FigureRow = {
  key: 'rim',
  label: 'Rim to tyre width',
  hint: 'the tyre’s maker says which rims it may be on',
  cell: ({ own: { rim } }) => ({
    figure: fixed(rim.part, 2),
    ...(rim.verdict === null ? {} : { below: RIM_WORDS[rim.verdict] }),
  }),
};

const OUT: Words = { more: 'farther out', less: 'farther in' };
const WIDER: Words = { more: 'wider', less: 'narrower' };

export const FIGURE_GROUPS: readonly FigureGroup[] = [
  {
    title: 'Tyre',
    rows: [
      OVERALL,
      lengthRow('sectionWidth', 'Section width', (own) => own.sectionWidth, WIDER, 'on this rim'),
      RIM,
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
