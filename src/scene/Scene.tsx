/** Everything in the picture. React renders it for what exists; where things are is written in frames. */
import { lazy, Suspense, useMemo } from 'react';
import { useStore } from 'zustand';
import { documentStore, view } from '../state/bench.ts';
import { afterFirstPicture } from '../state/firstPicture.ts';
import { VEHICLE_ROTATION } from './axes.ts';
import { Corner } from './Corner.tsx';
import { Camera } from './camera/Camera.tsx';
import { Ground } from './ground/Ground.tsx';
import { LabelFrame } from './labels/LabelFrame.tsx';
import { Lights } from './light/Lights.tsx';
import { countRender } from './renders.ts';
import type { Surroundings } from './surroundings.ts';
import { useIsHeld } from './useView.ts';

// The hand's ways and the drawings are loaded behind the first picture.
const Handles = lazy(() =>
  afterFirstPicture(() => import('./handles/Handles.tsx')).then((late) => ({
    default: late.Handles,
  })),
);
const Drawings = lazy(() =>
  afterFirstPicture(() => import('./drawings/Drawings.tsx')).then((late) => ({
    default: late.Drawings,
  })),
);
const SweptSpace = lazy(() =>
  afterFirstPicture(() => import('./swept/SweptSpace.tsx')).then((late) => ({
    default: late.SweptSpace,
  })),
);

interface Props {
  readonly stage: Surroundings;
}

export function Scene({ stage }: Props) {
  countRender();
  const model = useStore(documentStore, (state) => state.model);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the extent follows the model through the bench.
  const extent = useMemo(() => stage.extent(), [stage, model]);
  const isHeld = useIsHeld();
  const hasSwept = useStore(view, (state) => state.layers.sweptSpace);
  const { min, max } = extent.box;
  const at = useMemo(
    () => [(min[0] + max[0]) / 2, (min[2] + max[2]) / 2, -(min[1] + max[1]) / 2] as const,
    [min, max],
  );
  return (
    <>
      <Camera stage={stage} />
      <LabelFrame stage={stage} />
      <Lights at={at} />
      <group rotation={VEHICLE_ROTATION}>
        <Ground extent={extent} />
        <Corner />
        {isHeld && <Corner design="held" />}
        <Suspense fallback={null}>
          <Handles stage={stage} />
          <Drawings stage={stage} />
        </Suspense>
        {hasSwept && (
          <Suspense fallback={null}>
            <SweptSpace />
          </Suspense>
        )}
      </group>
    </>
  );
}
