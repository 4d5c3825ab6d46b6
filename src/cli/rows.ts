/** The measures as the command line names them: one row a measure, in the contract's order. Names and words are the table of measures'. */

import { inWords, type MeasureKey, measureRow } from '../../solver/index.ts';

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

/** A row of numbers the table of measures knows: its label and words are the table's. */
function measure(
  group: string,
  unit: string,
  digits: number,
  key: MeasureKey,
  path: string = key,
): Row {
  const row = measureRow(key);
  const positive = inWords(row, 1);
  const negative = inWords(row, -1);
  return {
    key: path,
    label: row.label,
    group,
    unit,
    digits,
    ...(positive !== undefined && negative !== undefined ? { words: [positive, negative] } : {}),
  };
}

function measures(
  group: string,
  unit: string,
  digits: number,
  ...keys: readonly MeasureKey[]
): readonly Row[] {
  return keys.map((key) => measure(group, unit, digits, key));
}

export const INPUT_ROWS: readonly Row[] = [
  {
    key: 'travel',
    label: 'travel',
    group: 'Inputs',
    unit: 'mm',
    digits: 3,
    words: ['wheel up (bump)', 'wheel down (droop)'],
  },
  {
    key: 'rack',
    label: 'rack',
    group: 'Inputs',
    unit: 'mm',
    digits: 3,
    words: ['to the left', 'to the right'],
  },
];

const alignment: readonly Row[] = [
  ...measures('Alignment', 'deg', 3, 'camber', 'toe', 'caster', 'kingpinInclination'),
  ...measures('Alignment', 'mm', 2, 'scrubRadius', 'casterTrail', 'spindleOffset', 'spindleTrail'),
  ...measures('Alignment', 'deg', 3, 'steerAngle'),
  ...measures('Alignment', 'mm', 2, 'halfTrack'),
];

const rates: readonly Row[] = [
  ...measures('Rates', 'deg/mm', 5, 'bumpSteer', 'bumpCamber', 'bumpCaster'),
  ...measures('Rates', 'mm/mm', 5, 'trackRate'),
  ...measures('Rates', 'deg/mm', 5, 'steerPerRack'),
];

const centres: readonly Row[] = [
  ...measures('Centres', 'mm', 2, 'rollCentreHeight'),
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
  ...measures('Centres', '%', 2, 'antiDive', 'antiLift'),
];

const SPRING = 'Spring, damper, bar';

const spring: readonly Row[] = [
  ...measures(SPRING, 'mm', 2, 'damperLength'),
  ...measures(SPRING, 'mm/mm', 4, 'motionRatio'),
  ...measures(SPRING, '1/mm', 6, 'motionRatioRate'),
  ...measures(SPRING, 'N/mm', 3, 'wheelRate'),
  ...measures(SPRING, 'mm/mm', 4, 'barMotionRatio'),
];

const JOINTS = 'Half-shaft and joints';

const joints: readonly Row[] = [
  measure(JOINTS, 'deg', 2, 'outerAngle', 'halfShaft.outerAngle'),
  measure(JOINTS, 'deg', 2, 'innerAngle', 'halfShaft.innerAngle'),
  measure(JOINTS, 'mm', 2, 'plunge', 'halfShaft.plunge'),
  measure(JOINTS, 'deg', 2, 'lowerBallJoint', 'joints.lowerBallJoint'),
  measure(JOINTS, 'deg', 2, 'upperBallJoint', 'joints.upperBallJoint'),
  measure(JOINTS, 'deg', 2, 'tieRodOuter', 'joints.tieRodOuter'),
  measure(JOINTS, 'deg', 2, 'tieRodInner', 'joints.tieRodInner'),
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
