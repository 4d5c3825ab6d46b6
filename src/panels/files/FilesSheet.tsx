/** What the files menu holds: a name, notes, another model, a file. Loaded behind the first picture. */
import { useStore } from 'zustand';
import { SHIPPED } from '../../files/shipped.ts';
import { documentStore } from '../../state/bench.ts';
import { choose, save } from './acts.ts';
import { LinkPart } from './LinkPart.tsx';
import { TextEntry } from './TextEntry.tsx';
import { taker } from './taker.ts';

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

export default function FilesSheet({ onDone }: { readonly onDone: () => void }) {
  const thenDone = (act: () => void) => () => {
    act();
    onDone();
  };
  return (
    <>
      <NameAndNotes />
      <div className="files-actions">
        <button type="button" onClick={thenDone(choose)}>
          Open a file…
        </button>
        <button type="button" onClick={thenDone(save)}>
          Save as a file
        </button>
      </div>
      <LinkPart onDone={onDone} />
      <h2>Start from a shipped model</h2>
      <ShippedList onChosen={onDone} />
      <p>
        A file can also be dropped anywhere on the page; a mesh (STL, PLY, OBJ, GLB) becomes an
        obstacle. Undo brings back what was there.
      </p>
    </>
  );
}
