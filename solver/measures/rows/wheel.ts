/** Rows of the wheel's alignment, of its steering axis and of what bump does to them. */
import type { MeasureRow } from './row.ts';

export const ALIGNMENT_ROWS: readonly MeasureRow[] = [
  {
    key: 'camber',
    group: 'alignment',
    kind: 'degree',
    label: 'camber',
    explanation:
      'How far the wheel leans from upright, seen from the front: positive when its top leans out, negative when it leans in.',
    sense: { positive: 'top leans out {}', negative: 'top leans in {}', none: 'upright' },
  },
  {
    key: 'caster',
    group: 'alignment',
    kind: 'degree',
    label: 'caster',
    explanation:
      'How far the steering axis leans, seen from the side: positive when its top leans to the rear, negative when it leans forward.',
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
    explanation:
      'Where this one wheel points, seen from above: positive is toe-in, its front edge turned to the centreline; negative is toe-out. With steering lock on, toe is mostly steer.',
    sense: { positive: 'front edge in {}', negative: 'front edge out {}', none: 'straight ahead' },
  },
];

export const STEERING_AXIS_ROWS: readonly MeasureRow[] = [
  {
    key: 'kingpinInclination',
    group: 'steeringAxis',
    kind: 'degree',
    label: 'kingpin inclination',
    explanation:
      'How far the line through both ball joints leans, seen from the front: positive when its top leans to the centreline.',
    sense: { positive: 'axis leans in {}', negative: 'axis leans out {}', none: 'axis upright' },
  },
  {
    key: 'scrubRadius',
    group: 'steeringAxis',
    kind: 'millimetre',
    label: 'scrub radius',
    explanation:
      'Sideways distance on the ground from the steering axis to the middle of the contact patch, square to the wheel as it is steered, so it changes with lock: positive when the contact is outboard.',
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
    explanation:
      'How far the steering axis meets the ground ahead of the contact patch, along the wheel as it is steered: positive when ahead, which pulls the wheel straight.',
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
    explanation:
      'Sideways distance from the steering axis to the wheel centre, at the height of the wheel centre: positive when the centre is outboard.',
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
    explanation:
      'How far the steering axis passes ahead of the wheel centre, at the height of the wheel centre: positive when ahead.',
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
    explanation:
      'How fast toe changes as the wheel rises through this pose, rack held: positive when the front edge goes in. Zero straight ahead is not zero at lock.',
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
    explanation:
      'How fast camber changes as the wheel rises through this pose: positive when the top goes out, negative when it goes in.',
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
    explanation:
      'How fast caster changes as the wheel rises through this pose: positive when the steering axis leans further back.',
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
    explanation:
      'Distance from the vehicle’s centreline to the middle of the contact patch; its change through travel drags the tyre sideways.',
  },
  {
    key: 'trackRate',
    group: 'bump',
    kind: 'ratio',
    label: 'track rate',
    explanation:
      'How fast the contact patch moves sideways as the wheel rises, mm per mm: positive when it goes out.',
    sense: {
      positive: 'contact goes out {} as the wheel rises',
      negative: 'contact goes in {} as the wheel rises',
      none: 'contact holds as the wheel rises',
    },
  },
];
