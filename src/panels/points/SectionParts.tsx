/** Buttons that give a section an optional part, with values computed from the present points, or take one away. */
import { useState } from 'react';
import { useStore } from 'zustand';
import { documentStore } from '../../state/bench.ts';
import { editModel } from './edit.ts';
import { type Part, partsOf } from './parts.ts';
import { Refused } from './Refused.tsx';
import type { Section } from './sections.ts';

type Change = NonNullable<Part['add']>;

export function SectionParts({ section }: { readonly section: Section }) {
  const model = useStore(documentStore, (state) => state.model);
  const [message, setMessage] = useState<string | null>(null);
  const parts = partsOf(section.key, model);
  if (parts.length === 0) return null;
  const button = (verb: string, { name }: Part, change: Change) => (
    <button
      key={`${verb} ${name}`}
      type="button"
      className={`points-part points-part-${verb.toLowerCase()}`}
      onClick={() => setMessage(editModel(change))}
    >
      {`${verb} ${name}`}
    </button>
  );
  return (
    <div className="points-parts">
      {parts.map((part) => part.add && button('Add', part, part.add))}
      {parts.map((part) => part.remove && button('Remove', part, part.remove))}
      <Refused message={message} />
    </div>
  );
}
