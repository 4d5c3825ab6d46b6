/** A rigid body drawn in vehicle axes of the design pose and carried by a frame of the pose. */
import { type ReactNode, useRef } from 'react';
import type { Group, Matrix4 } from 'three';
import { placeInFrame } from '../placing.ts';
import { usePosed } from '../usePosed.ts';

interface BodyProps {
  /** Where the body's origin and frame stand in the pose buffer. */
  readonly origin: number;
  readonly frame: number;
  /** From design-pose vehicle axes into the body's frame; left out where the geometry is in that frame already. */
  readonly design?: Matrix4;
  readonly children: ReactNode;
}

export function Body({ origin, frame, design, children }: BodyProps) {
  const group = useRef<Group>(null);
  usePosed(({ pose }) => {
    if (group.current !== null) placeInFrame(group.current, pose.data, origin, frame, design);
  });
  return (
    <group ref={group} matrixAutoUpdate={false}>
      {children}
    </group>
  );
}
