import { useMemo } from 'react';
import { Vector3 } from 'three';
import { Slot } from '../../../solver/index.ts';
import { usePartCorner } from '../design.ts';
import { jointShapes } from '../geometry/joints.ts';
import { buildTieRod } from '../geometry/tieRod.ts';
import { Body } from './Body.tsx';
import { Pieces, usePieces } from './Pieces.tsx';

/** The tie rod with bends, jam nut and end; it turns with its stud as the solver's rod frame does. */
export function TieRod() {
  const corner = usePartCorner();
  const { model } = corner;
  const housing = useMemo(() => {
    // The solver keeps the stated axis; the seat may lie on its other side.
    const [x, y, z] = corner.joints.rod.housing as unknown as [number, number, number];
    const { housing: turned } = jointShapes(model).rod;
    const stated = model.tieRod.housingAxis ?? model.tieRod.studAxis ?? [0, 0, 1];
    const sense = turned.x * stated[0] + turned.y * stated[1] + turned.z * stated[2] < 0 ? -1 : 1;
    return new Vector3(x, y, z).multiplyScalar(sense);
  }, [corner, model]);
  const pieces = usePieces(() => buildTieRod(corner, housing), model.tieRod, housing);
  return (
    <Body origin={Slot.outer} frame={Slot.rodFrame}>
      <Pieces part="tieRod" pieces={pieces} />
    </Body>
  );
}
