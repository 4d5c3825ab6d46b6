/** The tabs along the inner edges of the panels: points and map at the left, readings and work sheets at the right. */
import './rail.css';
import type { CSSProperties } from 'react';
import { useStore } from 'zustand';
import { view } from '../state/bench.ts';
import type { Panel, ViewState } from '../state/view.ts';
import type { PageSize } from './size.ts';
import { WORK_SHEETS, workSheet } from './workSheets.ts';

const ICONS = {
  points:
    'M3 4.4h5M11.6 4.4H13M3 11.6h1.4M8 11.6h5M9.8 2.6a1.8 1.8 0 1 1 0 3.6 1.8 1.8 0 0 1 0-3.6ZM6.2 9.8a1.8 1.8 0 1 1 0 3.6 1.8 1.8 0 0 1 0-3.6Z',
  map: 'M2.4 2.4h11.2v11.2H2.4ZM2.4 8h11.2M8 2.4v11.2M10.8 2.4c-1 3.6 1.2 7.2 0 11.2',
  readings: 'M2.5 12.5a5.5 5.5 0 0 1 11 0M8 12.5l3-4.2M3 14.4h10',
} as const;

interface TabProps {
  readonly label: string;
  readonly title: string;
  readonly icon: string;
  /** Whether what the tab switches is shown; a tab that opens a window of its own has none. */
  readonly isOpen?: boolean;
  readonly onClick: () => void;
}

function Tab({ label, title, icon, isOpen, onClick }: TabProps) {
  return (
    <button
      type="button"
      className="rail-tab"
      data-rail=""
      aria-pressed={isOpen}
      title={isOpen === true ? `Put away: ${title}` : title}
      onClick={onClick}
    >
      <svg viewBox="0 0 16 16" width="20" height="20" aria-hidden="true">
        <path d={icon} />
      </svg>
      {label}
    </button>
  );
}

/**
 * A work sheet takes the readings' place where there is not room for both, and in a tight window the map's; given its
 * greater width there, the points' too.
 */
export function shows(panel: Panel, size: PageSize, { panels, work, isWorkWide }: ViewState) {
  const isCrowded = {
    readings: size !== 'vast',
    map: size === 'tight',
    points: size === 'tight' && isWorkWide,
  }[panel];
  return panels[panel] && !(isCrowded && workSheet(work) !== undefined);
}

/** With a sheet in its place a panel's tab brings the panel forward; else it switches it. */
function turn(panel: Panel, isShown: boolean): void {
  const isHidden = !isShown && view.getState().panels[panel];
  if (!isHidden) view.togglePanel(panel);
  else if (panel === 'points') view.widenWork(false);
  else view.openWork(null);
}

export function LeftRail({ size }: { readonly size: PageSize }) {
  const hasPoints = useStore(view, (state) => shows('points', size, state));
  const hasMap = useStore(view, (state) => shows('map', size, state));
  return (
    <nav className="rail rail-left" aria-label="Points and map">
      <Tab
        label="Points"
        title="Points and parts of the model"
        icon={ICONS.points}
        isOpen={hasPoints}
        onClick={() => turn('points', hasPoints)}
      />
      <Tab
        label="Map"
        title="Travel–lock map"
        icon={ICONS.map}
        isOpen={hasMap}
        onClick={() => turn('map', hasMap)}
      />
    </nav>
  );
}

export function RightRail({ size }: { readonly size: PageSize }) {
  const work = useStore(view, (state) => workSheet(state.work)?.key ?? null);
  const hasReadings = useStore(view, (state) => shows('readings', size, state));
  return (
    <nav
      className="rail rail-right"
      aria-label="Readings and work sheets"
      style={{ '--tabs': WORK_SHEETS.length + 1 } as CSSProperties}
    >
      <Tab
        label="Readings"
        title="Readings of the wheel"
        icon={ICONS.readings}
        isOpen={hasReadings}
        onClick={() => turn('readings', hasReadings)}
      />
      {WORK_SHEETS.map((sheet) => {
        const { key, label, title, icon } = sheet;
        const face = { key, label, title, icon };
        if ('open' in sheet) return <Tab {...face} key={key} onClick={sheet.open} />;
        const open = (): void => view.openWork(key === work ? null : key);
        return <Tab {...face} key={key} isOpen={key === work} onClick={open} />;
      })}
    </nav>
  );
}
