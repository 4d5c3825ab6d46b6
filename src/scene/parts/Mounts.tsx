import { usePartCorner } from '../design.ts';
import { buildMounts } from '../geometry/mounts.ts';
import { Pieces, usePieces } from './Pieces.tsx';

/** What stays on the body: pivot ears, bolts and cams, the damper's top, the half-shaft's cup, the bar's clamp. */
export function Mounts() {
  const corner = usePartCorner();
  const { lowerArm, upperArm, coilover, halfShaft, antiRollBar, strap } = corner.model;
  const pieces = usePieces(
    () => buildMounts(corner),
    corner.linkage.pivots,
    [lowerArm.tubeDiameter, lowerArm.frontCam, lowerArm.rearCam],
    [upperArm.tubeDiameter, upperArm.frontCam, upperArm.rearCam],
    [upperArm.frontShim, upperArm.rearShim],
    [coilover, halfShaft, antiRollBar, strap],
  );
  return <Pieces part="mounts" pieces={pieces} />;
}
