/** What a linkage is: a model made ready to be solved. */
import type { Vector3 } from '../math/vec3.ts';
import type { Model } from '../model/model.ts';
import type { Frame } from './frames.ts';
import type { Predictor } from './predictor.ts';

/** The constraint that can no longer be kept. */
export type Failure = 'lowerArm' | 'upperArm' | 'tieRod';

/** A model made ready to be solved: constants only, no pose. */
export interface Linkage {
  readonly model: Model;
  readonly fixed: Float64Array;
  /** Design-pose frames in which carried points keep their components. */
  readonly knuckle: Frame;
  readonly lowerArm: Frame;
  readonly upperArm: Frame;
  /** The pose at travel 0 and rack 0 with the settings applied, and the determinant that tells its branch. */
  readonly home: Float64Array;
  readonly homeDeterminant: number;
  /** What the settings themselves break, else null. */
  readonly broken: Failure | null;
  /** Fast first guesses inside a box of poses proven to be on the branch. */
  readonly predictor: Predictor;
  /** The pivots with their cams applied. */
  readonly pivots: {
    readonly lowerFront: Vector3;
    readonly lowerRear: Vector3;
    readonly upperFront: Vector3;
    readonly upperRear: Vector3;
  };
}
