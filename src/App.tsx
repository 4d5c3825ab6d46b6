/** The page: the stage behind, everything else around its edges. */
import { lazy, Suspense } from 'react';
import { useStore } from 'zustand';
import { MapPad } from './charts/MapPad.tsx';
import { GapTile } from './panels/GapTile.tsx';
import { Readings } from './panels/Readings.tsx';
import { TopBar } from './panels/TopBar.tsx';
import { Transport } from './panels/Transport.tsx';
import { Stage } from './scene/Stage.tsx';
import { view } from './state/bench.ts';

const Points = lazy(() => import('./panels/Points.tsx'));

export function App() {
  const panels = useStore(view, (state) => state.panels);
  return (
    <>
      <Stage />
      <TopBar />
      {panels.points && (
        <Suspense fallback={null}>
          <Points />
        </Suspense>
      )}
      {panels.readings && <Readings />}
      {panels.map && <MapPad />}
      <GapTile />
      <Transport />
    </>
  );
}
