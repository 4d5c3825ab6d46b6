/** What is to be cut: every tube of arms and tie rod and the strap, with lengths to centres and to the cut. */
import type { Model } from '../model/model.ts';
import { type ArmLeg, armFigure } from './arm.ts';
import { rodFigure } from './rod.ts';
import type { TubeBend } from './tube.ts';

/** What a tube loses at its ends against the centres, mm: half a bush's sleeve, half a cup, a rod end's shank. */
export interface Allowances {
  readonly pivot: number;
  readonly ball: number;
  readonly rodEnd: number;
}

export const NO_ALLOWANCES: Allowances = { pivot: 0, ball: 0, rodEnd: 0 };

export type PieceName =
  | 'lowerFront'
  | 'lowerRear'
  | 'upperFront'
  | 'upperRear'
  | 'tieRod'
  | 'strap';

export interface CutPiece {
  readonly name: PieceName;
  /** Centre to centre along the centreline, mm. */
  readonly centres: number;
  /** Less the allowances at both ends, mm; not below 0. */
  readonly cut: number;
  /** Null for what is no tube. */
  readonly diameter: number | null;
  /** Between the tube and the pivots' line at its inner end, degrees; null where there is none. */
  readonly innerAngle: number | null;
  /** Turn of the outer end's axis about the tube against the inner one's, degrees. */
  readonly rotation: number | null;
  readonly bends: readonly TubeBend[];
}

function legPiece(name: PieceName, leg: ArmLeg, { pivot, ball }: Allowances): CutPiece {
  return {
    name,
    centres: leg.length,
    cut: Math.max(0, leg.length - pivot - ball),
    diameter: leg.run.diameter,
    innerAngle: leg.pivotAngle,
    rotation: leg.rotation,
    bends: leg.bends,
  };
}

/** The cut list of a sound model, in the order the parts are built. */
export function cutList(model: Model, allowances: Allowances = NO_ALLOWANCES): CutPiece[] {
  const lower = armFigure(model, 'lowerArm').legs;
  const upper = armFigure(model, 'upperArm').legs;
  const rod = rodFigure(model);
  // Turning the adjuster moves the inner rod end on its thread: the tube itself stays.
  const pieces: CutPiece[] = [
    legPiece('lowerFront', lower.front, allowances),
    legPiece('lowerRear', lower.rear, allowances),
    legPiece('upperFront', upper.front, allowances),
    legPiece('upperRear', upper.rear, allowances),
    {
      name: 'tieRod',
      centres: rod.length,
      cut: Math.max(0, rod.length - 2 * allowances.rodEnd),
      diameter: rod.run.diameter,
      innerAngle: null,
      rotation: null,
      bends: rod.bends,
    },
  ];
  if (model.strap !== undefined) {
    const { length } = model.strap;
    const none = { diameter: null, innerAngle: null, rotation: null, bends: [] };
    pieces.push({ name: 'strap', centres: length, cut: length, ...none });
  }
  return pieces;
}
