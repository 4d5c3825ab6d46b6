import { useFrame } from '@react-three/fiber';
import { useContext, useLayoutEffect, useMemo, useRef } from 'react';
import type { Group } from 'three';
import { useStore } from 'zustand';
import { view } from '../../state/bench.ts';
import { DesignContext, posedOf, usePartCorner } from '../design.ts';
import { buildHub, buildRotor } from '../geometry/hub.ts';
import { buildTyre } from '../geometry/tyre.ts';
import { buildWheel } from '../geometry/wheel.ts';
import { wheelFrame } from '../geometry/wheelFrame.ts';
import { inverseOf } from '../placing.ts';
import { Pieces, usePieces } from './Pieces.tsx';
import { openingNow, rimOf } from './turnOpening.ts';

/** A group turned about the hub axis so that the opening of what is in it shows the rod, wherever it is seen from. */
function useOpening(isCut: boolean) {
  const corner = usePartCorner();
  const design = useContext(DesignContext);
  const group = useRef<Group>(null);
  const { frame, knuckle, rim } = useMemo(
    () => ({
      frame: wheelFrame(corner.model),
      knuckle: inverseOf(corner.linkage.knuckle),
      rim: rimOf(corner),
    }),
    [corner],
  );
  useFrame(({ camera }) => {
    const posed = posedOf(design);
    if (group.current === null || posed === null || posed.corner !== corner) return;
    group.current.rotation.z = isCut ? openingNow(posed, rim, frame, knuckle, camera) : 0;
  });
  return { group, frame };
}

/** Hub, brake, wheel and tyre, fixed to the knuckle; solid, see-through or cut open. */
export function Wheel() {
  const { model } = usePartCorner();
  const shell = useStore(view, (state) => state.wheelShell);
  const held = useContext(DesignContext) === 'held';
  const isCut = shell === 'cut';
  const isGhost = shell === 'ghost' && !held;
  const group = useRef<Group>(null);
  const { group: opened, frame } = useOpening(isCut);
  useLayoutEffect(() => {
    group.current?.matrix.copy(frame);
    if (group.current !== null) group.current.matrixWorldNeedsUpdate = true;
  }, [frame]);
  const { wheel, tyre, brake } = model;
  const hub = usePieces(() => buildHub(model), wheel, brake);
  const rotor = usePieces(() => buildRotor(model, isCut), wheel, brake, isCut);
  const metal = usePieces(() => buildWheel(model, isCut), wheel, isCut);
  const rubber = usePieces(() => buildTyre(model, isCut), wheel, tyre, isCut);
  return (
    <group ref={group} matrixAutoUpdate={false}>
      <Pieces part="hub" pieces={hub} />
      <group ref={opened}>
        <Pieces part="hub" pieces={rotor} />
        <Pieces part="wheel" pieces={metal} ghost={isGhost} />
        <Pieces part="tyre" pieces={rubber} ghost={isGhost} />
      </group>
    </group>
  );
}
