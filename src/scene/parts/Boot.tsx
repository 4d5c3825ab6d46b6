/** A boot between two mouths: its buffers are rewritten with every pose. */
import { useEffect, useMemo, useRef } from 'react';
import type { Mesh } from 'three';
import type { Posed } from '../../state/posed.ts';
import { bendBellows, createBellows } from '../geometry/bellows.ts';
import type { PartName } from '../partNames.ts';
import { usePosed } from '../usePosed.ts';
import { useMaterial } from './Pieces.tsx';

interface BootProps {
  readonly part: PartName;
  /** Radii of the rings, first mouth first. */
  readonly radii: Float64Array;
  readonly segments?: number;
  readonly fullness?: number;
  /** Writes both mouths: point and unit direction of each, vehicle axes. Allocates nothing. */
  readonly place: (posed: Posed, mouths: Float64Array) => void;
}

export function Boot({ part, radii, segments = 20, fullness = 0.4, place }: BootProps) {
  const mesh = useRef<Mesh>(null);
  const material = useMaterial('painted', part);
  const key = radii.join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` holds the radii's values.
  const bellows = useMemo(
    () => createBellows(radii, segments, fullness),
    [key, segments, fullness],
  );
  useEffect(() => () => bellows.geometry.dispose(), [bellows]);
  usePosed((posed) => {
    place(posed, bellows.mouths);
    let sum = 0;
    for (let i = 0; i < 12; i += 1) sum += bellows.mouths[i]!;
    if (mesh.current === null) return;
    mesh.current.visible = Number.isFinite(sum);
    if (mesh.current.visible) bendBellows(bellows);
  });
  return (
    <mesh
      ref={mesh}
      name={part}
      geometry={bellows.geometry}
      material={material}
      frustumCulled={false}
      castShadow={!material.transparent}
    />
  );
}
