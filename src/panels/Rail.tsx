/** The tabs along the inner edges of the panels: points and map at the left, readings and work sheets at the right. */
import './rail.css';
import { useStore } from 'zustand';
import { view } from '../state/bench.ts';
import type { PageSize } from './size.ts';
import { WORK_SHEETS, workSheet } from './workSheets.ts';

const ICONS = {
  points:
    'M3 4.4h5M11.6 4.4H13M3 11.6h1.4M8 11.6h5M9.8 2.6a1.8 1.8 0 1 1 0 3.6 1.8 1.8 0 0 1 0-3.6ZM6.2 9.8a1.8 1.8 0 1 1 0 3.6 1.8 1.8 0 0 1 0-3.6Z',
  map: 'M2.4 2.4h11.2v11.2H2.4ZM2.4 8h11.2M8 2.4v11.2M10.8 2.4c-1 3.6 1.2 7.200 0 11.2',
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

export function LeftRail() {
  const { points, map } = useStore(view, (state) => state.panels);
  return (
    <nav className="rail rail-left" aria-label="Points and map">
      <Tab
        label="Points"
        title="Points and parts of the model"
        icon={ICONS.points}
        isOpen={points}
        onClick={() => view.togglePanel('points')}
      />
      <Tab
        label="Map"
        title="Travel–lock map"
        icon={ICONS.map}
        isOpen={map}
        onClick={() => view.togglePanel('map')}
      />
    </nav>
  );
}

/** A work sheet takes the readings' place where there is not room for both. */
export function showsReadings(size: PageSize, isOn: boolean, isWorkOpen: boolean): boolean {
  return isOn && (size === 'vast' || !isWorkOpen);
}

/** With a sheet in its place the readings' tab brings them forward; else it switches them. */
function turnReadings(isShown: boolean): void {
  const { panels, work } = view.getState();
  if (!isShown && work !== null) view.openWork(null);
  if (isShown || !panels.readings) view.togglePanel('readings');
}

export function RightRail({ size }: { readonly size: PageSize }) {
  const work = useStore(view, (state) => workSheet(state.work)?.key ?? null);
  const isOn = useStore(view, (state) => state.panels.readings);
  const isShown = showsReadings(size, isOn, work !== null);
  return (
    <nav className="rail rail-right" aria-label="Readings and work sheets">
      <Tab
        label="Readings"
        title="Readings of the wheel"
        icon={ICONS.readings}
        isOpen={isShown}
        onClick={() => turnReadings(isShown)}
      />
      {WORK_SHEETS.map((sheet) => {
        const { key, label, title, icon } = sheet;
        const face = { key, label, title, icon };
        if ('open' in sheet) return <Tab {...face} key={key} onClick={sheet.open} />;
        const turn = (): void => view.openWork(key === work ? null : key);
        return <Tab {...face} key={key} isOpen={key === work} onClick={turn} />;
      })}
    </nav>
  );
}
