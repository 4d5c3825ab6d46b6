/** The designs that are compared, and ways to add one. */
import { useState } from 'react';
import { useStore } from 'zustand';
import { SHIPPED } from '../../files/shipped.ts';
import { documentStore } from '../../state/bench.ts';
import { designsBeside, MOST_DESIGNS } from '../../state/designStore.ts';
import { designs } from '../../state/designs.ts';
import { KeptRow, PresentRow, YesterdayRow } from './DesignRow.tsx';
import { ALL_TAKEN, chooseDesigns, takeOpening } from './take.ts';

function addPresent(): void {
  documentStore.endGesture();
  const { model, origin } = documentStore.getState();
  designs.getState().add(model.name, model, origin);
}

function AddShipped({ isFull }: { readonly isFull: boolean }) {
  const [chosen, setChosen] = useState(SHIPPED[0]?.file ?? '');
  return (
    <div className="compare-shipped">
      <select
        aria-label="Shipped model"
        value={chosen}
        onChange={({ target }) => setChosen(target.value)}
      >
        {SHIPPED.map(({ file, name }) => (
          <option key={file} value={file}>
            {name}
          </option>
        ))}
      </select>
      <button
        type="button"
        className="bar-button"
        disabled={isFull}
        onClick={() => {
          const model = SHIPPED.find(({ file }) => file === chosen);
          if (model !== undefined) void takeOpening(model.open());
        }}
      >
        Add this model
      </button>
    </div>
  );
}

function AddDesign({ isFull }: { readonly isFull: boolean }) {
  return (
    <section aria-label="Add a design" className="compare-add">
      <div className="compare-buttons">
        <button type="button" className="bar-button" disabled={isFull} onClick={addPresent}>
          Add the present design
        </button>
        <button type="button" className="bar-button" disabled={isFull} onClick={chooseDesigns}>
          Add a file…
        </button>
      </div>
      <AddShipped isFull={isFull} />
      <p className="compare-note">
        {isFull
          ? ALL_TAKEN
          : 'While this sheet is open, a model file dropped anywhere on the page is added here; the present work stays.'}
      </p>
    </section>
  );
}

export function DesignList() {
  const kept = useStore(designs, (state) => state.kept);
  const held = useStore(documentStore, (state) => state.held);
  const isFull = kept.length + (held === null ? 1 : 2) >= MOST_DESIGNS;
  const beside = designsBeside(kept, held);
  const waiting = kept.find(
    ({ place, isShown }) => isShown && beside.every(({ key }) => key !== place),
  );
  return (
    <>
      <ul className="compare-designs" aria-label="Designs">
        <PresentRow />
        {held !== null && <YesterdayRow waiting={waiting?.place ?? null} />}
        {kept.map((design) => (
          <KeptRow key={design.place} design={design} />
        ))}
      </ul>
      <AddDesign isFull={isFull} />
    </>
  );
}
