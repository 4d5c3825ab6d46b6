/** The space the tyre sweeps, over everything that does not move with it; worked out behind the page while it is shown. */
import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { swept } from '../../state/sweptSpace.ts';
import { PALETTES } from '../palette.ts';
import { countRender } from '../renders.ts';
import { useTheme } from '../useView.ts';
import { sweptGeometry } from './geometry.ts';
import { createSweptMaterials } from './material.ts';

/** After everything solid and all other glass, before the lines over it. */
const ORDER = 20;

const ignore = (): void => undefined;

export function SweptSpace() {
  countRender();
  const palette = PALETTES[useTheme()];
  const shown = useStore(swept, (state) => state.shown);
  const isStale = useStore(swept, (state) => state.stage !== 'done');
  const invalidate = useThree((state) => state.invalidate);
  const materials = useMemo(createSweptMaterials, []);
  const geometry = useMemo(() => (shown === null ? null : sweptGeometry(shown)), [shown]);
  useEffect(() => swept.watch(), []);
  useEffect(() => () => materials.dispose(), [materials]);
  useEffect(() => () => geometry?.dispose(), [geometry]);
  useLayoutEffect(() => {
    materials.paint(palette, isStale);
    if (geometry !== null) invalidate();
  }, [materials, palette, isStale, geometry, invalidate]);
  if (geometry === null) return null;
  return (
    <group name="sweptSpace">
      <mesh geometry={geometry} material={materials.depth} renderOrder={ORDER} raycast={ignore} />
      <mesh
        name="sweptSpace"
        geometry={geometry}
        material={materials.glass}
        renderOrder={ORDER + 1}
        raycast={ignore}
      />
    </group>
  );
}
