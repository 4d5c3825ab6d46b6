import { useMemo } from 'react';
import { Slot } from '../../../solver/index.ts';
import { usePartCorner } from '../design.ts';
import { buildKnuckle } from '../geometry/knuckle.ts';
import { inverseOf } from '../placing.ts';
import { Body } from './Body.tsx';
import { Pieces, usePieces } from './Pieces.tsx';
import { Wheel } from './Wheel.tsx';

/** The knuckle with everything fixed to it: studs, outer joint's bell, hub, brake, wheel and tyre. */
export function Knuckle() {
  const { model, linkage } = usePartCorner();
  const design = useMemo(() => inverseOf(linkage.knuckle), [linkage]);
  const { lowerArm, upperArm, tieRod, hub, knuckle, halfShaft, coilover, antiRollBar, strap } =
    model;
  const pieces = usePieces(
    () => buildKnuckle(model),
    [lowerArm.ballJoint, lowerArm.studAxis, lowerArm.tubeDiameter],
    [upperArm.ballJoint, upperArm.studAxis, upperArm.tubeDiameter],
    [tieRod.outer, tieRod.studAxis],
    [hub, knuckle, halfShaft, coilover, antiRollBar, strap],
  );
  return (
    <Body origin={Slot.lower} frame={Slot.frame} design={design}>
      <Pieces part="knuckle" pieces={pieces} />
      <Wheel />
    </Body>
  );
}
