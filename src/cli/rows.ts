/** The measures as the command line names them: one row a measure, in the contract's order. Signs are the geometry contract's. */

/** How a value that is a list is spread over columns. */
export type Shape = 'xyz' | 'yz' | 'xz' | 'points';

export interface Row {
  /** Path of the value in the object of `pose --json`. */
  readonly key: string;
  readonly label: string;
  readonly group: string;
  readonly unit: string;
  /** Digits after the point in the readable table; JSON and CSV are unrounded. */
  readonly digits: number;
  /** What a positive and a negative value mean. */
  readonly words?: readonly [string, string];
  readonly shape?: Shape;
}

type Plain = readonly [key: string, label: string, positive?: string, negative?: string];

function group(name: string, unit: string, digits: number, rows: readonly Plain[]): readonly Row[] {
  return rows.map(([key, label, positive, negative]) => ({
    key,
    label,
    group: name,
    unit,
    digits,
    ...(positive !== undefined && negative !== undefined ? { words: [positive, negative] } : {}),
  }));
}

export const INPUT_ROWS: readonly Row[] = group('Inputs', 'mm', 3, [
  ['travel', 'travel', 'wheel up (bump)', 'wheel down (droop)'],
  ['rack', 'rack', 'to the left', 'to the right'],
]);

const alignment: readonly Row[] = [
  ...group('Alignment', 'deg', 3, [
    ['camber', 'camber', 'top leans out', 'top leans in'],
    ['toe', 'toe', 'front edge in', 'front edge out'],
    ['caster', 'caster', 'axis leans back', 'axis leans forward'],
    ['kingpinInclination', 'kingpin inclination', 'axis leans in', 'axis leans out'],
  ]),
  ...group('Alignment', 'mm', 2, [
    ['scrubRadius', 'scrub radius', 'contact outboard of the axis', 'contact inboard of the axis'],
    ['casterTrail', 'caster trail', 'axis ahead of the contact', 'axis behind the contact'],
    [
      'spindleOffset',
      'spindle offset',
      'centre outboard of the axis',
      'centre inboard of the axis',
    ],
    ['spindleTrail', 'spindle trail', 'axis ahead of the centre', 'axis behind the centre'],
  ]),
  ...group('Alignment', 'deg', 3, [['steerAngle', 'steer angle', 'steers left', 'steers right']]),
  ...group('Alignment', 'mm', 2, [['halfTrack', 'half track']]),
];

const RISES = 'as the wheel rises';

const rates: readonly Row[] = [
  ...group('Rates', 'deg/mm', 5, [
    ['bumpSteer', 'bump steer', `front edge goes in ${RISES}`, `front edge goes out ${RISES}`],
    ['bumpCamber', 'bump camber', `top goes out ${RISES}`, `top goes in ${RISES}`],
    ['bumpCaster', 'bump caster', `axis leans back ${RISES}`, `axis leans forward ${RISES}`],
  ]),
  ...group('Rates', 'mm/mm', 5, [
    ['trackRate', 'track rate', `contact goes out ${RISES}`, `contact goes in ${RISES}`],
  ]),
  ...group('Rates', 'deg/mm', 5, [
    [
      'steerPerRack',
      'steer per rack',
      'steers left as the rack goes left',
      'steers right as the rack goes left',
    ],
  ]),
];

const centres: readonly Row[] = [
  ...group('Centres', 'mm', 2, [
    ['rollCentreHeight', 'roll centre height', 'above the ground', 'below the ground'],
  ]),
  {
    key: 'frontViewCentre',
    label: 'front-view centre y, z',
    group: 'Centres',
    unit: 'mm',
    digits: 1,
    shape: 'yz',
  },
  {
    key: 'sideViewCentre',
    label: 'side-view centre x, z',
    group: 'Centres',
    unit: 'mm',
    digits: 1,
    shape: 'xz',
  },
  ...group('Centres', '%', 2, [
    ['antiDive', 'anti-dive', 'resists dive', 'adds to dive'],
    ['antiLift', 'anti-lift', 'resists lift', 'adds to lift'],
  ]),
];

const spring: readonly Row[] = [
  ...group('Spring, damper, bar', 'mm', 2, [['damperLength', 'damper length']]),
  ...group('Spring, damper, bar', 'mm/mm', 4, [
    ['motionRatio', 'motion ratio', 'damper movement / wheel movement', 'damper opens in bump'],
  ]),
  ...group('Spring, damper, bar', '1/mm', 6, [['motionRatioRate', 'motion ratio rate']]),
  ...group('Spring, damper, bar', 'N/mm', 3, [['wheelRate', 'wheel rate']]),
  ...group('Spring, damper, bar', 'mm/mm', 4, [
    [
      'barMotionRatio',
      'bar motion ratio',
      'lever end rises with the wheel',
      'lever end falls as the wheel rises',
    ],
  ]),
];

const joints: readonly Row[] = [
  ...group('Half-shaft and joints', 'deg', 2, [
    ['halfShaft.outerAngle', 'half-shaft outer joint'],
    ['halfShaft.innerAngle', 'half-shaft inner joint'],
  ]),
  ...group('Half-shaft and joints', 'mm', 2, [
    [
      'halfShaft.plunge',
      'half-shaft plunge',
      'shorter than as designed',
      'longer than as designed',
    ],
  ]),
  ...group('Half-shaft and joints', 'deg', 2, [
    ['joints.lowerBallJoint', 'lower ball joint'],
    ['joints.upperBallJoint', 'upper ball joint'],
    ['joints.tieRodOuter', 'tie rod outer joint'],
    ['joints.tieRodInner', 'tie rod inner joint'],
  ]),
];

const hubAxis: Row = {
  key: 'hubAxis',
  label: 'hub axis',
  group: 'Points x, y, z',
  unit: '1',
  digits: 5,
  shape: 'xyz',
};

const POINTS: readonly (readonly [string, string])[] = [
  ['wheelCentre', 'wheel centre'],
  ['contact', 'contact'],
  ['lowerBallJoint', 'lower ball joint'],
  ['upperBallJoint', 'upper ball joint'],
  ['tieRodInner', 'tie rod inner'],
  ['tieRodOuter', 'tie rod outer'],
  ['tieRodBends', 'tie rod bends'],
  ['lowerFrontPivot', 'lower arm front pivot'],
  ['lowerRearPivot', 'lower arm rear pivot'],
  ['upperFrontPivot', 'upper arm front pivot'],
  ['upperRearPivot', 'upper arm rear pivot'],
  ['damperTop', 'damper top'],
  ['damperBottom', 'damper bottom'],
  ['leverEnd', 'bar lever end'],
  ['link', 'bar drop link'],
  ['shaftInner', 'half-shaft inner'],
  ['shaftOuter', 'half-shaft outer'],
];

const points: readonly Row[] = POINTS.map(([key, label]) => ({
  key: `points.${key}`,
  label,
  group: 'Points x, y, z',
  unit: 'mm',
  digits: 2,
  shape: key === 'tieRodBends' ? 'points' : 'xyz',
}));

/** Every measure a reached pose may have, beside its travel and rack. */
export const MEASURE_ROWS: readonly Row[] = [
  ...alignment,
  ...rates,
  ...centres,
  ...spring,
  ...joints,
  hubAxis,
  ...points,
];
