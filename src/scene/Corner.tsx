/** The whole corner of a design, to be put inside the group that carries vehicle axes. */
import { useThree } from '@react-three/fiber';
import { useLayoutEffect } from 'react';
import { useStore } from 'zustand';
import { view } from '../state/bench.ts';
import { CornerContext, type Design, DesignContext, useCorner } from './design.ts';
import { JOINT_NAMES } from './geometry/joints.ts';
import { paint } from './materials.ts';
import { AntiRollBar } from './parts/AntiRollBar.tsx';
import { Arm } from './parts/Arm.tsx';
import { Coilover } from './parts/Coilover.tsx';
import { GapMarker } from './parts/GapMarker.tsx';
import { HalfShaft } from './parts/HalfShaft.tsx';
import { JointBoot } from './parts/JointBoot.tsx';
import { Knuckle } from './parts/Knuckle.tsx';
import { Mounts } from './parts/Mounts.tsx';
import { Obstacles } from './parts/Obstacles.tsx';
import { materials } from './parts/Pieces.tsx';
import { Rack } from './parts/Rack.tsx';
import { Strap } from './parts/Strap.tsx';
import { TieRod } from './parts/TieRod.tsx';

/** Repaints the shared materials for the page's theme. */
function useTheme(): void {
  const theme = useStore(view, (state) => state.theme);
  const invalidate = useThree((state) => state.invalidate);
  useLayoutEffect(() => {
    paint(materials, theme);
    invalidate();
  }, [theme, invalidate]);
}

/** Draws the present design, or the held one as a grey shade; nothing while none is held. */
export function Corner({ design = 'present' }: { design?: Design }) {
  const corner = useCorner(design);
  useTheme();
  if (corner === null) return null;
  const isPresent = design === 'present';
  return (
    <DesignContext value={design}>
      <CornerContext value={corner}>
        <group name={`corner:${design}`} dispose={null}>
          <Arm name="lowerArm" />
          <Arm name="upperArm" />
          <Knuckle />
          <TieRod />
          {JOINT_NAMES.map((joint) => (
            <JointBoot key={joint} joint={joint} />
          ))}
          <Rack />
          {corner.coilover !== null && <Coilover />}
          {corner.lever !== null && <AntiRollBar />}
          {corner.shaft !== null && <HalfShaft />}
          {corner.strap !== null && <Strap />}
          {isPresent && <Mounts />}
          {isPresent && <Obstacles />}
          {isPresent && <GapMarker />}
        </group>
      </CornerContext>
    </DesignContext>
  );
}
