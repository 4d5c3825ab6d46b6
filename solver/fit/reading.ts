/** What a person reads off a vehicle, each with its ±: what the points are fitted to. */
import type { Model } from '../model/model.ts';
import type { ReadPoint } from './points.ts';

/**
 * Quantities that are read in one pose. `toeChange` is toe in that pose less toe in the set pose, as a gauge zeroed there
 * reads it; `width` lies between a point and the same point of the other side, both wheels at that height.
 */
export const READ_QUANTITIES = [
  'toe',
  'toeChange',
  'camber',
  'caster',
  'kingpinInclination',
  'steerAngle',
  'damperLength',
  'distance',
  'width',
] as const;
export type ReadQuantity = (typeof READ_QUANTITIES)[number];

/** One reading; `value` and `plusMinus` (one standard uncertainty, above 0) in degrees, or in mm for lengths. */
export interface Reading {
  readonly quantity: ReadQuantity;
  /** Pose in which it was read: travel and rack from the design pose, mm. */
  readonly travel: number;
  readonly rack: number;
  /** The two points of a `distance`; of a `width` the first alone. */
  readonly between?: readonly [ReadPoint, ReadPoint];
  readonly value: number;
  readonly plusMinus: number;
}

interface QuantityRow {
  readonly label: string;
  readonly unit: 'degree' | 'millimetre';
  /** The part of the model that it cannot do without. */
  readonly needs?: 'coilover';
}

/** Names and units of the quantities, for people. */
export const READ_TABLE: Readonly<Record<ReadQuantity, QuantityRow>> = {
  toe: { label: 'toe', unit: 'degree' },
  toeChange: { label: 'toe change from ride', unit: 'degree' },
  camber: { label: 'camber', unit: 'degree' },
  caster: { label: 'caster', unit: 'degree' },
  kingpinInclination: { label: 'kingpin inclination', unit: 'degree' },
  steerAngle: { label: 'steer angle', unit: 'degree' },
  damperLength: { label: 'damper length', unit: 'millimetre', needs: 'coilover' },
  distance: { label: 'length between points', unit: 'millimetre' },
  width: { label: 'width from side to side', unit: 'millimetre' },
};

/** Whether the model has the parts that the quantity is read of. */
export function canBeRead(model: Model, quantity: ReadQuantity): boolean {
  const { needs } = READ_TABLE[quantity];
  return needs === undefined || model[needs] !== undefined;
}
