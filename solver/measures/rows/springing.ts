/** Rows of the spring, the damper, the strap and the anti-roll bar, and of the instant centres. */
import type { MeasureRow } from './row.ts';

const SPRING = ['coilover.springRate', 'coilover.designForce'];

export const SPRINGING_ROWS: readonly MeasureRow[] = [
  {
    key: 'damperLength',
    group: 'springing',
    kind: 'millimetre',
    label: 'damper length',
    explanation: 'Distance between the coilover’s two mountings, centre to centre.',
    needs: ['coilover'],
  },
  {
    key: 'motionRatio',
    group: 'springing',
    kind: 'ratio',
    label: 'motion ratio',
    explanation:
      'Damper movement per wheel movement: 0.6 means that the damper moves 0.6 mm for 1 mm at the wheel. Some quote the inverse.',
    sense: {
      positive: 'damper movement {} / wheel movement',
      negative: 'damper opens {} in bump',
      none: 'damper stands still',
    },
    needs: ['coilover'],
  },
  {
    key: 'motionRatioRate',
    group: 'springing',
    kind: 'perMm',
    label: 'motion ratio rate',
    explanation:
      'How fast the motion ratio grows as the wheel rises, per mm: positive stiffens the corner in bump.',
    sense: {
      positive: 'grows {} as the wheel rises',
      negative: 'falls {} as the wheel rises',
      none: 'motion ratio holds as the wheel rises',
    },
    needs: ['coilover'],
  },
  {
    key: 'springForce',
    group: 'springing',
    kind: 'newton',
    label: 'spring force',
    explanation:
      'Push of the spring in this pose, from its force in the design pose and its rate; 0 when it hangs loose.',
    needs: SPRING,
  },
  {
    key: 'wheelRate',
    group: 'springing',
    kind: 'newtonPerMm',
    label: 'wheel rate',
    explanation:
      'Stiffness felt at the wheel: spring rate times motion ratio squared, plus what the changing ratio adds.',
    needs: SPRING,
  },
  {
    key: 'rideFrequency',
    group: 'springing',
    kind: 'hertz',
    label: 'ride frequency',
    explanation:
      'How often the body would bounce in a second on this wheel rate, with the corner’s sprung mass, undamped.',
    needs: [...SPRING, 'vehicle.cornerMass'],
    absent: 'none: the wheel rate is not positive',
  },
  {
    key: 'barMotionRatio',
    group: 'springing',
    kind: 'ratio',
    label: 'bar motion ratio',
    explanation:
      'Movement of the anti-roll bar’s lever end per wheel movement: positive when the lever end turns upward with the wheel.',
    sense: {
      positive: 'lever end rises {} with the wheel',
      negative: 'lever end falls {} as the wheel rises',
      none: 'lever end stands still',
    },
    needs: ['antiRollBar'],
    absent: 'none: the drop link cannot reach the lever',
  },
  {
    key: 'strapLength',
    group: 'springing',
    kind: 'millimetre',
    label: 'strap, end to end',
    explanation:
      'Distance between the limit strap’s ends; the strap is tight when it equals its length.',
    needs: ['strap'],
  },
];

const INFINITY = 'at infinity in this pose';

export const CENTRE_ROWS: readonly MeasureRow[] = [
  {
    key: 'rollCentreHeight',
    group: 'centres',
    kind: 'millimetre',
    label: 'roll centre height',
    explanation:
      'Geometric roll centre above the ground of this pose; the axle’s only while both wheels stand alike, otherwise this wheel’s line cut at the centreline.',
    sense: {
      positive: '{} above the ground',
      negative: '{} below the ground',
      none: 'on the ground',
    },
    absent: INFINITY,
  },
  {
    key: 'frontViewCentreY',
    group: 'centres',
    kind: 'millimetre',
    label: 'front-view centre, y',
    explanation:
      'Point the wheel turns about for a moment, seen from the front: its place across the vehicle, positive to the left of the centreline.',
    sense: {
      positive: '{} to the left of the centreline',
      negative: '{} to the right of the centreline',
      none: 'on the centreline',
    },
    absent: INFINITY,
  },
  {
    key: 'frontViewCentreZ',
    group: 'centres',
    kind: 'millimetre',
    label: 'front-view centre, z',
    explanation:
      'Point the wheel turns about for a moment, seen from the front: its height in the model’s axes, positive up.',
    sense: { positive: '{} above the origin', negative: '{} below the origin', none: 'level' },
    absent: INFINITY,
  },
  {
    key: 'sideViewCentreX',
    group: 'centres',
    kind: 'millimetre',
    label: 'side-view centre, x',
    explanation:
      'Point the wheel turns about for a moment, seen from the side: its place along the vehicle, positive forward.',
    sense: {
      positive: '{} ahead of the origin',
      negative: '{} behind the origin',
      none: 'at the origin',
    },
    absent: INFINITY,
  },
  {
    key: 'sideViewCentreZ',
    group: 'centres',
    kind: 'millimetre',
    label: 'side-view centre, z',
    explanation:
      'Point the wheel turns about for a moment, seen from the side: its height in the model’s axes, positive up.',
    sense: { positive: '{} above the origin', negative: '{} below the origin', none: 'level' },
    absent: INFINITY,
  },
  {
    key: 'antiDive',
    group: 'centres',
    kind: 'percent',
    label: 'anti-dive',
    explanation:
      'Share of the brake dive that the arms carry instead of the springs, outboard brakes: positive when it resists dive.',
    sense: { positive: 'resists dive {}', negative: 'adds to dive {}', none: 'leaves dive alone' },
    needs: ['vehicle'],
    absent: INFINITY,
  },
  {
    key: 'antiLift',
    group: 'centres',
    kind: 'percent',
    label: 'anti-lift',
    explanation:
      'Share of the lift under front drive that the arms carry instead of the springs, drive torque reacted by the body: positive when it resists lift.',
    sense: { positive: 'resists lift {}', negative: 'adds to lift {}', none: 'leaves lift alone' },
    needs: ['vehicle'],
    absent: INFINITY,
  },
];
