/** The page: the stage behind, everything else in its place around the edges. */
import './App.css';
import { lazy, Suspense, useEffect, useLayoutEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { CurveSheetHost } from './charts/CurveSheetHost.tsx';
import { LateMapPad } from './charts/LateMapPad.tsx';
import { Banner } from './panels/Banner.tsx';
import { CautionLine } from './panels/CautionLine.tsx';
import { FileDrop } from './panels/FileDrop.tsx';
import { GapTile } from './panels/GapTile.tsx';
import { watchInsets } from './panels/insets.ts';
import { listenToKeys } from './panels/keys.ts';
import { Notices } from './panels/Notices.tsx';
import { PhoneSheet } from './panels/PhoneSheet.tsx';
import { Readings } from './panels/Readings.tsx';
import { usePageSize } from './panels/size.ts';
import { TopBar } from './panels/TopBar.tsx';
import { Transport } from './panels/Transport.tsx';
import { Stage } from './scene/Stage.tsx';
import { documentStore, inputs, view } from './state/bench.ts';
import { afterFirstPicture } from './state/firstPicture.ts';
import { followRide } from './state/ride.ts';

const Points = lazy(() => import('./panels/Points.tsx'));

// Nothing that the first picture shows: loaded behind it.
const Explanation = lazy(() =>
  afterFirstPicture(() => import('./panels/Explanation.tsx')).then((late) => ({
    default: late.Explanation,
  })),
);
const Sheets = lazy(() =>
  afterFirstPicture(() => import('./panels/Sheets.tsx')).then((late) => ({ default: late.Sheets })),
);

/** The panels of a page with room around the stage. */
function Desk() {
  const panels = useStore(view, (state) => state.panels);
  return (
    <>
      {panels.points && (
        <div className="place place-points">
          <Suspense fallback={null}>
            <Points />
          </Suspense>
        </div>
      )}
      {panels.map && (
        <div className="place place-map">
          <LateMapPad />
        </div>
      )}
      <div className="place place-foot">
        <GapTile />
        <Transport />
        <CautionLine />
      </div>
      {panels.readings && (
        <div className="place place-readings">
          <Readings />
        </div>
      )}
    </>
  );
}

/** Dresses the page in the theme before it is painted. */
function useTheme(): void {
  const theme = useStore(view, (state) => state.theme);
  useLayoutEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
}

/** Each place is filled by its component; App.css says where it is at which size. */
export function App() {
  const frame = useRef<HTMLDivElement>(null);
  const isPhone = usePageSize() === 'phone';
  useTheme();
  useEffect(() => {
    const exits = [listenToKeys(), followRide(documentStore, inputs)];
    if (frame.current !== null) exits.push(watchInsets(frame.current));
    return () => {
      for (const exit of exits) exit();
    };
  }, []);
  return (
    <>
      <Stage />
      <div ref={frame} className="frame">
        <div className="place place-top">
          <TopBar />
        </div>
        <div className="place place-banner">
          <Banner />
        </div>
        {isPhone ? (
          <div className="place place-sheet">
            <PhoneSheet />
          </div>
        ) : (
          <Desk />
        )}
      </div>
      <Suspense fallback={null}>
        <Explanation />
        <Sheets />
      </Suspense>
      <FileDrop />
      <CurveSheetHost />
      <Notices />
    </>
  );
}
