import { useMemo } from 'react';
import { Slot } from '../../../solver/index.ts';
import { usePartCorner } from '../design.ts';
import { type ArmName, buildArm } from '../geometry/arm.ts';
import { inverseOf } from '../placing.ts';
import { Body } from './Body.tsx';
import { Pieces, usePieces } from './Pieces.tsx';

/** One arm with its bushes, housing and mounts. */
export function Arm({ name }: { name: ArmName }) {
  const { model, linkage } = usePartCorner();
  const design = useMemo(() => inverseOf(linkage[name]), [linkage, name]);
  const other = model[name === 'lowerArm' ? 'upperArm' : 'lowerArm'].ballJoint;
  const pieces = usePieces(
    () => buildArm(model, name),
    model[name],
    other,
    model.coilover,
    model.antiRollBar,
    model.strap,
    model.halfShaft,
    model.hub,
  );
  const lower = name === 'lowerArm';
  return (
    <Body
      origin={lower ? Slot.lower : Slot.upper}
      frame={lower ? Slot.lowerFrame : Slot.upperFrame}
      design={design}
    >
      <Pieces part={name} pieces={pieces} />
    </Body>
  );
}
