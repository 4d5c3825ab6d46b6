/** Moves a part with the pose: the only way from the solver to the scene. */
import { useFrame } from '@react-three/fiber';
import { useContext, useLayoutEffect, useRef } from 'react';
import { posed } from '../state/bench.ts';
import type { Posed } from '../state/posed.ts';
import { DesignContext, posedOf } from './design.ts';

/**
 * Runs `move` in the frame after the pose changed or the component rendered, with the design that surrounds it. `move`
 * writes transforms or buffers in place and allocates nothing.
 */
export function usePosed(move: (posed: Posed) => void): void {
  const design = useContext(DesignContext);
  const latest = useRef(move);
  const seen = useRef(-1);
  useLayoutEffect(() => {
    latest.current = move;
    seen.current = -1;
  });
  useFrame(() => {
    const version = posed.version();
    if (seen.current === version) return;
    const solved = posedOf(design);
    if (solved === null) return;
    seen.current = version;
    latest.current(solved);
  });
}
