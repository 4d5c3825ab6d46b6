/** The space the tyre sweeps as a translucent surface; what a fixed part cuts out of it is denser and netted. */
import { useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import { MeshStandardMaterial } from 'three';
import { useStore } from 'zustand';
import { swept } from '../../state/sweptSpace.ts';
import { useTheme } from '../useView.ts';
import { splitSurface } from './split.ts';

const COLOURS = {
  light: { clear: 0x0a6f8c, near: 0xb56a00, touch: 0xc1320f },
  dark: { clear: 0x63c1dd, near: 0xf2ae3d, touch: 0xff7a55 },
} as const;
const OPACITY = { clear: 0.16, near: 0.34, touch: 0.62, stale: 0.07 } as const;
/** After everything solid, before the lines over it. */
const ORDER = 20;

function make(isNet: boolean): MeshStandardMaterial {
  return new MeshStandardMaterial({
    transparent: true,
    depthWrite: false,
    roughness: 0.9,
    metalness: 0,
    wireframe: isNet,
  });
}

/** Made once, repainted in place. */
function useMaterials() {
  const materials = useMemo(
    () => ({ clear: make(false), near: make(false), touch: make(false), net: make(true) }),
    [],
  );
  useEffect(
    () => () => {
      for (const material of Object.values(materials)) material.dispose();
    },
    [materials],
  );
  return materials;
}

export function SweptSpace() {
  useEffect(() => swept.watch(), []);
  const shown = useStore(swept, (state) => state.shown);
  const isStale = useStore(swept, (state) => state.stage !== 'done');
  const theme = useTheme();
  const invalidate = useThree((state) => state.invalidate);
  const materials = useMaterials();
  const parts = useMemo(() => (shown === null ? null : splitSurface(shown)), [shown]);
  useEffect(
    () => () => {
      if (parts !== null) for (const geometry of Object.values(parts)) geometry.dispose();
    },
    [parts],
  );
  useEffect(() => {
    for (const state of ['clear', 'near', 'touch'] as const) {
      materials[state].color.setHex(COLOURS[theme][state]);
      materials[state].opacity = isStale ? OPACITY.stale : OPACITY[state];
    }
    materials.net.color.setHex(COLOURS[theme].touch);
    materials.net.opacity = isStale ? OPACITY.stale : 1;
    invalidate();
  }, [materials, theme, isStale, invalidate]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another surface is another picture.
  useEffect(() => invalidate(), [parts, invalidate]);
  if (parts === null) return null;
  return (
    <group name="sweptSpace">
      <mesh geometry={parts.clear} material={materials.clear} renderOrder={ORDER} />
      <mesh geometry={parts.near} material={materials.near} renderOrder={ORDER + 1} />
      <mesh geometry={parts.touch} material={materials.touch} renderOrder={ORDER + 2} />
      <mesh geometry={parts.touch} material={materials.net} renderOrder={ORDER + 3} />
    </group>
  );
}
