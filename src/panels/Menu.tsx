/** A button that opens a sheet of choices under itself; Escape or a press elsewhere closes it. */
import './menu.css';
import { type ReactNode, useId, useRef, useState } from 'react';
import { zoomOf } from '../charts/zoom.ts';
import { Icon } from './icons.tsx';

export function Menu({
  label,
  title,
  children,
}: {
  label: ReactNode;
  title: string;
  children: ReactNode;
}) {
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const [isOpen, setOpen] = useState(false);

  /** Hangs the sheet under its button, inside the window. */
  function place(): void {
    const at = button.current?.getBoundingClientRect();
    if (at === undefined || sheet.current === null) return;
    const zoom = zoomOf(button.current);
    sheet.current.style.top = `${at.bottom / zoom + 6}px`;
    sheet.current.style.right = `${Math.max(8, (innerWidth - at.right) / zoom)}px`;
  }

  return (
    <div className="menu">
      <button
        ref={button}
        type="button"
        className="bar-button"
        popoverTarget={id}
        aria-expanded={isOpen}
        aria-label={title}
        onClick={place}
      >
        {label}
        <Icon name="down" size={12} />
      </button>
      <div
        ref={sheet}
        id={id}
        popover="auto"
        role="dialog"
        aria-label={title}
        className="menu-sheet"
        onToggle={(event) => setOpen(event.newState === 'open')}
      >
        {isOpen && children}
      </div>
    </div>
  );
}
