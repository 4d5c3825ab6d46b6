/** The page: the stage behind, everything else in its place around the edges. */
import './App.css';
import { lazy, Suspense } from 'react';
import { useStore } from 'zustand';
import { MapPad } from './charts/MapPad.tsx';
import { FileDrop } from './panels/FileDrop.tsx';
import { GapTile } from './panels/GapTile.tsx';
import { Notices } from './panels/Notices.tsx';
import { Readings } from './panels/Readings.tsx';
import { TopBar } from './panels/TopBar.tsx';
import { Transport } from './panels/Transport.tsx';
import { Stage } from './scene/Stage.tsx';
import { view } from './state/bench.ts';

const Points = lazy(() => import('./panels/Points.tsx'));

/** Each place fills itself with its component (width and height 100 %); App.css says where it is at which size. */
export function App() {
  const panels = useStore(view, (state) => state.panels);
  return (
    <>
      <Stage />
      <div className="frame">
        <div className="place place-top">
          <TopBar />
        </div>
        {panels.points && (
          <div className="place place-points">
            <Suspense fallback={null}>
              <Points />
            </Suspense>
          </div>
        )}
        {panels.map && (
          <div className="place place-map">
            <MapPad />
          </div>
        )}
        <div className="place place-foot">
          <GapTile />
          <Transport />
        </div>
        {panels.readings && (
          <div className="place place-readings">
            <Readings />
          </div>
        )}
      </div>
      <Notices />
      <FileDrop />
    </>
  );
}
