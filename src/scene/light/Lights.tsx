/** The stage's light by theme: a soft key with one shadow map, a fill from sky and floor, and the surroundings in metal. */
import { useThree } from '@react-three/fiber';
import { useLayoutEffect, useMemo, useRef } from 'react';
import { Color, type DirectionalLight } from 'three';
import { PALETTES } from '../palette.ts';
import { countRender } from '../renders.ts';
import { useTheme } from '../useView.ts';
import { createSurroundings } from './surroundings.ts';

/** Half the width of what the key light's shadow covers, mm. */
const REACH = 800;
const SHADOW_SIZE = 1024;

interface Props {
  /** What the light is turned to, in three's axes, mm. */
  readonly at: readonly [number, number, number];
}

export function Lights({ at }: Props) {
  countRender();
  const theme = useTheme();
  const palette = PALETTES[theme];
  const scene = useThree((state) => state.scene);
  const surroundings = useMemo(createSurroundings, []);
  const light = useRef<DirectionalLight>(null);

  useLayoutEffect(() => {
    scene.environment = surroundings;
    return () => {
      scene.environment = null;
      surroundings.dispose();
    };
  }, [scene, surroundings]);

  useLayoutEffect(() => {
    scene.background = new Color(palette.background);
    scene.environmentIntensity = palette.surroundings;
  }, [scene, palette]);

  useLayoutEffect(() => {
    const key = light.current;
    if (key === null) return;
    const [x, y, z] = at;
    key.position.set(x + 650, y + 2500, z - 700);
    key.target.position.set(x, y, z);
    key.target.updateMatrixWorld();
    const { camera } = key.shadow;
    camera.left = -REACH;
    camera.right = REACH;
    camera.top = REACH;
    camera.bottom = -REACH;
    camera.near = 400;
    camera.far = 4200;
    camera.updateProjectionMatrix();
  }, [at]);

  return (
    <>
      <directionalLight
        ref={light}
        castShadow
        color={palette.key}
        intensity={palette.keyStrength}
        shadow-mapSize-width={SHADOW_SIZE}
        shadow-mapSize-height={SHADOW_SIZE}
        shadow-bias={-0.0006}
        shadow-normalBias={2}
        shadow-radius={7}
      />
      <hemisphereLight
        color={palette.sky}
        groundColor={palette.floor}
        intensity={palette.fillStrength}
      />
    </>
  );
}
