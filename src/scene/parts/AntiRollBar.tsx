import { useMemo, useRef } from 'react';
import { type Group, Matrix4, type Object3D, Vector3 } from 'three';
import { Slot } from '../../../solver/index.ts';
import { usePartCorner } from '../design.ts';
import { buildBar, buildDropLink, linkLength, linkRadius } from '../geometry/antiRollBar.ts';
import { placeAlong } from '../placing.ts';
import { usePosed } from '../usePosed.ts';
import { Pieces, usePieces } from './Pieces.tsx';

const _turn = new Matrix4();

/** Turns an object about a line: to the line's point, round, and back. */
function turnAbout(object: Object3D, axis: Vector3, centre: Vector3, angle: number): void {
  const { matrix } = object;
  matrix.makeRotationAxis(axis, angle);
  matrix.multiply(_turn.makeTranslation(-centre.x, -centre.y, -centre.z));
  const { elements } = matrix;
  elements[12] = elements[12]! + centre.x;
  elements[13] = elements[13]! + centre.y;
  elements[14] = elements[14]! + centre.z;
  object.matrixWorldNeedsUpdate = true;
}

/** The bar's left half, turning about its axis, and the drop link. Out of the link's reach neither is drawn. */
export function AntiRollBar() {
  const corner = usePartCorner();
  const { model } = corner;
  const bar = usePieces(() => buildBar(model), model.antiRollBar);
  const { circle } = corner.lever!;
  const length = linkLength(model);
  const radius = linkRadius(model);
  const link = usePieces(() => buildDropLink(length, radius), length, radius);
  const lever = useRef<Group>(null);
  const drop = useRef<Group>(null);
  const { axis, centre } = useMemo(
    () => ({
      axis: new Vector3().fromArray(circle, 9),
      centre: new Vector3().fromArray(circle, 0),
    }),
    [circle],
  );
  usePosed(({ pose: { data } }) => {
    if (lever.current === null || drop.current === null) return;
    const cos = data[Slot.leverCos]!;
    const sin = data[Slot.leverSin]!;
    const reached = data[Slot.leverRoom]! >= 0 && Number.isFinite(cos + sin);
    lever.current.visible = reached;
    drop.current.visible = reached;
    if (!reached) return;
    turnAbout(lever.current, axis, centre, Math.atan2(sin, cos));
    const x = data[Slot.leverEnd]!;
    const y = data[Slot.leverEnd + 1]!;
    const z = data[Slot.leverEnd + 2]!;
    placeAlong(
      drop.current,
      x,
      y,
      z,
      data[Slot.link]! - x,
      data[Slot.link + 1]! - y,
      data[Slot.link + 2]! - z,
    );
  });
  return (
    <>
      <group ref={lever} matrixAutoUpdate={false}>
        <Pieces part="antiRollBar" pieces={bar} />
      </group>
      <group ref={drop} matrixAutoUpdate={false}>
        <Pieces part="antiRollBar" pieces={link} />
      </group>
    </>
  );
}
