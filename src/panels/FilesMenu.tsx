/** The model's name in the top strip, and behind it: another model, a file, a name, notes. */
import './filesMenu.css';
import { lazy, Suspense, type ToggleEvent, useEffect, useId, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { zoomOf } from '../charts/zoom.ts';
import { documentStore } from '../state/bench.ts';
import { afterFirstPicture } from '../state/firstPicture.ts';

const loadActs = () => import('./files/acts.ts');
const FilesSheet = lazy(() => afterFirstPicture(() => import('./files/FilesSheet.tsx')));

const KEYS: Readonly<Record<string, 'save' | 'choose'>> = { s: 'save', o: 'choose' };

/** Ctrl+S and Ctrl+O (or the Command key) do what they do elsewhere. */
function useKeys(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey) return;
      const act = KEYS[event.key.toLowerCase()];
      if (act === undefined) return;
      event.preventDefault();
      if (!event.repeat) void loadActs().then((acts) => acts[act]());
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, []);
}

function Chevron() {
  return (
    <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      <path d="M2 4l4 4 4-4" fill="none" stroke="currentColor" strokeWidth="1.8" />
    </svg>
  );
}

export function FilesMenu() {
  useKeys();
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const [isOpen, setOpen] = useState(false);
  const name = useStore(documentStore, (state) => state.model.name);

  /** Hangs the sheet under its button, inside the window. */
  function place(): void {
    const at = button.current?.getBoundingClientRect();
    if (at === undefined || sheet.current === null) return;
    const zoom = zoomOf(button.current);
    sheet.current.style.left = `max(8px, min(${at.left / zoom}px, 100vw - 368px))`;
    sheet.current.style.top = `${at.bottom / zoom + 6}px`;
  }

  return (
    <div className="files">
      <button
        ref={button}
        type="button"
        className="files-button"
        popoverTarget={id}
        aria-expanded={isOpen}
        aria-label={`Model: ${name === '' ? 'without a name' : name}. Open, save, rename`}
        title={name}
        onClick={place}
      >
        <span data-long={name.length > 30 || undefined}>
          {name === '' ? 'Without a name' : name}
        </span>
        <Chevron />
      </button>
      <div
        ref={sheet}
        id={id}
        popover="auto"
        role="dialog"
        aria-label="Model"
        className="files-sheet"
        onToggle={(event: ToggleEvent<HTMLDivElement>) => setOpen(event.newState === 'open')}
      >
        {isOpen && (
          <Suspense fallback={null}>
            <FilesSheet onDone={() => sheet.current?.hidePopover()} />
          </Suspense>
        )}
      </div>
    </div>
  );
}
