/** The tabs along the dock's inner edge: the readings, and one work sheet at a time. */
import './rail.css';
import { useStore } from 'zustand';
import { view } from '../state/bench.ts';
import type { PageSize } from './size.ts';
import { WORK_SHEETS, workSheet } from './workSheets.ts';

const READINGS_ICON = 'M2.5 12.5a5.5 5.5 0 0 1 11 0M8 12.5l3-4.2M3 14.4h10';

interface TabProps {
  readonly label: string;
  readonly title: string;
  readonly icon: string;
  readonly isOpen: boolean;
  readonly onClick: () => void;
}

function Tab({ label, title, icon, isOpen, onClick }: TabProps) {
  return (
    <button
      type="button"
      className="rail-tab"
      data-rail=""
      aria-pressed={isOpen}
      title={isOpen ? `Put away: ${title}` : title}
      onClick={onClick}
    >
      <svg viewBox="0 0 16 16" width="20" height="20" aria-hidden="true">
        <path d={icon} />
      </svg>
      {label}
    </button>
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

export function Rail({ size }: { readonly size: PageSize }) {
  const work = useStore(view, (state) => workSheet(state.work)?.key ?? null);
  const isOn = useStore(view, (state) => state.panels.readings);
  const isShown = showsReadings(size, isOn, work !== null);
  return (
    <nav className="rail" aria-label="Readings and work sheets">
      <Tab
        label="Readings"
        title="Readings of the wheel"
        icon={READINGS_ICON}
        isOpen={isShown}
        onClick={() => turnReadings(isShown)}
      />
      {WORK_SHEETS.map(({ key, label, title, icon }) => (
        <Tab
          key={key}
          label={label}
          title={title}
          icon={icon}
          isOpen={key === work}
          onClick={() => view.openWork(key === work ? null : key)}
        />
      ))}
    </nav>
  );
}
