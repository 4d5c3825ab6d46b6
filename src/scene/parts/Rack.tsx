import { useMemo, useRef } from 'react';
import type { Group } from 'three';
import { Slot } from '../../../solver/index.ts';
import { tieRodDiameter } from '../../../solver/model/defaults.ts';
import { usePartCorner } from '../design.ts';
import { roundedFolds } from '../geometry/bellows.ts';
import { buildRackBar, buildRackHousing, rackShape } from '../geometry/rack.ts';
import { directionBetween } from '../placing.ts';
import { RACK } from '../proportions.ts';
import { usePosed } from '../usePosed.ts';
import { Boot } from './Boot.tsx';
import { Pieces, usePieces } from './Pieces.tsx';

/** The rack: housing on the body, bar that moves along the steering direction, and the boot over the inner joint. */
export function Rack() {
  const { model } = usePartCorner();
  const { steering, tieRod } = model;
  const housing = usePieces(() => buildRackHousing(model), steering, tieRod.inner);
  const moving = usePieces(() => buildRackBar(model), steering, tieRod.inner);
  const bar = useRef<Group>(null);
  const shape = useMemo(() => rackShape(model), [model]);
  const { mouth, direction } = shape;
  const [x, y, z] = tieRod.inner;
  usePosed(({ pose: { data } }) => {
    bar.current?.position.set(
      data[Slot.inner]! - x,
      data[Slot.inner + 1]! - y,
      data[Slot.inner + 2]! - z,
    );
  });
  const radii = useMemo(
    () =>
      roundedFolds(RACK.housing + 1, RACK.joint + 6, RACK.folds, 9, tieRodDiameter(tieRod) / 2 + 1),
    [tieRod],
  );
  return (
    <>
      <Pieces part="rack" pieces={housing} />
      <group ref={bar}>
        <Pieces part="rack" pieces={moving} />
      </group>
      <Boot
        part="rack"
        radii={radii}
        place={({ pose: { data } }, mouths) => {
          mouth.toArray(mouths as unknown as number[], 0);
          direction.toArray(mouths as unknown as number[], 3);
          directionBetween(data, Slot.inner, data, Slot.outer, mouths, 9);
          for (let k = 0; k < 3; k += 1)
            mouths[6 + k] = data[Slot.inner + k]! + RACK.bootOnRod * mouths[9 + k]!;
        }}
      />
    </>
  );
}
