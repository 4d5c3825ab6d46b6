import './name.css';
import { useStore } from 'zustand';
import type { AxleKey, MeasureKey } from '../../solver/index.ts';
import { explain, explained, stopExplaining } from './explain.ts';

/** A name that explains itself on hover, focus and tap. */
export function Name({
  measure,
  label,
  className = '',
}: {
  measure: MeasureKey | AxleKey;
  label: string;
  className?: string;
}) {
  const isExplained = useStore(explained, (state) => state.now?.key === measure);
  const start = (anchor: HTMLElement) => explain({ key: measure, title: label, anchor });
  return (
    <button
      type="button"
      className={`name ${className}`}
      aria-describedby={isExplained ? 'explanation' : undefined}
      onPointerEnter={(event) => {
        if (event.pointerType === 'mouse') start(event.currentTarget);
      }}
      onPointerLeave={(event) => {
        if (event.pointerType === 'mouse' && document.activeElement !== event.currentTarget) {
          stopExplaining(event.currentTarget);
        }
      }}
      onFocus={(event) => start(event.currentTarget)}
      onBlur={(event) => stopExplaining(event.currentTarget)}
      onClick={(event) => start(event.currentTarget)}
    >
      {label}
    </button>
  );
}
