/** Saves the swept space as a file: its kind, the room kept around the tyre, and how fine it is. */
import { useState } from 'react';
import { useStore } from 'zustand';
import { saveBytes, sweptFileName } from '../../files/save.ts';
import { view } from '../../state/bench.ts';
import { swept } from '../../state/sweptSpace.ts';
import { gapUnit, length } from '../../words/format.ts';

const KINDS = [
  ['stl', 'STL, mm, z up'],
  ['glb', 'GLB, metres, y up'],
] as const;
type Kind = (typeof KINDS)[number][0];
/** Room kept around the tyre, mm. */
const MARGINS = [0, 12, 25] as const;
/** Grid of the file, mm. */
const STEPS = [4, 6, 10] as const;

async function save(kind: Kind, margin: number, step: number): Promise<void> {
  const made = await swept.saved(margin, step);
  if (made === null) return;
  const { surface, model } = made;
  const name = `${model.name}, tyre swept${margin > 0 ? `, ${margin} mm room` : ''}`;
  if (kind === 'stl') {
    const { writeStl } = await import('../../mesh/write/stl.ts');
    saveBytes(writeStl(surface, name), sweptFileName(model.name, 'stl'), 'model/stl');
    return;
  }
  const { writeGlb } = await import('../../mesh/write/glb.ts');
  const bytes = await writeGlb(surface, name, { roomMillimetres: margin, gridMillimetres: step });
  saveBytes(bytes, sweptFileName(model.name, 'glb'), 'model/gltf-binary');
}

function Choice<T extends string | number>({
  label,
  value,
  choices,
  onChoose,
}: {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly onChoose: (value: T) => void;
}) {
  return (
    <label className="swept-choice">
      {label}
      <select
        aria-label={label}
        value={value}
        onChange={(event) => {
          const chosen = choices.find(([key]) => String(key) === event.target.value);
          if (chosen !== undefined) onChoose(chosen[0]);
        }}
      >
        {choices.map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}

export function SaveSweep() {
  const [kind, setKind] = useState<Kind>('stl');
  const [margin, setMargin] = useState<number>(0);
  const [step, setStep] = useState<number>(6);
  const saving = useStore(swept, (state) => state.saving);
  const unit = useStore(view, (state) => state.unit);
  return (
    <section className="swept-save" aria-label="Save the swept space">
      <h3>For the body and fender builder</h3>
      <div className="swept-choices">
        <Choice label="File" value={kind} choices={KINDS} onChoose={setKind} />
        <Choice
          label="Room around the tyre"
          value={margin}
          choices={MARGINS.map((mm) => [mm, mm === 0 ? 'none' : length(mm, unit, 0)] as const)}
          onChoose={setMargin}
        />
        <Choice
          label="Grid"
          value={step}
          choices={STEPS.map((mm) => [mm, length(mm, unit, 0)] as const)}
          onChoose={setStep}
        />
      </div>
      <p className="swept-truth">
        Its points lie within {length(0.5, gapUnit(unit))} of the swept tyre; between them sharp
        edges are rounded by at most a quarter of the grid.
      </p>
      {saving === null ? (
        <button type="button" className="bar-button" onClick={() => void save(kind, margin, step)}>
          Save the swept space
        </button>
      ) : (
        <div className="swept-stage">
          <progress value={saving} max={1} aria-label="Progress of the file" />
          <button type="button" className="bar-button" onClick={() => swept.cancelSaving()}>
            Stop
          </button>
        </div>
      )}
    </section>
  );
}
