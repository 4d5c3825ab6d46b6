/** The questions a mesh file is asked, one each. */
import { type ReactNode, useId } from 'react';
import { useStore } from 'zustand';
import { AXES, type Axis, axesAcross } from '../../mesh/axes.ts';
import type { MeshBox } from '../../mesh/data.ts';
import { documentStore, view } from '../../state/bench.ts';
import type { OfferedMesh } from '../../state/meshes.ts';
import {
  boxOfDraft,
  isGlb,
  type MeshDraft,
  namesakes,
  sidesOf,
  sizeWords,
  UNITS,
  type WheelPlace,
  type Where,
  whereOf,
  withUp,
} from './choice.ts';

/** Sizes that hardly are meant, mm. */
const TINY = 8;
const HUGE = 6000;

function doubt(box: MeshBox): string {
  const longest = Math.max(...sidesOf(box));
  if (longest < TINY) return 'smaller than a nut';
  return longest > HUGE ? 'larger than the vehicle' : '';
}

interface PartProps {
  readonly offered: OfferedMesh;
  readonly draft: MeshDraft;
  readonly onDraft: (draft: MeshDraft) => void;
}

function Field({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <fieldset className="mesh-field">
      <legend>{title}</legend>
      {children}
    </fieldset>
  );
}

export function UnitChoice({ offered, draft, onDraft }: PartProps) {
  const shown = useStore(view, (state) => state.unit);
  const group = useId();
  return (
    <Field title="The file’s numbers are">
      <div className="mesh-units">
        {UNITS.map(({ unit, name }) => {
          const box = boxOfDraft(offered, draft, unit);
          return (
            <label key={unit} data-chosen={draft.unit === unit || undefined}>
              <input
                type="radio"
                name={group}
                value={unit}
                checked={draft.unit === unit}
                onChange={() => onDraft({ ...draft, unit })}
              />
              <span className="mesh-unit">{name}</span>
              <span className="mesh-size">{sizeWords(sidesOf(box), shown)}</span>
              <span className="mesh-doubt">{doubt(box)}</span>
            </label>
          );
        })}
      </div>
      <p className="mesh-hint">
        {isGlb(offered)
          ? 'GLB is in metres by its standard. Sizes are long × wide × high.'
          : 'The file does not say. Sizes are long × wide × high: choose the one that is right.'}
      </p>
    </Field>
  );
}

const AXIS_WORDS: Readonly<Record<Axis, string>> = {
  x: 'x',
  '-x': '−x',
  y: 'y',
  '-y': '−y',
  z: 'z',
  '-z': '−z',
};

function AxisSelect(props: {
  readonly label: string;
  readonly value: Axis;
  readonly axes: readonly Axis[];
  readonly onAxis: (axis: Axis) => void;
}) {
  const { label, value, axes, onAxis } = props;
  return (
    <label className="mesh-line">
      {label}
      <select
        value={value}
        onChange={({ target }) => {
          const axis = axes.find((each) => each === target.value);
          if (axis !== undefined) onAxis(axis);
        }}
      >
        {axes.map((axis) => (
          <option key={axis} value={axis}>
            {AXIS_WORDS[axis]}
          </option>
        ))}
      </select>
    </label>
  );
}

export function AxesChoice({ offered, draft, onDraft }: PartProps) {
  return (
    <Field title="Which way it points">
      <div className="mesh-axes">
        <AxisSelect
          label="Up is the file’s"
          value={draft.up}
          axes={AXES}
          onAxis={(up) => onDraft(withUp(draft, up))}
        />
        <AxisSelect
          label="Forward is the file’s"
          value={draft.forward}
          axes={axesAcross(draft.up)}
          onAxis={(forward) => onDraft({ ...draft, forward })}
        />
      </div>
      {isGlb(offered) && (
        <p className="mesh-hint">
          GLB’s own axes are turned already: its z is read as x forward, its x as y left, its y as z
          up.
        </p>
      )}
    </Field>
  );
}

const WHERES: readonly { readonly where: Where; readonly words: string }[] = [
  { where: 'own', words: 'where its own numbers put it, its origin at the vehicle’s' },
  { where: 'wheel', words: 'above the wheel, to be moved from there' },
];

export function WhereChoice({ offered, draft, onDraft, wheel }: PartProps & { wheel: WheelPlace }) {
  const group = useId();
  const box = boxOfDraft(offered, draft, draft.unit ?? 'mm');
  const now = whereOf(draft, box, wheel);
  return (
    <Field title="It stands">
      {WHERES.map(({ where, words }) => (
        <label key={where} className="mesh-line">
          <input
            type="radio"
            name={group}
            checked={now === where}
            onChange={() => onDraft({ ...draft, where })}
          />
          {words}
        </label>
      ))}
    </Field>
  );
}

export function NameChoice({ offered, draft, onDraft }: PartProps) {
  const group = useId();
  const same = namesakes(offered, documentStore.getState().model);
  return (
    <Field title="It becomes">
      {same.map((name) => (
        <label key={name} className="mesh-line">
          <input
            type="radio"
            name={group}
            checked={draft.replaces === name}
            onChange={() => onDraft({ ...draft, replaces: name })}
          />
          {`the new shape of ${name}, in its place`}
        </label>
      ))}
      <label className="mesh-line">
        {same.length > 0 && (
          <input
            type="radio"
            name={group}
            checked={draft.replaces === null}
            onChange={() => onDraft({ ...draft, replaces: null })}
          />
        )}
        an obstacle named
        <input
          type="text"
          className="mesh-name"
          autoComplete="off"
          aria-label="Name of the obstacle"
          value={draft.name}
          onFocus={() => onDraft({ ...draft, replaces: null })}
          onChange={({ target }) => onDraft({ ...draft, name: target.value, replaces: null })}
        />
      </label>
    </Field>
  );
}
