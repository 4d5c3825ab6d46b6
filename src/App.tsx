/** The page: the stage behind, everything else in its place around the edges. */
import './App.css';
import { lazy, Suspense, useLayoutEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { LateMapPad } from './charts/LateMapPad.tsx';
import { CautionLine } from './panels/CautionLine.tsx';
import { FileDrop } from './panels/FileDrop.tsx';
import { GapTile } from './panels/GapTile.tsx';
import { watchInsets } from './panels/insets.ts';
import { listenToKeys } from './panels/keys.ts';
import { Late } from './panels/Late.tsx';
import { LeftRail, RightRail, shows } from './panels/Rail.tsx';
import { Readings } from './panels/Readings.tsx';
import { hasSheet, type PageSize, usePageSize } from './panels/size.ts';
import { TopBar } from './panels/TopBar.tsx';
import { Transport } from './panels/Transport.tsx';
import { workSheet } from './panels/workSheets.ts';
import { Stage } from './scene/Stage.tsx';
import { documentStore, inputs, view } from './state/bench.ts';
import { afterFirstPicture } from './state/firstPicture.ts';
import { followRide } from './state/ride.ts';

const loadPoints = () => import('./panels/Points.tsx');

// Nothing that the first picture shows: loaded behind it.
const Banner = lazy(() =>
  afterFirstPicture(() => import('./panels/Banner.tsx')).then((late) => ({ default: late.Banner })),
);
const Notices = lazy(() =>
  afterFirstPicture(() => import('./panels/Notices.tsx')).then((late) => ({
    default: late.Notices,
  })),
);
const Explanation = lazy(() =>
  afterFirstPicture(() => import('./panels/Explanation.tsx')).then((late) => ({
    default: late.Explanation,
  })),
);
const Sheets = lazy(() =>
  afterFirstPicture(() => import('./panels/Sheets.tsx')).then((late) => ({ default: late.Sheets })),
);

const CurveSheetHost = lazy(() =>
  afterFirstPicture(() => import('./charts/CurveSheetHost.tsx')).then((late) => ({
    default: late.CurveSheetHost,
  })),
);
const Meshes = lazy(() => afterFirstPicture(() => import('./panels/meshes/Meshes.tsx')));

const PhoneSheet = lazy(() =>
  import('./panels/PhoneSheet.tsx').then((late) => ({ default: late.PhoneSheet })),
);
const WorkSheet = lazy(() =>
  import('./panels/WorkSheet.tsx').then((late) => ({ default: late.WorkSheet })),
);

/** The panels of a page with room around the stage. */
function Desk({ size }: { readonly size: PageSize }) {
  const hasPoints = useStore(view, (state) => shows('points', size, state));
  const hasMap = useStore(view, (state) => shows('map', size, state));
  const hasReadings = useStore(view, (state) => shows('readings', size, state));
  const sheet = useStore(view, (state) => workSheet(state.work));
  const isWide = useStore(view, (state) => state.isWorkWide);
  return (
    <>
      {hasPoints && (
        <div className="place place-points">
          <Late load={loadPoints} />
        </div>
      )}
      {hasMap && (
        <div className="place place-map">
          <LateMapPad />
        </div>
      )}
      <div className="place place-foot">
        <GapTile />
        <Transport />
        <CautionLine />
      </div>
      <div className="place place-rail place-rail-left">
        <LeftRail size={size} />
      </div>
      <div className="place place-rail">
        <RightRail size={size} />
      </div>
      {sheet !== undefined && (
        <div className="place place-work" data-wide={isWide || undefined}>
          <Suspense fallback={null}>
            <WorkSheet sheet={sheet} />
          </Suspense>
        </div>
      )}
      {hasReadings && (
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
  const size = usePageSize();
  useTheme();
  // Before the page is painted: what is seen answers, and lies where it will stay.
  useLayoutEffect(() => {
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
          <Suspense fallback={null}>
            <Banner />
          </Suspense>
        </div>
        {hasSheet(size) ? (
          <Suspense fallback={null}>
            <PhoneSheet size={size} />
          </Suspense>
        ) : (
          <Desk size={size} />
        )}
      </div>
      <Suspense fallback={null}>
        <Explanation />
        <Sheets />
        <Meshes />
        <Notices />
      </Suspense>
      <FileDrop />
      <Suspense fallback={null}>
        <CurveSheetHost />
      </Suspense>
    </>
  );
}
