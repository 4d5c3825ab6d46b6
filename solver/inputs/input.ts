/** What a measured input of a model is: one coordinate of one point, or one measured number. */
import type { MeasuredUnit } from '../model/measured.ts';

/** The part an input belongs to: its first key in the model file. */
export type InputGroup =
  | 'lowerArm'
  | 'upperArm'
  | 'tieRod'
  | 'hub'
  | 'wheel'
  | 'tyre'
  | 'knuckle'
  | 'coilover'
  | 'antiRollBar'
  | 'halfShaft'
  | 'strap'
  | 'obstacles'
  | 'vehicle';

export interface Input {
  /** Unique in a model: "lowerArm.frontPivot.z", "tieRod.bends.0.x", "hub.camber". */
  readonly key: string;
  /** Dotted path of the point or number in the model file: "lowerArm.frontPivot", "tieRod.bends.0", "hub.camber". */
  readonly path: string;
  /** Which coordinate of a point; null for a number. */
  readonly component: 0 | 1 | 2 | null;
  readonly unit: MeasuredUnit;
  readonly group: InputGroup;
  /** The point or number as people call it: "Lower arm, front pivot". */
  readonly pointLabel: string;
  /** The same with its coordinate: "Lower arm, front pivot, height". */
  readonly label: string;
  /** Whether a measure of a pose depends on it; other inputs only shape clearances and limits. */
  readonly isMeasured: boolean;
}
