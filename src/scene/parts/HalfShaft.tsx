import { useMemo, useRef } from 'react';
import type { Group } from 'three';
import { Slot } from '../../../solver/index.ts';
import { usePartCorner } from '../design.ts';
import { roundedFolds } from '../geometry/bellows.ts';
import { buildShaft, innerAxis, shaftRadius } from '../geometry/halfShaft.ts';
import { directionBetween, placeAlong } from '../placing.ts';
import { BELL, CUP, SHAFT_BOOT } from '../proportions.ts';
import { usePosed } from '../usePosed.ts';
import { Boot } from './Boot.tsx';
import { Pieces, usePieces } from './Pieces.tsx';

function bootRadii(shaft: number): Record<'outer' | 'inner', Float64Array> {
  return {
    outer: roundedFolds(BELL.radius + 1, shaft + 3, SHAFT_BOOT.folds, 9),
    inner: roundedFolds(CUP.radius + 1, shaft + 3, SHAFT_BOOT.folds, 9),
  };
}

/** The half-shaft's bar, sliding in the inner cup, and both boots. Cup and bell belong to body and knuckle. */
export function HalfShaft() {
  const corner = usePartCorner();
  const { model } = corner;
  const { inner, designLength } = corner.shaft!;
  const radius = shaftRadius(model);
  const axis = useMemo(() => innerAxis(model), [model]);
  const pieces = usePieces(() => buildShaft(designLength, radius), designLength, radius);
  const bar = useRef<Group>(null);
  usePosed(({ pose: { data } }) => {
    if (bar.current === null) return;
    const x = data[Slot.shaftOuter]!;
    const y = data[Slot.shaftOuter + 1]!;
    const z = data[Slot.shaftOuter + 2]!;
    placeAlong(bar.current, x, y, z, inner[0] - x, inner[1] - y, inner[2] - z);
  });
  const radii = useMemo(() => bootRadii(radius), [radius]);
  // Both boots end on the bar at fixed places of their own, but never past its middle.
  const outerReach = Math.min(SHAFT_BOOT.outer, 0.42 * designLength);
  const innerReach = Math.min(SHAFT_BOOT.inner, 0.46 * designLength);
  return (
    <>
      <group ref={bar} matrixAutoUpdate={false}>
        <Pieces part="halfShaft" pieces={pieces} />
      </group>
      <Boot
        part="halfShaft"
        radii={radii.outer}
        place={({ pose: { data } }, mouths) => {
          directionBetween(data, Slot.shaftOuter, inner, 0, mouths, 9);
          for (let k = 0; k < 3; k += 1) {
            const outer = data[Slot.shaftOuter + k]!;
            mouths[3 + k] = -data[Slot.hubAxis + k]!;
            mouths[k] = outer + (BELL.mouth - 10) * mouths[3 + k]!;
            mouths[6 + k] = outer + outerReach * mouths[9 + k]!;
          }
        }}
      />
      <Boot
        part="halfShaft"
        radii={radii.inner}
        place={({ pose: { data } }, mouths) => {
          directionBetween(inner, 0, data, Slot.shaftOuter, mouths, 9);
          axis.toArray(mouths as unknown as number[], 3);
          for (let k = 0; k < 3; k += 1) {
            mouths[k] = inner[k]! + (CUP.mouth - 8) * mouths[3 + k]!;
            mouths[6 + k] = inner[k]! + innerReach * mouths[9 + k]!;
          }
        }}
      />
    </>
  );
}
