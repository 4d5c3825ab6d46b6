/** Rows of steering, of the half-shaft and of the joints. */
import type { MeasureRow } from './row.ts';

const STRAIGHT = 'none straight ahead';

export const STEERING_ROWS: readonly MeasureRow[] = [
  {
    key: 'steerAngle',
    group: 'steering',
    kind: 'degree',
    label: 'steer angle',
    explanation:
      'How far this wheel has turned from where it points at ride height with the rack centred: positive to the left.',
    sense: { positive: 'steers left {}', negative: 'steers right {}', none: 'not steered' },
    absent: 'none: the wheel cannot reach ride height',
  },
  {
    key: 'steerPerRack',
    group: 'steering',
    kind: 'degreePerRackMm',
    label: 'steer per rack',
    explanation:
      'How fast the wheel turns as the rack moves to the left, travel held: positive when it turns left. It differs from lock to lock.',
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
    explanation: 'Steer angle of the wheel on the inside of the turn, both wheels at this travel.',
    absent: STRAIGHT,
  },
  {
    key: 'outerSteer',
    group: 'steering',
    kind: 'degree',
    label: 'outer wheel',
    explanation: 'Steer angle of the wheel on the outside of the turn, both wheels at this travel.',
    absent: STRAIGHT,
  },
  {
    key: 'ackermann',
    group: 'steering',
    kind: 'percent',
    label: 'Ackermann',
    explanation:
      '100 % when both wheels roll about one centre on the rear axle’s line, 0 % when they turn alike, negative when the outer one turns more.',
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
    explanation:
      'Diameter of the circle that the middle of the outer front contact patch rolls at this lock, without slip.',
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
    explanation:
      'Angle between the half-shaft and the hub’s axis, steer and droop together: not what the shaft’s slope shows from the front.',
    needs: ['halfShaft'],
  },
  {
    key: 'innerAngle',
    group: 'halfShaft',
    kind: 'degree',
    label: 'half-shaft inner joint',
    explanation: 'Angle between the half-shaft and the axis of its inner joint on the body.',
    needs: ['halfShaft'],
  },
  {
    key: 'plunge',
    group: 'halfShaft',
    kind: 'millimetre',
    label: 'half-shaft plunge',
    explanation:
      'How much shorter the half-shaft is than in the design pose: positive when it is pushed in, negative when it is drawn out.',
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
    explanation:
      'Angle between the stud in the knuckle and the axis of the housing in the lower arm.',
  },
  {
    key: 'upperBallJoint',
    group: 'joints',
    kind: 'degree',
    label: 'upper ball joint',
    explanation:
      'Angle between the stud in the knuckle and the axis of the housing in the upper arm.',
  },
  {
    key: 'tieRodOuter',
    group: 'joints',
    kind: 'degree',
    label: 'tie rod outer joint',
    explanation:
      'Angle between the tie rod end’s stud in the knuckle and the axis of its housing on the rod.',
  },
  {
    key: 'tieRodInner',
    group: 'joints',
    kind: 'degree',
    label: 'tie rod inner joint',
    explanation: 'Angle between the tie rod and the line the rack moves along.',
  },
];
