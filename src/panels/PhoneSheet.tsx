/** On a phone: gap, transport, and one panel at a time behind tabs, under the stage. */
import './phoneSheet.css';
import { lazy, type ReactNode, Suspense, useRef, useState } from 'react';
import { LateMapPad } from '../charts/LateMapPad.tsx';
import type { Panel } from '../state/view.ts';
import { CautionLine } from './CautionLine.tsx';
import { GapTile } from './GapTile.tsx';
import { Readings } from './Readings.tsx';
import { Transport } from './Transport.tsx';

const Points = lazy(() => import('./Points.tsx'));

const TABS: readonly (readonly [Panel, string])[] = [
  ['readings', 'Readings'],
  ['map', 'Map'],
  ['points', 'Points'],
];

const BODIES: Readonly<Record<Panel, () => ReactNode>> = {
  readings: () => <Readings />,
  map: () => <LateMapPad />,
  points: () => (
    <Suspense fallback={null}>
      <Points />
    </Suspense>
  ),
};

export function PhoneSheet() {
  const [tab, setTab] = useState<Panel>('readings');
  const bar = useRef<HTMLDivElement>(null);
  /** Arrows walk along the tabs and choose. */
  function walk(key: string): boolean {
    const way = { ArrowRight: 1, ArrowLeft: -1 }[key];
    if (way === undefined) return false;
    const at = TABS.findIndex(([name]) => name === tab);
    const next = TABS[(at + way + TABS.length) % TABS.length]?.[0] ?? tab;
    setTab(next);
    bar.current?.querySelector<HTMLElement>(`#tab-${next}`)?.focus();
    return true;
  }
  return (
    <div className="phone-sheet">
      <GapTile />
      <Transport />
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
            onClick={() => setTab(name)}
          >
            {label}
          </button>
        ))}
      </div>
      <div
        id="tab-body"
        role="tabpanel"
        aria-labelledby={`tab-${tab}`}
        className="phone-body"
        data-tab={tab}
      >
        {BODIES[tab]()}
      </div>
      <CautionLine />
    </div>
  );
}
