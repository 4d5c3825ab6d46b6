/** Asks of a mesh file what it does not say: its unit, which way it points, and where it stands. */
import '../sheets.css';
import './meshDialog.css';
import { useId, useState } from 'react';
import { Slot } from '../../../solver/index.ts';
import { tyreDimensions } from '../../../solver/model/tyre.ts';
import { documentStore, posed } from '../../state/bench.ts';
import type { OfferedMesh } from '../../state/meshes.ts';
import { useModal } from '../../state/useModal.ts';
import { choiceOf, countWords, draftOf, type MeshDraft, type WheelPlace } from './choice.ts';
import { meshLoader } from './loader.ts';
import { AxesChoice, NameChoice, UnitChoice, WhereChoice } from './MeshChoices.tsx';

function wheelPlace(): WheelPlace {
  const { corner, pose } = posed.current();
  const { model } = corner;
  const [x, y, z] = pose.data.subarray(Slot.centre, Slot.centre + 3);
  const { overallDiameter } = tyreDimensions(model.tyre, model.wheel);
  return { centre: [x!, y!, z!], radius: overallDiameter / 2 };
}

/** Asks about one file; its key must change with the file. */
export function MeshDialog({ offered }: { readonly offered: OfferedMesh }) {
  const { dialog, isClosed } = useModal();
  const title = useId();
  const [draft, setDraft] = useState(() => draftOf(offered, documentStore.getState().model));
  const [wheel] = useState(wheelPlace);
  const [refusal, setRefusal] = useState<string | null>(null);
  const choice = choiceOf(offered, draft, wheel);
  const shared = {
    offered,
    draft,
    onDraft: (next: MeshDraft) => {
      setDraft(next);
      setRefusal(null);
    },
  };
  const triangles = offered.reading.mesh.index.length / 3;
  return (
    <dialog
      ref={dialog}
      className="sheet mesh-sheet"
      aria-labelledby={title}
      onClose={() => {
        if (isClosed()) meshLoader.decline(offered);
      }}
    >
      <form
        className="sheet-body"
        onSubmit={(event) => {
          event.preventDefault();
          if (choice !== null) setRefusal(meshLoader.place(offered, choice));
        }}
      >
        <h2 id={title}>{`Place ${offered.name}`}</h2>
        <p className="mesh-hint">{`${countWords(triangles)} triangles`}</p>
        <UnitChoice {...shared} />
        <AxesChoice {...shared} />
        <NameChoice {...shared} />
        {draft.replaces === null && <WhereChoice {...shared} wheel={wheel} />}
        {refusal !== null && (
          <p className="mesh-refusal" role="alert">
            {refusal}
          </p>
        )}
        <div className="mesh-actions">
          <button type="button" className="bar-button" onClick={() => dialog.current?.close()}>
            Leave it out
          </button>
          <button type="submit" className="mesh-place" disabled={choice === null}>
            {choice === null ? 'Choose the unit first' : 'Place it'}
          </button>
        </div>
      </form>
    </dialog>
  );
}
