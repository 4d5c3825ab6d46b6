/** What the readings show: the groups of measures, and where each number and what it is compared with come from. */
import {
  AXLE_KEYS,
  type AxleKey,
  AxleMeasure,
  Measure,
  type MeasureKey,
  type MeasureRow,
  measureRow,
} from '../../solver/index.ts';
import { currentAxle, heldAxle } from '../state/axled.ts';
import { posed } from '../state/bench.ts';

export const MAIN_KEYS = ['camber', 'caster', 'toe'] as const;

export interface ReadingGroup {
  readonly name: string;
  readonly title: string;
  readonly rows: readonly MeasureRow[];
  /** Short word of caution where someone may cut metal by a number. */
  readonly caution?: string;
}

function group(
  name: string,
  title: string,
  keys: readonly (MeasureKey | AxleKey)[],
  caution?: string,
): ReadingGroup {
  const rows = keys.map(measureRow);
  return { name, title, rows, ...(caution === undefined ? {} : { caution }) };
}

export const READING_GROUPS: readonly ReadingGroup[] = [
  group('steeringAxis', 'Steering axis', [
    'kingpinInclination',
    'scrubRadius',
    'casterTrail',
    'spindleOffset',
    'spindleTrail',
  ]),
  group(
    'bump',
    'Bump',
    ['bumpSteer', 'bumpCamber', 'bumpCaster', 'halfTrack', 'trackRate'],
    'Points measured by tape are good enough for camber gain, not for bump steer: a tie rod end 3 mm off is worth about 0.07° per inch.',
  ),
  group(
    'springing',
    'Springing',
    [
      'damperLength',
      'motionRatio',
      'motionRatioRate',
      'springForce',
      'wheelRate',
      'rideFrequency',
      'barMotionRatio',
      'strapLength',
    ],
    'A compressed spring stores energy that kills: release it before anything is unbolted, on stands, wheels chocked.',
  ),
  group('centres', 'Centres', [
    'rollCentreHeight',
    'frontViewCentreY',
    'frontViewCentreZ',
    'sideViewCentreX',
    'sideViewCentreZ',
    'antiDive',
    'antiLift',
  ]),
  group('steering', 'Steering', [
    'steerAngle',
    'steerPerRack',
    'innerSteer',
    'outerSteer',
    'ackermann',
    'turningCircle',
  ]),
  group(
    'halfShaft',
    'Half-shaft',
    ['outerAngle', 'innerAngle', 'plunge'],
    'The maker’s limits rule. Keep 2–3° and 3–6 mm unused at each end (common practice).',
  ),
  group(
    'joints',
    'Joints',
    ['lowerBallJoint', 'upperBallJoint', 'tieRodOuter', 'tieRodInner'],
    'A joint that binds breaks its stud. The maker’s limit rules; keep 2–3° unused (common practice).',
  ),
];

const AXLE: ReadonlySet<string> = new Set(AXLE_KEYS);

/** The measure in the present pose, reached or last reachable; NaN when it does not exist there. */
export function readingNow(key: MeasureKey | AxleKey): number {
  if (AXLE.has(key)) return currentAxle()[AxleMeasure[key as AxleKey]] ?? Number.NaN;
  return posed.current().measures[Measure[key as MeasureKey]] ?? Number.NaN;
}

/** What its difference is taken from; NaN when there is nothing to compare with. */
export function readingBefore(key: MeasureKey | AxleKey): number {
  if (AXLE.has(key)) return heldAxle()?.[AxleMeasure[key as AxleKey]] ?? Number.NaN;
  return posed.baseline()[Measure[key as MeasureKey]] ?? Number.NaN;
}

/** A joint whose housing axis is not given reads 0 in the design pose by assumption. */
export function isAssumedCentred(key: string): boolean {
  const { lowerArm, upperArm, tieRod } = posed.current().corner.model;
  if (key === 'lowerBallJoint') return lowerArm.housingAxis === undefined;
  if (key === 'upperBallJoint') return upperArm.housingAxis === undefined;
  return key === 'tieRodOuter' && tieRod.housingAxis === undefined;
}
