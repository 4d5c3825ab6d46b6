/** The ground under the contact patch, wherever the wheel stands: shadows, a soft patch under the tyre, and the scale grid. */
import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  type Group,
  type Mesh,
  ShadowMaterial,
} from 'three';
import { useStore } from 'zustand';
import { Slot } from '../../../solver/index.ts';
import { view } from '../../state/bench.ts';
import type { Extent } from '../camera/extent.ts';
import { PALETTES } from '../palette.ts';
import { countRender } from '../renders.ts';
import { usePosed } from '../usePosed.ts';
import { useTheme, useUnit } from '../useView.ts';
import { createBlob } from './blob.ts';
import { gridLines, type Rgb } from './grid.ts';
import { layGround } from './plane.ts';

const REACH = 1500;
const SHADOW_WIDTH = 2200;

function rgb(colour: string): Rgb {
  const { r, g, b } = new Color(colour);
  return [r, g, b];
}

interface Props {
  readonly extent: Extent;
}

function Lines({ extent }: Props) {
  countRender();
  const unit = useUnit();
  const palette = PALETTES[useTheme()];
  const isShown = useStore(view, (state) => state.layers.grid);
  const { box } = extent;
  const x = Math.round((box.min[0] + box.max[0]) / 200) * 100;
  const y = Math.round((box.min[1] + box.max[1]) / 200) * 100;
  const geometry = useMemo(() => {
    const grid = gridLines(unit, [x, y], REACH, rgb(palette.gridFine), rgb(palette.gridBold));
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(grid.positions, 3));
    made.setAttribute('color', new BufferAttribute(grid.colours, 4));
    return made;
  }, [unit, palette, x, y]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return (
    <lineSegments geometry={geometry} visible={isShown} renderOrder={-2}>
      <lineBasicMaterial vertexColors transparent depthWrite={false} toneMapped={false} />
    </lineSegments>
  );
}

/** The soft dark patch that follows the tyre's contact. */
function Patch({ extent }: Props) {
  countRender();
  const mesh = useRef<Mesh>(null);
  const picture = useMemo(createBlob, []);
  const palette = PALETTES[useTheme()];
  useEffect(() => () => picture.dispose(), [picture]);
  usePosed(({ pose: { data } }) => {
    const patch = mesh.current;
    if (patch === null) return;
    patch.position.set(data[Slot.contact]!, data[Slot.contact + 1]!, 1);
    patch.rotation.z = Math.atan2(-data[Slot.hubAxis]!, data[Slot.hubAxis + 1]!);
    patch.scale.set(extent.drum.radius * 1.25, extent.drum.half * 2.9, 1);
  });
  return (
    <mesh ref={mesh} renderOrder={-1} userData={{ castsNothing: true }}>
      <planeGeometry args={[1, 1]} />
      <meshBasicMaterial
        map={picture}
        color="#000000"
        opacity={palette.shadow * 2}
        transparent
        depthWrite={false}
        toneMapped={false}
      />
    </mesh>
  );
}

export function Ground({ extent }: Props) {
  countRender();
  const palette = PALETTES[useTheme()];
  const shadow = useMemo(
    () => new ShadowMaterial({ opacity: palette.shadow, depthWrite: false }),
    [palette],
  );
  useEffect(() => () => shadow.dispose(), [shadow]);
  const group = useRef<Group>(null);
  const gl = useThree((state) => state.gl);
  useLayoutEffect(() => {
    gl.localClippingEnabled = true;
  }, [gl]);
  usePosed(({ pose: { data } }) => {
    const z = data[Slot.contact + 2]!;
    layGround(z);
    group.current?.position.setZ(z);
  });
  const middle = (extent.box.min[1] + extent.box.max[1]) / 2;
  return (
    <group ref={group}>
      <mesh
        position={[0, middle, 0]}
        material={shadow}
        receiveShadow
        renderOrder={-3}
        userData={{ castsNothing: true }}
      >
        <planeGeometry args={[SHADOW_WIDTH, SHADOW_WIDTH]} />
      </mesh>
      <Lines extent={extent} />
      <Patch extent={extent} />
    </group>
  );
}
