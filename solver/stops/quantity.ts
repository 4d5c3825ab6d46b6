/** The quantities that limits hold, read from a placed pose without allocation. Lengths mm, angles degrees. */
import type { Corner, Lever } from '../corner.ts';
import { CIRCLE_AXIS, RADIUS, SPHERE } from '../linkage/circle.ts';
import { Slot } from '../linkage/slots.ts';
import { measureJoints, measureShaft } from '../measures/joints.ts';
import { Measure, type MeasureKey } from '../measures/keys.ts';
import { measureLength } from '../measures/parts.ts';

/** What a limit can hold. "dropLink" is what the drop link has left to reach its lever's circle, mm. */
export type QuantityKey =
  | Extract<
      MeasureKey,
      | 'damperLength'
      | 'strapLength'
      | 'lowerBallJoint'
      | 'upperBallJoint'
      | 'tieRodOuter'
      | 'tieRodInner'
      | 'outerAngle'
      | 'innerAngle'
      | 'plunge'
    >
  | 'travel'
  | 'rack'
  | 'dropLink';

const QUANTITIES: ReadonlySet<string> = new Set<QuantityKey>([
  'travel',
  'rack',
  'damperLength',
  'strapLength',
  'lowerBallJoint',
  'upperBallJoint',
  'tieRodOuter',
  'tieRodInner',
  'outerAngle',
  'innerAngle',
  'plunge',
  'dropLink',
]);

export function isQuantity(key: string): key is QuantityKey {
  return QUANTITIES.has(key);
}

/** Measures every quantity of a pose whose parts are placed into a measures buffer; those without parts keep their NaN. */
export function measureQuantities(
  corner: Corner,
  pose: Float64Array,
  measures: Float64Array,
): void {
  const { coilover, strap, shaft } = corner;
  measureJoints(corner, pose, measures);
  if (shaft !== null) measureShaft(shaft, pose, measures);
  if (coilover !== null) {
    measureLength(coilover, pose, Slot.damperBottom, measures, Measure.damperLength);
  }
  if (strap !== null) measureLength(strap, pose, Slot.strapBottom, measures, Measure.strapLength);
}

/** A quantity of a measured pose; NaN where the corner lacks the part. */
export function quantityOf(
  corner: Corner,
  key: QuantityKey,
  pose: Float64Array,
  measures: Float64Array,
): number {
  if (key === 'travel') return pose[Slot.travel]!;
  if (key === 'rack') return pose[Slot.rack]!;
  if (key === 'dropLink') return corner.lever === null ? Number.NaN : linkLeft(corner.lever, pose);
  return measures[Measure[key]]!;
}

/**
 * What a drop link has left: with h and d the carried joint's places along and off the bar's axis and ρ the lever's
 * radius it reaches while √(h² + (d − ρ)²) ≤ link ≤ √(h² + (d + ρ)²).
 */
function linkLeft({ circle }: Lever, pose: Float64Array): number {
  let along = 0;
  let squared = 0;
  for (let i = 0; i < 3; i += 1) {
    const v = pose[Slot.link + i]! - circle[i]!;
    along += v * circle[CIRCLE_AXIS + i]!;
    squared += v * v;
  }
  const off = Math.sqrt(Math.max(0, squared - along * along));
  const link = Math.sqrt(circle[SPHERE]!);
  const radius = circle[RADIUS]!;
  const near = Math.sqrt(along * along + (off - radius) * (off - radius));
  const far = Math.sqrt(along * along + (off + radius) * (off + radius));
  return Math.min(link - near, far - link);
}
