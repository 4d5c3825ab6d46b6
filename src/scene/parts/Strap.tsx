import { useEffect, useMemo } from 'react';
import { Slot } from '../../../solver/index.ts';
import { usePartCorner } from '../design.ts';
import { createStrap, hangStrap } from '../geometry/strap.ts';
import { usePosed } from '../usePosed.ts';
import { useMaterial } from './Pieces.tsx';

const _ends = new Float64Array(6);

/** The limit strap: taut at its length, bowed below it. */
export function Strap() {
  const { model } = usePartCorner();
  const { top, length } = model.strap!;
  const strap = useMemo(() => createStrap(length), [length]);
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
