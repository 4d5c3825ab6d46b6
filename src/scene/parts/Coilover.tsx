import { useEffect, useMemo, useRef } from 'react';
import type { Group, Mesh } from 'three';
import { Slot } from '../../../solver/index.ts';
import { usePartCorner } from '../design.ts';
import { buildLowerUnit, buildUpperUnit } from '../geometry/coilover.ts';
import { coiloverShape, springLength } from '../geometry/coiloverShape.ts';
import { createSpring, stretchSpring } from '../geometry/spring.ts';
import { placeAlong } from '../placing.ts';
import { usePosed } from '../usePosed.ts';
import { Pieces, useMaterial, usePieces } from './Pieces.tsx';

/** The coilover: two units that slide on each other and a spring that is compressed between them. */
export function Coilover() {
  const { model } = usePartCorner();
  const { top } = model.coilover!;
  const shape = useMemo(() => coiloverShape(model), [model]);
  const { meanRadius, wire, coils } = shape.spring;
  const below = usePieces(() => buildLowerUnit(shape), shape);
  const above = usePieces(() => buildUpperUnit(shape), shape);
  const spring = useMemo(() => createSpring(meanRadius, wire, coils), [meanRadius, wire, coils]);
  useEffect(() => () => spring.geometry.dispose(), [spring]);
  const lower = useRef<Group>(null);
  const upper = useRef<Group>(null);
  const coil = useRef<Mesh>(null);
  const material = useMaterial('painted', 'coilover');
  usePosed(({ pose: { data } }) => {
    if (lower.current === null || upper.current === null || coil.current === null) return;
    const x = data[Slot.damperBottom]!;
    const y = data[Slot.damperBottom + 1]!;
    const z = data[Slot.damperBottom + 2]!;
    const dx = top[0] - x;
    const dy = top[1] - y;
    const dz = top[2] - z;
    placeAlong(lower.current, x, y, z, dx, dy, dz);
    placeAlong(upper.current, top[0], top[1], top[2], -dx, -dy, -dz);
    coil.current.position.z = shape.perch;
    const length = springLength(shape, Math.sqrt(dx * dx + dy * dy + dz * dz));
    if (length !== spring.length && Number.isFinite(length)) stretchSpring(spring, length);
  });
  return (
    <>
      <group ref={lower} matrixAutoUpdate={false}>
        <Pieces part="coilover" pieces={below} />
        <mesh
          ref={coil}
          name="coilover"
          geometry={spring.geometry}
          material={material}
          frustumCulled={false}
          castShadow={!material.transparent}
          receiveShadow={!material.transparent}
        />
      </group>
      <group ref={upper} matrixAutoUpdate={false}>
        <Pieces part="coilover" pieces={above} />
      </group>
    </>
  );
}
