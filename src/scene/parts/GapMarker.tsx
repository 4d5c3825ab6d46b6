/** The line between the two nearest points of tie rod and wheel, drawn over everything, when they are too near or asked about. */
import { useEffect, useMemo, useRef } from 'react';
import { CylinderGeometry, type Group, type Mesh, MeshBasicMaterial, SphereGeometry } from 'three';
import { useStore } from 'zustand';
import { wantedGap } from '../../../solver/index.ts';
import { view } from '../../state/bench.ts';
import type { Theme } from '../../state/view.ts';
import { usePartCorner } from '../design.ts';
import { placeAlong } from '../placing.ts';
import { usePosed } from '../usePosed.ts';

const COLOURS: Record<Theme, Record<'clear' | 'near' | 'touch', number>> = {
  light: { clear: 0x0a6f8c, near: 0xb56a00, touch: 0xc1320f },
  dark: { clear: 0x63c1dd, near: 0xf2ae3d, touch: 0xff7a55 },
};
const LINE_RADIUS = 2.6;
const POINT_RADIUS = 6;
/** Over every other drawing. */
const ORDER = 50;

/** The marker's shapes and its one colour, made once and freed with it. */
function useSurfaces() {
  const surfaces = useMemo(
    () => ({
      bar: new CylinderGeometry(LINE_RADIUS, LINE_RADIUS, 1, 10)
        .rotateX(Math.PI / 2)
        .translate(0, 0, 0.5),
      ball: new SphereGeometry(POINT_RADIUS, 14, 10),
      material: new MeshBasicMaterial({
        depthTest: false,
        depthWrite: false,
        transparent: true,
        toneMapped: false,
      }),
    }),
    [],
  );
  useEffect(
    () => () => {
      surfaces.bar.dispose();
      surfaces.ball.dispose();
      surfaces.material.dispose();
    },
    [surfaces],
  );
  return surfaces;
}

/** Lays a bar of unit length from a point along a way, as long as the way is. */
function placeLine(
  line: Mesh,
  x: number,
  y: number,
  z: number,
  dx: number,
  dy: number,
  dz: number,
): void {
  placeAlong(line, x, y, z, dx, dy, dz);
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  const { elements } = line.matrix;
  for (let k = 8; k < 11; k += 1) elements[k] = elements[k]! * length;
}

export function GapMarker() {
  const { model } = usePartCorner();
  const theme = useStore(view, (state) => state.theme);
  const asked = useStore(view, (state) => state.lit === 'rodGap');
  const group = useRef<Group>(null);
  const line = useRef<Mesh>(null);
  const ends = [useRef<Mesh>(null), useRef<Mesh>(null)] as const;
  const { bar, ball, material } = useSurfaces();
  const wanted = wantedGap(model, 'tieRod', 'wheel');
  usePosed(({ wheelGap: { gap, rodPoint, wheelPoint } }) => {
    if (group.current === null || line.current === null) return;
    group.current.visible = gap < wanted || (asked && Number.isFinite(gap));
    if (!group.current.visible) return;
    material.color.setHex(COLOURS[theme][gap <= 0 ? 'touch' : gap < wanted ? 'near' : 'clear']);
    const x = rodPoint[0]!;
    const y = rodPoint[1]!;
    const z = rodPoint[2]!;
    const dx = wheelPoint[0]! - x;
    const dy = wheelPoint[1]! - y;
    const dz = wheelPoint[2]! - z;
    ends[0].current?.position.set(x, y, z);
    ends[1].current?.position.set(x + dx, y + dy, z + dz);
    placeLine(line.current, x, y, z, dx, dy, dz);
  });
  return (
    <group ref={group} visible={false} name="gap">
      <mesh
        ref={line}
        geometry={bar}
        material={material}
        renderOrder={ORDER}
        matrixAutoUpdate={false}
        frustumCulled={false}
      />
      <mesh
        ref={ends[0]}
        geometry={ball}
        material={material}
        renderOrder={ORDER}
        frustumCulled={false}
      />
      <mesh
        ref={ends[1]}
        geometry={ball}
        material={material}
        renderOrder={ORDER}
        frustumCulled={false}
      />
    </group>
  );
}
