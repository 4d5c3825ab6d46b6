/** Rows of steering, of the half-shaft and of the joints. */
import type { MeasureRow } from './row.ts';

const STRAIGHT = 'none straight ahead';

export const STEERING_ROWS: readonly MeasureRow[] = [
  {
    key: 'steerAngle',
    group: 'steering',
    kind: 'degree',
    label: 'steer angle',
    sense: { positive: 'steers left {}', negative: 'steers right {}', none: 'not steered' },
    absent: 'none: the wheel cannot reach ride height',
  },
  {
    key: 'steerPerRack',
    group: 'steering',
    kind: 'degreePerRackMm',
    label: 'steer per rack',
    sense: {
      positive: 'steers left {} as the rack goes left',
      negative: 'steers right {} as the rack goes left',
      none: 'does not answer the rack',
    },
  },
  {
    key: 'innerSteer',
    group: 'steering',
    kind: 'degree',
    label: 'inner wheel',
    absent: STRAIGHT,
  },
  {
    key: 'outerSteer',
    group: 'steering',
    kind: 'degree',
    label: 'outer wheel',
    absent: STRAIGHT,
  },
  {
    key: 'ackermann',
    group: 'steering',
    kind: 'percent',
    label: 'Ackermann',
    sense: {
      positive: 'inner wheel turns more',
      negative: 'outer wheel turns more',
      none: 'both wheels turn alike',
    },
    needs: ['vehicle.wheelbase'],
    absent: STRAIGHT,
  },
  {
    key: 'turningCircle',
    group: 'steering',
    kind: 'distance',
    label: 'turning circle',
    needs: ['vehicle.wheelbase'],
    absent: STRAIGHT,
  },
];

export const HALF_SHAFT_ROWS: readonly MeasureRow[] = [
  {
    key: 'outerAngle',
    group: 'halfShaft',
    kind: 'degree',
    label: 'half-shaft outer joint',
    needs: ['halfShaft'],
  },
  {
    key: 'innerAngle',
    group: 'halfShaft',
    kind: 'degree',
    label: 'half-shaft inner joint',
    needs: ['halfShaft'],
  },
  {
    key: 'plunge',
    group: 'halfShaft',
    kind: 'millimetre',
    label: 'half-shaft plunge',
    sense: {
      positive: '{} shorter than as designed',
      negative: '{} longer than as designed',
      none: 'as designed',
    },
    needs: ['halfShaft'],
  },
];

export const JOINT_ROWS: readonly MeasureRow[] = [
  {
    key: 'lowerBallJoint',
    group: 'joints',
    kind: 'degree',
    label: 'lower ball joint',
  },
  {
    key: 'upperBallJoint',
    group: 'joints',
    kind: 'degree',
    label: 'upper ball joint',
  },
  {
    key: 'tieRodOuter',
    group: 'joints',
    kind: 'degree',
    label: 'tie rod outer joint',
  },
  {
    key: 'tieRodInner',
    group: 'joints',
    kind: 'degree',
    label: 'tie rod inner joint',
  },
];
