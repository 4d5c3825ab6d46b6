/** Rows of the wheel's alignment, of its steering axis and of what bump does to them. */
import type { MeasureRow } from './row.ts';

export const ALIGNMENT_ROWS: readonly MeasureRow[] = [
  {
    key: 'camber',
    group: 'alignment',
    kind: 'degree',
    label: 'camber',
    sense: { positive: 'top leans out {}', negative: 'top leans in {}', none: 'upright' },
  },
  {
    key: 'caster',
    group: 'alignment',
    kind: 'degree',
    label: 'caster',
    sense: {
      positive: 'axis leans back {}',
      negative: 'axis leans forward {}',
      none: 'axis upright',
    },
  },
  {
    key: 'toe',
    group: 'alignment',
    kind: 'degree',
    label: 'toe',
    sense: { positive: 'front edge in {}', negative: 'front edge out {}', none: 'straight ahead' },
  },
];

export const STEERING_AXIS_ROWS: readonly MeasureRow[] = [
  {
    key: 'kingpinInclination',
    group: 'steeringAxis',
    kind: 'degree',
    label: 'kingpin inclination',
    sense: { positive: 'axis leans in {}', negative: 'axis leans out {}', none: 'axis upright' },
  },
  {
    key: 'scrubRadius',
    group: 'steeringAxis',
    kind: 'millimetre',
    label: 'scrub radius',
    sense: {
      positive: 'contact {} outboard of the axis',
      negative: 'contact {} inboard of the axis',
      none: 'contact beside the axis',
    },
  },
  {
    key: 'casterTrail',
    group: 'steeringAxis',
    kind: 'millimetre',
    label: 'caster trail',
    sense: {
      positive: 'axis {} ahead of the contact',
      negative: 'axis {} behind the contact',
      none: 'axis level with the contact',
    },
  },
  {
    key: 'spindleOffset',
    group: 'steeringAxis',
    kind: 'millimetre',
    label: 'spindle offset',
    sense: {
      positive: 'centre {} outboard of the axis',
      negative: 'centre {} inboard of the axis',
      none: 'centre beside the axis',
    },
  },
  {
    key: 'spindleTrail',
    group: 'steeringAxis',
    kind: 'millimetre',
    label: 'spindle trail',
    sense: {
      positive: 'axis {} ahead of the centre',
      negative: 'axis {} behind the centre',
      none: 'axis level with the centre',
    },
  },
];

export const BUMP_ROWS: readonly MeasureRow[] = [
  {
    key: 'bumpSteer',
    group: 'bump',
    kind: 'degreePerMm',
    label: 'bump steer',
    sense: {
      positive: 'front edge goes in {} as the wheel rises',
      negative: 'front edge goes out {} as the wheel rises',
      none: 'toe holds as the wheel rises',
    },
  },
  {
    key: 'bumpCamber',
    group: 'bump',
    kind: 'degreePerMm',
    label: 'bump camber',
    sense: {
      positive: 'top goes out {} as the wheel rises',
      negative: 'top goes in {} as the wheel rises',
      none: 'camber holds as the wheel rises',
    },
  },
  {
    key: 'bumpCaster',
    group: 'bump',
    kind: 'degreePerMm',
    label: 'bump caster',
    sense: {
      positive: 'axis leans back {} as the wheel rises',
      negative: 'axis leans forward {} as the wheel rises',
      none: 'caster holds as the wheel rises',
    },
  },
  {
    key: 'halfTrack',
    group: 'bump',
    kind: 'millimetre',
    label: 'half track',
  },
  {
    key: 'trackRate',
    group: 'bump',
    kind: 'ratio',
    label: 'track rate',
    sense: {
      positive: 'contact goes out {} as the wheel rises',
      negative: 'contact goes in {} as the wheel rises',
      none: 'contact holds as the wheel rises',
    },
  },
];
