/** In a small window: gap, transport, and one panel at a time behind tabs, under the stage or beside it. */
import './phoneSheet.css';
import { lazy, type ReactNode, Suspense, useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { LateMapPad } from '../charts/LateMapPad.tsx';
import { view } from '../state/bench.ts';
import type { Panel } from '../state/view.ts';
import { CautionLine } from './CautionLine.tsx';
import { GapTile } from './GapTile.tsx';
import { Late } from './Late.tsx';
import { Readings } from './Readings.tsx';
import { SheetGrip, type SheetStep } from './SheetGrip.tsx';
import { Transport } from './Transport.tsx';
import { DOCKED_SHEETS, workSheet } from './workSheets.ts';

const loadPoints = () => import('./Points.tsx');
const WorkBody = lazy(() => import('./WorkSheet.tsx').then((late) => ({ default: late.WorkBody })));

const PANELS: readonly (readonly [Panel, string])[] = [
  ['readings', 'Readings'],
  ['map', 'Map'],
  ['points', 'Points'],
];
const TABS: readonly (readonly [string, string])[] = [
  ...PANELS,
  ...DOCKED_SHEETS.map(({ key, label }) => [`work-${key}`, label] as const),
];

const BODIES: Readonly<Record<Panel, () => ReactNode>> = {
  readings: () => <Readings />,
  map: () => <LateMapPad />,
  points: () => <Late load={loadPoints} />,
};

/** The tab that is shown, and how another is chosen: a panel's, or the work sheet's that the bench has open. */
function useTab() {
  const [panel, setPanel] = useState<Panel>('readings');
  const sheet = useStore(view, (state) => workSheet(state.work));
  function choose(name: string): void {
    const chosen = PANELS.find(([known]) => known === name)?.[0];
    if (chosen !== undefined) setPanel(chosen);
    view.openWork(chosen === undefined ? name.replace('work-', '') : null);
  }
  return { tab: sheet === undefined ? panel : `work-${sheet.key}`, panel, sheet, choose };
}

function Tabs({ tab, choose }: { readonly tab: string; readonly choose: (name: string) => void }) {
  const bar = useRef<HTMLDivElement>(null);
  useEffect(() => {
    bar.current
      ?.querySelector(`#tab-${tab}`)
      ?.scrollIntoView({ block: 'nearest', inline: 'center' });
  }, [tab]);
  /** Arrows walk along the tabs and choose. */
  function walk(key: string): boolean {
    const way = { ArrowRight: 1, ArrowLeft: -1 }[key];
    if (way === undefined) return false;
    const at = TABS.findIndex(([name]) => name === tab);
    const next = TABS[(at + way + TABS.length) % TABS.length]?.[0] ?? tab;
    choose(next);
    bar.current?.querySelector<HTMLElement>(`#tab-${next}`)?.focus();
    return true;
  }
  return (
    <div
      ref={bar}
      role="tablist"
      aria-label="Panels"
      className="phone-tabs"
      onKeyDown={(event) => {
        if (walk(event.key)) event.preventDefault();
      }}
    >
      {TABS.map(([name, label]) => (
        <button
          key={name}
          id={`tab-${name}`}
          type="button"
          role="tab"
          aria-selected={name === tab}
          aria-controls="tab-body"
          tabIndex={name === tab ? 0 : -1}
          onClick={() => choose(name)}
        >
          {label}
        </button>
      ))}
    </div>
  );
}

/** Under the stage the sheet stands at one of three heights; in a short window it stands beside the stage. */
export function PhoneSheet({ size }: { readonly size: 'phone' | 'short' }) {
  const { tab, panel, sheet, choose } = useTab();
  const place = useRef<HTMLDivElement>(null);
  const [step, setStep] = useState<SheetStep>('half');
  const isUnder = size === 'phone';
  return (
    <>
      {!isUnder && (
        <div className="place place-gap">
          <GapTile />
        </div>
      )}
      <div
        ref={place}
        className="place place-sheet phone-sheet"
        data-step={isUnder ? step : undefined}
      >
        {isUnder && <SheetGrip place={place} step={step} onStep={setStep} />}
        {isUnder && <GapTile />}
        <Transport isCompact />
        <Tabs
          tab={tab}
          choose={(name) => {
            choose(name);
            if (step === 'low') setStep('half');
          }}
        />
        <div
          key={tab}
          id="tab-body"
          role="tabpanel"
          aria-labelledby={`tab-${tab}`}
          className="phone-body"
          data-tab={sheet === undefined ? tab : 'work'}
        >
          {sheet === undefined ? (
            BODIES[panel]()
          ) : (
            <Suspense fallback={null}>
              <WorkBody sheet={sheet} />
            </Suspense>
          )}
          <CautionLine />
        </div>
      </div>
    </>
  );
}
