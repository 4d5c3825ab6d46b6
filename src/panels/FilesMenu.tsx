/** The model's name in the top strip, and behind it: another model, a file, a name, notes. */
import './filesMenu.css';
import { type ToggleEvent, useEffect, useId, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { saveModel } from '../files/save.ts';
import { SHIPPED } from '../files/shipped.ts';
import { documentStore, notices } from '../state/bench.ts';
import { ALL_FILES } from './files/accepted.ts';
import { chooseFiles } from './files/choose.ts';
import { TextEntry } from './files/TextEntry.tsx';
import { taker } from './files/taker.ts';

/** A model names its mesh files and holds none of them. */
function save(): void {
  const { model } = documentStore.getState();
  saveModel(model);
  const files = new Set((model.obstacles ?? []).flatMap((one) => ('file' in one ? one.file : [])));
  if (files.size === 0) return;
  const text = `The saved model names ${[...files].join(', ')}: keep what it names in the same folder.`;
  notices.say({ key: 'saved-meshes', kind: 'status', text });
}

function choose(): void {
  chooseFiles(ALL_FILES, (files) => void taker.files(files));
}

/** Ctrl+S and Ctrl+O (or the Command key) do what they do elsewhere. */
function useKeys(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey) return;
      const act = { s: save, o: choose }[event.key.toLowerCase()];
      if (act === undefined) return;
      event.preventDefault();
      if (!event.repeat) act();
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

function ShippedList({ onChosen }: { readonly onChosen: () => void }) {
  const origin = useStore(documentStore, (state) => state.origin);
  return (
    <ul className="files-shipped">
      {SHIPPED.map(({ file, name, open }) => (
        <li key={file}>
          <button
            type="button"
            aria-current={file === origin ? 'true' : undefined}
            onClick={() => {
              onChosen();
              void taker.opening(open());
            }}
          >
            {name}
          </button>
        </li>
      ))}
    </ul>
  );
}

function NameAndNotes() {
  const name = useStore(documentStore, (state) => state.model.name);
  const notes = useStore(documentStore, (state) => state.model.notes ?? '');
  return (
    <>
      <TextEntry
        label="Name"
        text={name}
        onEntered={(text) => documentStore.edit((model) => ({ ...model, name: text }))}
      />
      <TextEntry
        label="Notes"
        rows={3}
        text={notes}
        onEntered={(text) =>
          documentStore.edit(({ notes: _, ...model }) =>
            text === '' ? model : { ...model, notes: text },
          )
        }
      />
    </>
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
    sheet.current.style.left = `max(8px, min(${at.left}px, 100vw - 368px))`;
    sheet.current.style.top = `${at.bottom + 6}px`;
  }

  const close = (): void => sheet.current?.hidePopover();
  const thenClose = (act: () => void) => () => {
    act();
    close();
  };
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
          <>
            <NameAndNotes />
            <div className="files-actions">
              <button type="button" onClick={thenClose(choose)}>
                Open a file…
              </button>
              <button type="button" onClick={thenClose(save)}>
                Save as a file
              </button>
            </div>
            <h2>Start from a shipped model</h2>
            <ShippedList onChosen={close} />
            <p>
              A file can also be dropped anywhere on the page; a mesh (STL, PLY, OBJ, GLB) becomes
              an obstacle. Undo brings back what was there.
            </p>
          </>
        )}
      </div>
    </div>
  );
}
