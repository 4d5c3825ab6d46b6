/** What the model says of a cam and of the tie rod's adjuster: typed here, kept in the model. */
import { useStore } from 'zustand';
import type { Cam, Vector3 } from '../../../solver/index.ts';
import { camSlot } from '../../../solver/model/defaults.ts';
import { documentStore, view } from '../../state/bench.ts';
import { enteredLength, enteredNumber } from '../../words/entry.ts';
import { length, lengthNumber, lengthUnitName } from '../../words/format.ts';
import { editModel } from '../points/edit.ts';
import { withoutValue, withValue } from '../points/place.ts';
import { Entry } from './Entry.tsx';
import { camPath, type Pivot, waysOf } from './hardware.ts';

/** Takes a typed number to a path of the model; nothing typed takes the key away where it may be left out. */
export function takeNumber(path: string, text: string, isOptional = false): string | null {
  if (isOptional && text.trim() === '') return editModel((model) => withoutValue(model, path));
  const entered = enteredNumber(text);
  if (!entered.ok) return entered.why;
  return editModel((model) => withValue(model, path, entered.value), path);
}

/** As `takeNumber`, for a length. */
export function takeLength(path: string, text: string, isOptional = false): string | null {
  if (isOptional && text.trim() === '') return editModel((model) => withoutValue(model, path));
  const entered = enteredLength(text, view.getState().unit);
  if (!entered.ok) return entered.why;
  return editModel((model) => withValue(model, path, entered.value), path);
}

const WANTED = 'Write three numbers: forward, to the left, up; such as 0 1 0.';

/** Takes a direction: three numbers with blanks between them. */
export function takeDirection(path: string, text: string): string | null {
  const entered = text
    .trim()
    .split(/[\s;]+/)
    .map((word) => enteredNumber(word.replace(/,$/, '')));
  const numbers = entered.flatMap((each) => (each.ok ? [each.value] : []));
  if (entered.length !== 3 || numbers.length !== 3) return `Found “${text.trim()}”. ${WANTED}`;
  return editModel((model) => withValue(model, path, numbers), path);
}

export function directionText(direction: Vector3): string {
  return direction.map((number) => String(number).replace('-', '−')).join(' ');
}

export function CamFields({ pivot, cam }: { readonly pivot: Pivot; readonly cam: Cam }) {
  const unit = useStore(view, (state) => state.unit);
  const path = camPath(pivot);
  const name = `${pivot.name} cam`;
  const slot = camSlot(cam);
  return (
    <div className="align-fields">
      <Entry
        label="Throw"
        name={`${name}, throw`}
        hint={`Eccentricity: half of the ${length(2 * cam.throw, unit)} the pivot can move in all`}
        shown={lengthNumber(cam.throw, unit, 2)}
        unit={lengthUnitName(unit)}
        take={(text) => takeLength(`${path}.throw`, text)}
      />
      <Entry
        label="Marks a turn"
        name={`${name}, marks a turn`}
        hint="Marks on the cam in a whole turn; leave it empty where it has none"
        placeholder="none"
        shown={cam.marks === undefined ? '' : String(cam.marks)}
        take={(text) => takeNumber(`${path}.marks`, text, true)}
      />
      <Entry
        label={`Slot, positive ${waysOf(slot)[0]}`}
        name={`${name}, slot direction: forward, left, up`}
        hint={WANTED}
        shown={directionText(slot)}
        take={(text) => takeDirection(`${path}.slot`, text)}
      />
    </div>
  );
}

export function RodFields() {
  const unit = useStore(view, (state) => state.unit);
  const { pitch, flats } = useStore(documentStore, (state) => state.model.tieRod);
  return (
    <div className="align-fields">
      <Entry
        label="Length a turn"
        name="Tie rod, change of length in one turn"
        hint="All threads together: a sleeve with a left and a right hand thread changes by twice its pitch"
        placeholder="not stated"
        shown={pitch === undefined ? '' : lengthNumber(pitch, unit, 2)}
        unit={lengthUnitName(unit)}
        take={(text) => takeLength('tieRod.pitch', text)}
      />
      <Entry
        label="Flats a turn"
        name="Tie rod, flats a turn"
        hint="What a wrench counts on the adjuster in one turn; leave it empty to count turns"
        placeholder="turns only"
        shown={flats === undefined ? '' : String(flats)}
        take={(text) => takeNumber('tieRod.flats', text, true)}
      />
    </div>
  );
}
