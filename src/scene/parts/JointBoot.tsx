import { useMemo } from 'react';
import { Slot } from '../../../solver/index.ts';
import { frameFrom } from '../../../solver/linkage/frames.ts';
import { usePartCorner } from '../design.ts';
import { roundedFolds } from '../geometry/bellows.ts';
import { type JointName, jointShapes } from '../geometry/joints.ts';
import type { PartName } from '../partNames.ts';
import { carried, carryDirection } from '../placing.ts';
import { JOINT } from '../proportions.ts';
import { Boot } from './Boot.tsx';

const PARTS: Record<JointName, PartName> = {
  lower: 'lowerBallJoint',
  upper: 'upperBallJoint',
  rod: 'tieRodOuter',
};
const BALLS: Record<JointName, number> = { lower: Slot.lower, upper: Slot.upper, rod: Slot.outer };
const HOUSINGS: Record<JointName, { origin: number; frame: number }> = {
  lower: { origin: Slot.lower, frame: Slot.lowerFrame },
  upper: { origin: Slot.upper, frame: Slot.upperFrame },
  rod: { origin: Slot.outer, frame: Slot.rodFrame },
};

/** The rubber between a ball joint's housing and the knuckle's seat: bends as stud and housing part. */
export function JointBoot({ joint }: { joint: JointName }) {
  const { model, linkage } = usePartCorner();
  const { housing, stud, size } = useMemo(() => {
    const shape = jointShapes(model)[joint];
    const rod = () => {
      const { inner, outer, studAxis } = model.tieRod;
      const along = [outer[0] - inner[0], outer[1] - inner[1], outer[2] - inner[2]] as const;
      return frameFrom(outer, along, studAxis ?? [0, 0, 1]);
    };
    const frame = joint === 'rod' ? rod() : linkage[joint === 'lower' ? 'lowerArm' : 'upperArm'];
    return {
      housing: carried(frame, HOUSINGS[joint], shape.housing.toArray(), false),
      stud: carried(
        linkage.knuckle,
        { origin: Slot.lower, frame: Slot.frame },
        shape.stud.toArray(),
        false,
      ),
      size: shape.size,
    };
  }, [model, linkage, joint]);
  const radii = useMemo(() => roundedFolds(0.78 * size, 0.52 * size, 2, 0.2 * size), [size]);
  return (
    <Boot
      part={PARTS[joint]}
      radii={radii}
      segments={22}
      fullness={0.1}
      place={({ pose: { data } }, mouths) => {
        carryDirection(housing, data, mouths, 3);
        carryDirection(stud, data, mouths, 9);
        for (let k = 0; k < 3; k += 1) {
          const ball = data[BALLS[joint] + k]!;
          mouths[k] = ball + mouths[3 + k]! * JOINT.mouth * 0.98 * size;
          mouths[6 + k] = ball + mouths[9 + k]! * (JOINT.seat + 0.02) * size;
        }
      }}
    />
  );
}
