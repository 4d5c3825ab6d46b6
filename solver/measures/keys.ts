/** Every number a pose is measured by, and its place in a measures buffer. Units and signs: the geometry contract. */
export const MEASURE_KEYS = [
  'camber',
  'toe',
  'caster',
  'kingpinInclination',
  'scrubRadius',
  'casterTrail',
  'spindleOffset',
  'spindleTrail',
  'steerAngle',
  'halfTrack',
  'bumpSteer',
  'bumpCamber',
  'bumpCaster',
  'trackRate',
  'steerPerRack',
  'rollCentreHeight',
  'frontViewCentreY',
  'frontViewCentreZ',
  'sideViewCentreX',
  'sideViewCentreZ',
  'antiDive',
  'antiLift',
  'damperLength',
  'motionRatio',
  'motionRatioRate',
  'springForce',
  'wheelRate',
  'rideFrequency',
  'barMotionRatio',
  'strapLength',
  'outerAngle',
  'innerAngle',
  'plunge',
  'lowerBallJoint',
  'upperBallJoint',
  'tieRodOuter',
  'tieRodInner',
] as const;

export type MeasureKey = (typeof MEASURE_KEYS)[number];

/** Place of each measure in a measures buffer. */
export const Measure: Readonly<Record<MeasureKey, number>> = Object.fromEntries(
  MEASURE_KEYS.map((key, index) => [key, index]),
) as Record<MeasureKey, number>;

/** A measures buffer: filled by `measureInto`. A measure the model lacks the parts for reads NaN there, never in a report. */
export function createMeasures(): Float64Array {
  return new Float64Array(MEASURE_KEYS.length).fill(Number.NaN);
}
