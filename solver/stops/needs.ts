/** Which limit of a part follows from which quantity, and what is left unused on top. */
import type { Model } from '../model/model.ts';
import type { Habits } from './margin.ts';
import type { QuantityKey } from './quantity.ts';

/** How a limit follows from a quantity's extreme. */
export interface Need {
  readonly key: string;
  readonly of: QuantityKey;
  readonly take: 'least' | 'greatest';
  readonly reserve: (habits: Habits) => number;
  readonly has: (model: Model) => number | undefined;
}

/** Every limit that follows from how far a part moves, in the order of the table. */
export const NEEDS: readonly Need[] = [
  {
    key: 'coilover.minLength',
    of: 'damperLength',
    take: 'least',
    reserve: ({ shaftLeft }) => shaftLeft,
    has: ({ coilover }) => coilover?.minLength,
  },
  {
    key: 'coilover.maxLength',
    of: 'damperLength',
    take: 'greatest',
    reserve: ({ strapBefore }) => strapBefore,
    has: ({ coilover }) => coilover?.maxLength,
  },
  {
    key: 'lowerArm.ballJointLimit',
    of: 'lowerBallJoint',
    take: 'greatest',
    reserve: ({ unusedAngle }) => unusedAngle,
    has: ({ lowerArm }) => lowerArm.ballJointLimit,
  },
  {
    key: 'upperArm.ballJointLimit',
    of: 'upperBallJoint',
    take: 'greatest',
    reserve: ({ unusedAngle }) => unusedAngle,
    has: ({ upperArm }) => upperArm.ballJointLimit,
  },
  {
    key: 'tieRod.endLimit',
    of: 'tieRodOuter',
    take: 'greatest',
    reserve: ({ unusedAngle }) => unusedAngle,
    has: ({ tieRod }) => tieRod.endLimit,
  },
  {
    key: 'tieRod.innerLimit',
    of: 'tieRodInner',
    take: 'greatest',
    reserve: ({ unusedAngle }) => unusedAngle,
    has: ({ tieRod }) => tieRod.innerLimit,
  },
  {
    key: 'halfShaft.outerLimit',
    of: 'outerAngle',
    take: 'greatest',
    reserve: ({ unusedAngle }) => unusedAngle,
    has: ({ halfShaft }) => halfShaft?.outerLimit,
  },
  {
    key: 'halfShaft.innerLimit',
    of: 'innerAngle',
    take: 'greatest',
    reserve: ({ unusedAngle }) => unusedAngle,
    has: ({ halfShaft }) => halfShaft?.innerLimit,
  },
  {
    key: 'halfShaft.plungeIn',
    of: 'plunge',
    take: 'greatest',
    reserve: ({ unusedLength }) => unusedLength,
    has: ({ halfShaft }) => halfShaft?.plungeIn,
  },
  {
    key: 'halfShaft.plungeOut',
    of: 'plunge',
    take: 'least',
    reserve: ({ unusedLength }) => unusedLength,
    has: ({ halfShaft }) => halfShaft?.plungeOut,
  },
];
