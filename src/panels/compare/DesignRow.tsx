/** One design of the list: its mark, its name, and what can be done with it. */
import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { MarkIcon, MarkLine } from '../../charts/MarkKey.tsx';
import { saveModel } from '../../files/save.ts';
import { documentStore, notices } from '../../state/bench.ts';
import { beside } from '../../state/compared.ts';
import type { BesideDesign, KeptDesign } from '../../state/designStore.ts';
import { designs } from '../../state/designs.ts';
import { onFrame } from '../../state/frame.ts';
import { PLACE_MARKS, PRESENT_MARK, YESTERDAY_MARK } from '../../state/marks.ts';
import { TextEntry } from '../files/TextEntry.tsx';
import { ALL_TAKEN } from './take.ts';

/** Says, while it is so, that a design cannot stand where the bench stands. */
function ReachNote({ design }: { readonly design: BesideDesign['key'] }) {
  const note = useRef<HTMLParagraphElement>(null);
  useEffect(
    () =>
      onFrame(() => {
        const list = beside.current();
        let isOut = false;
        for (let i = 0; i < list.length; i += 1) {
          const { key, posed } = list[i]!;
          if (key === design) isOut = posed.pose.outcome !== 'reached';
        }
        if (note.current !== null && note.current.hidden === isOut) note.current.hidden = !isOut;
      }),
    [design],
  );
  return (
    <p ref={note} className="compare-note" hidden>
      Out of reach at this travel and rack: not drawn.
    </p>
  );
}

function removeDesign({ place, model }: KeptDesign): void {
  const gone = designs.getState().remove(place);
  if (gone === null) return;
  const key = `removed-design-${place}`;
  notices.say({
    key,
    kind: 'status',
    text: `Design ${place}, ${model.name || 'without a name'}, was removed.`,
    action: {
      label: 'Put it back',
      run: () => {
        if (designs.getState().putBack(gone)) notices.dismiss(key);
        else notices.say({ key: 'compare-full', kind: 'alert', text: ALL_TAKEN });
      },
    },
  });
}

export function KeptRow({ design }: { readonly design: KeptDesign }) {
  const { place, model, isShown } = design;
  const mark = PLACE_MARKS[place];
  const act = designs.getState();
  const called = `${place}, ${model.name || 'without a name'}`;
  return (
    <li className="compare-design" data-design={place} data-hidden={!isShown || undefined}>
      <MarkIcon mark={mark} />
      <MarkLine mark={mark} />
      <TextEntry
        label={`Name of design ${place}`}
        text={model.name}
        onEntered={(name) => act.rename(place, name)}
      />
      <div className="compare-buttons">
        <label className="compare-show">
          <input
            type="checkbox"
            checked={isShown}
            aria-label={`Show ${called}`}
            onChange={() => act.show(place, !isShown)}
          />
          shown
        </label>
        <button
          type="button"
          className="bar-button"
          aria-label={`Work on this one: ${called}`}
          title="It changes places with the present design; undo changes them back"
          onClick={() => act.workOn(place)}
        >
          Work on this one
        </button>
        <button
          type="button"
          className="bar-button"
          aria-label={`Save as a file: ${called}`}
          onClick={() => saveModel(model)}
        >
          Save
        </button>
        <button
          type="button"
          className="bar-button"
          aria-label={`Remove: ${called}`}
          onClick={() => removeDesign(design)}
        >
          Remove
        </button>
      </div>
      <ReachNote design={place} />
    </li>
  );
}

export function PresentRow() {
  const name = useStore(documentStore, (state) => state.model.name);
  const isHeld = useStore(documentStore, (state) => state.held !== null);
  return (
    <li className="compare-design" data-design="present">
      <MarkIcon mark={PRESENT_MARK} />
      <MarkLine mark={PRESENT_MARK} />
      <p className="compare-name">
        {name || 'Without a name'} <small>present, on the bench</small>
      </p>
      {!isHeld && (
        <div className="compare-buttons">
          <button type="button" className="bar-button" onClick={documentStore.hold}>
            Hold the present design
          </button>
        </div>
      )}
    </li>
  );
}

/** Yesterday's design; with four others there it takes the place of the last of them, which waits. */
export function YesterdayRow({ waiting }: { readonly waiting: string | null }) {
  const name = useStore(documentStore, (state) => state.held?.name ?? '');
  function keep(): void {
    if (designs.getState().keepYesterday(name)) return;
    notices.say({ key: 'compare-full', kind: 'alert', text: ALL_TAKEN });
  }
  return (
    <li className="compare-design" data-design="yesterday">
      <MarkIcon mark={YESTERDAY_MARK} />
      <MarkLine mark={YESTERDAY_MARK} />
      <p className="compare-name">
        {name || 'Without a name'} <small>held as yesterday</small>
      </p>
      <div className="compare-buttons">
        <button
          type="button"
          className="bar-button"
          title="It becomes one of the named designs, and nothing is held any more"
          onClick={keep}
        >
          Keep as a named design
        </button>
        <button
          type="button"
          className="bar-button"
          aria-label="Let go of the held design"
          onClick={documentStore.release}
        >
          Let go
        </button>
      </div>
      {waiting !== null && (
        <p className="compare-note">
          Four are compared at once: design {waiting} waits until this one is let go of.
        </p>
      )}
    </li>
  );
}
