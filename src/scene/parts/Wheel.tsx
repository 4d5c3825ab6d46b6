import { useContext, useLayoutEffect, useMemo, useRef } from 'react';
import type { Group } from 'three';
import { useStore } from 'zustand';
import { view } from '../../state/bench.ts';
import { DesignContext, usePartCorner } from '../design.ts';
import { buildHub } from '../geometry/hub.ts';
import { buildTyre } from '../geometry/tyre.ts';
import { buildWheel, cutTurn } from '../geometry/wheel.ts';
import { opensUpwards, wheelFrame } from '../geometry/wheelFrame.ts';
import { Pieces, usePieces } from './Pieces.tsx';

/** Hub, brake, wheel and tyre, fixed to the knuckle; solid, see-through or cut open. */
export function Wheel() {
  const { model } = usePartCorner();
  const shell = useStore(view, (state) => state.wheelShell);
  const held = useContext(DesignContext) === 'held';
  const isCut = shell === 'cut';
  const isGhost = shell === 'ghost' && !held;
  const group = useRef<Group>(null);
  const frame = useMemo(() => wheelFrame(model), [model]);
  const up = opensUpwards(frame);
  useLayoutEffect(() => {
    group.current?.matrix.copy(frame);
    if (group.current !== null) group.current.matrixWorldNeedsUpdate = true;
  }, [frame]);
  const cut = isCut ? cutTurn(up) : null;
  const { wheel, tyre, brake } = model;
  const hub = usePieces(() => buildHub(model), wheel, brake);
  const metal = usePieces(() => buildWheel(model, cut, up), wheel, isCut, up);
  const rubber = usePieces(() => buildTyre(model, cut), wheel, tyre, isCut, up);
  return (
    <group ref={group} matrixAutoUpdate={false}>
      <Pieces part="hub" pieces={hub} />
      <Pieces part="wheel" pieces={metal} ghost={isGhost} />
      <Pieces part="tyre" pieces={rubber} ghost={isGhost} />
    </group>
  );
}
