import { useEffect, useMemo } from 'react';
import { Slot } from '../../../solver/index.ts';
import { usePartCorner } from '../design.ts';
import { toVector } from '../geometry/solid.ts';
import { createStrap, hangStrap, strapAside } from '../geometry/strap.ts';
import { usePosed } from '../usePosed.ts';
import { useMaterial } from './Pieces.tsx';

const _ends = new Float64Array(6);

/** The limit strap: taut at its length, bowed below it. */
export function Strap() {
  const { model } = usePartCorner();
  const { top, length } = model.strap!;
  const beside = model.coilover?.top ?? null;
  const strap = useMemo(() => {
    const other = beside === null ? null : toVector(beside);
    return createStrap(length, strapAside({ top: toVector(top) }, other));
  }, [length, top, beside]);
  useEffect(() => () => strap.geometry.dispose(), [strap]);
  const material = useMaterial('webbing', 'strap');
  usePosed(({ pose: { data } }) => {
    for (let k = 0; k < 3; k += 1) {
      _ends[k] = top[k]!;
      _ends[3 + k] = data[Slot.strapBottom + k]!;
    }
    if (Number.isFinite(_ends[3]! + _ends[4]! + _ends[5]!)) hangStrap(strap, _ends);
  });
  return (
    <mesh
      name="strap"
      geometry={strap.geometry}
      material={material}
      frustumCulled={false}
      castShadow={!material.transparent}
    />
  );
}
