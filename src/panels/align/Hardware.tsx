/** The hardware that is there, to be turned; and the places where more may be put. */
import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import type { Cam } from '../../../solver/index.ts';
import { documentStore, view } from '../../state/bench.ts';
import { lookAtCam } from '../../state/closeUp.ts';
import { length } from '../../words/format.ts';
import { editModel } from '../points/edit.ts';
import { withoutValue, withValue } from '../points/place.ts';
import { Dial } from './Dial.tsx';
import { camSource, rodSource } from './dialSources.ts';
import { CamFields, RodFields } from './HardwareFields.tsx';
import { camOn, camPath, PIVOTS, type Pivot, USUAL_THROW } from './hardware.ts';
import { ShimCard, shimOn, withShim } from './ShimCard.tsx';

function CamCard({ pivot, cam }: { readonly pivot: Pivot; readonly cam: Cam }) {
  const { marks } = cam;
  const source = useMemo(() => camSource(pivot, marks ?? null), [pivot, marks]);
  const look = useMemo(() => ({ pivot: pivot.pivot, name: `${pivot.name} cam` }), [pivot]);
  return (
    <section className="align-card" aria-label={`${pivot.name} cam`} data-hardware={pivot.cam}>
      <h4>{pivot.name} cam</h4>
      <Dial key={JSON.stringify(cam.slot)} source={source} isCam onHand={() => lookAtCam(look)} />
      <details>
        <summary>Throw, slot, marks</summary>
        <CamFields pivot={pivot} cam={cam} />
        <button
          type="button"
          className="bar-button"
          onClick={() => editModel((model) => withoutValue(model, camPath(pivot)))}
        >
          Remove this cam
        </button>
      </details>
    </section>
  );
}

function RodCard() {
  const { pitch, flats } = useStore(documentStore, (state) => state.model.tieRod);
  const source = useMemo(() => rodSource(flats ?? null), [flats]);
  return (
    <section className="align-card" aria-label="Tie rod" data-hardware="tieRod">
      <h4>Tie rod</h4>
      {pitch === undefined ? (
        <p className="align-note">State the pitch of its thread, and it can be turned.</p>
      ) : (
        <Dial source={source} isCam={false} />
      )}
      <details open={pitch === undefined || undefined}>
        <summary>Pitch, flats</summary>
        <RodFields />
      </details>
    </section>
  );
}

function EmptyPivot({ pivot }: { readonly pivot: Pivot }) {
  const unit = useStore(view, (state) => state.unit);
  const addCam = () =>
    editModel((model) => withValue(model, camPath(pivot), { throw: USUAL_THROW, angle: 0 }));
  return (
    <section className="align-bare" aria-label={pivot.name} data-bare={pivot.cam}>
      <h4>{pivot.name}</h4>
      <button
        type="button"
        className="bar-button"
        aria-label={`Add a cam: ${pivot.name}`}
        title={`It starts with a throw of ${length(USUAL_THROW, unit)}, a usual size without a source: write what yours has`}
        onClick={addCam}
      >
        Add a cam here
      </button>
      {pivot.arm === 'upperArm' && (
        <button
          type="button"
          className="bar-button"
          aria-label={`Add shims: ${pivot.name}`}
          onClick={() => editModel((model) => withShim(model, pivot))}
        >
          Add shims
        </button>
      )}
    </section>
  );
}

export function Hardware() {
  const model = useStore(documentStore, (state) => state.model);
  // The picture looks at the cam that was taken in hand last, as long as the sheet is open.
  useEffect(() => () => lookAtCam(null), []);
  const bare = PIVOTS.filter((pivot) => !camOn(model, pivot) && !shimOn(model, pivot));
  return (
    <section aria-label="Hardware">
      <div className="align-cards">
        {PIVOTS.map((pivot) => {
          const [cam, shim] = [camOn(model, pivot), shimOn(model, pivot)];
          if (cam !== undefined) return <CamCard key={pivot.cam} pivot={pivot} cam={cam} />;
          if (shim === undefined) return null;
          return <ShimCard key={pivot.cam} pivot={pivot} shim={shim} />;
        })}
        <RodCard />
      </div>
      {bare.length > 0 && (
        <div className="align-bares">
          {bare.map((pivot) => (
            <EmptyPivot key={pivot.cam} pivot={pivot} />
          ))}
        </div>
      )}
    </section>
  );
}
