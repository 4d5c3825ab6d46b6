/** Buttons that give a section an optional part, with values computed from the present points, or take one away. */
import { useState } from 'react';
import { useStore } from 'zustand';
import { documentStore } from '../../state/bench.ts';
import { editModel } from './edit.ts';
import { partsOf } from './parts.ts';
import { Refused } from './Refused.tsx';
import type { Section } from './sections.ts';

type Verb = 'add' | 'remove';

const WORDS: Readonly<Record<Verb, string>> = { add: 'Add', remove: 'Remove' };

/** Names of what can be added or removed, a line each: as text, so that a drag of a point renders nothing here. */
function namesOf(section: Section, verb: Verb): string {
  return partsOf(section.key, documentStore.getState().model)
    .filter((part) => part[verb] !== null)
    .map(({ name }) => name)
    .join('\n');
}

function change(section: Section, verb: Verb, name: string): string | null {
  return editModel((model) => {
    const part = partsOf(section.key, model).find(
      (candidate) => candidate.name === name && candidate[verb] !== null,
    );
    return part?.[verb]?.(model) ?? model;
  });
}

export function SectionParts({ section }: { readonly section: Section }) {
  const added = useStore(documentStore, () => namesOf(section, 'add'));
  const removed = useStore(documentStore, () => namesOf(section, 'remove'));
  const [message, setMessage] = useState<string | null>(null);
  const buttons = (verb: Verb, names: string) =>
    names
      .split('\n')
      .filter((name) => name !== '')
      .map((name) => (
        <button
          key={`${verb} ${name}`}
          type="button"
          className={`points-part points-part-${verb}`}
          onClick={() => setMessage(change(section, verb, name))}
        >
          {`${WORDS[verb]} ${name}`}
        </button>
      ));
  if (added === '' && removed === '') return null;
  return (
    <div className="points-parts">
      {buttons('add', added)}
      {buttons('remove', removed)}
      <Refused message={message} />
    </div>
  );
}
