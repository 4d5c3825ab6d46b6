/** The points drawer: every number of the model, folder by folder, to be typed or slid. */
import './points.css';
import { useEffect, useId, useState } from 'react';
import { useStore } from 'zustand';
import { documentStore, view } from '../state/bench.ts';
import { MeshFiles } from './meshes/MeshFiles.tsx';
import { besideField } from './points/edit.ts';
import { listenToHistoryKeys } from './points/history.ts';
import { SectionPanel } from './points/SectionPanel.tsx';
import { SectionParts } from './points/SectionParts.tsx';
import { SECTIONS, type Section, sectionFields, sectionShape } from './points/sections.ts';

/** Folders left open, for the next time the drawer is opened. */
const _open = new Set<string>();

function Folder({ section }: { readonly section: Section }) {
  const id = useId();
  const [isOpen, setOpen] = useState(_open.has(section.key));
  const shape = useStore(documentStore, ({ model }) => sectionShape(section, model));
  const origin = useStore(documentStore, (state) => state.origin);
  const isEmpty = shape === '';

  function toggle(): void {
    if (isOpen) _open.delete(section.key);
    else _open.add(section.key);
    setOpen(!isOpen);
  }

  return (
    <section className="points-folder">
      <h3>
        <button type="button" aria-expanded={isOpen} aria-controls={id} onClick={toggle}>
          <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
            <path d="M4 2l4 4-4 4" fill="none" stroke="currentColor" strokeWidth="1.8" />
          </svg>
          {section.title}
          {isEmpty && <span className="points-none">none</span>}
        </button>
      </h3>
      <div id={id} className="points-body" hidden={!isOpen}>
        {isOpen && (
          <>
            {section.note !== undefined && <p className="points-note">{section.note}</p>}
            {!isEmpty && <SectionPanel key={`${origin}\n${shape}`} section={section} />}
            <SectionParts section={section} />
            {section.key === 'obstacles' && <MeshFiles />}
          </>
        )}
      </div>
    </section>
  );
}

/** A refusal that belongs to no field here: of a handle dragged in the scene. */
function Refusal() {
  const refusal = useStore(documentStore, (state) => state.refusal);
  const beside = useStore(besideField, (state) => state.text);
  if (refusal === null || refusal === beside) return null;
  return (
    <p className="points-refusal points-foot" role="alert">
      {refusal}
    </p>
  );
}

export default function Points() {
  useEffect(listenToHistoryKeys, []);
  const count = useStore(documentStore, ({ model }) =>
    SECTIONS.reduce((sum, section) => sum + sectionFields(section, model).length, 0),
  );
  return (
    <aside className="points" aria-label="Points and parts">
      <header>
        <h2>Points and parts</h2>
        <span className="points-count">{`${count} entries`}</span>
        <button
          type="button"
          aria-label="Put points and parts away"
          onClick={() => view.togglePanel('points')}
        >
          <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
            <path d="M3 3l10 10M13 3L3 13" fill="none" stroke="currentColor" strokeWidth="1.8" />
          </svg>
        </button>
      </header>
      <div className="points-folders">
        {SECTIONS.map((section) => (
          <Folder key={section.key} section={section} />
        ))}
      </div>
      <Refusal />
    </aside>
  );
}
