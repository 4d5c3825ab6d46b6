/** Rows of the spring, the damper, the strap and the anti-roll bar, and of the instant centres. */
import type { MeasureRow } from './row.ts';

const SPRING = ['coilover.springRate', 'coilover.designForce'];

export const SPRINGING_ROWS: readonly MeasureRow[] = [
  {
    key: 'damperLength',
    group: 'springing',
    kind: 'millimetre',
    label: 'damper length',
    needs: ['coilover'],
  },
  {
    key: 'motionRatio',
    group: 'springing',
    kind: 'ratio',
    label: 'motion ratio',
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
    needs: SPRING,
  },
  {
    key: 'wheelRate',
    group: 'springing',
    kind: 'newtonPerMm',
    label: 'wheel rate',
    needs: SPRING,
  },
  {
    key: 'rideFrequency',
    group: 'springing',
    kind: 'hertz',
    label: 'ride frequency',
    needs: [...SPRING, 'vehicle.cornerMass'],
    absent: 'none: the wheel rate is not positive',
  },
  {
    key: 'barMotionRatio',
    group: 'springing',
    kind: 'ratio',
    label: 'bar motion ratio',
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
    sense: { positive: '{} above the origin', negative: '{} below the origin', none: 'level' },
    absent: INFINITY,
  },
  {
    key: 'sideViewCentreX',
    group: 'centres',
    kind: 'millimetre',
    label: 'side-view centre, x',
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
    sense: { positive: '{} above the origin', negative: '{} below the origin', none: 'level' },
    absent: INFINITY,
  },
  {
    key: 'antiDive',
    group: 'centres',
    kind: 'percent',
    label: 'anti-dive',
    sense: { positive: 'resists dive {}', negative: 'adds to dive {}', none: 'leaves dive alone' },
    needs: ['vehicle'],
    absent: INFINITY,
  },
  {
    key: 'antiLift',
    group: 'centres',
    kind: 'percent',
    label: 'anti-lift',
    sense: { positive: 'resists lift {}', negative: 'adds to lift {}', none: 'leaves lift alone' },
    needs: ['vehicle'],
    absent: INFINITY,
  },
];
