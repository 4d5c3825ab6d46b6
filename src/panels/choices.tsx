/** The choices of the top strip: viewpoint, wheel, unit, drawings, panels. In the strip or in a menu, by the room there is. */
import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import { view } from '../state/bench.ts';
import type { Layer, LengthUnit, Shell, Viewpoint } from '../state/view.ts';
import { openSheet, type SheetName } from './sheets.ts';

export const VIEWPOINTS: readonly (readonly [Viewpoint, string, string])[] = [
  ['threeQuarter', '¾', 'Three-quarter view'],
  ['front', 'Front', 'Front view'],
  ['side', 'Side', 'Side view'],
  ['above', 'Above', 'View from above'],
  ['alongRod', 'Along rod', 'Along rod: view along the tie rod'],
];

const SHELLS: readonly (readonly [Shell, string, string])[] = [
  ['solid', 'Solid', 'Solid wheel and tyre'],
  ['ghost', 'Ghost', 'Ghost of wheel and tyre'],
  ['cut', 'Cut', 'Cut wheel and tyre open'],
];

const UNITS: readonly (readonly [LengthUnit, string, string])[] = [
  ['mm', 'mm', 'mm: millimetres'],
  ['inch', 'in', 'in: inches, decimal'],
  ['sixteenth', '1/16 in', '1/16 in: inches, to the nearest sixteenth'],
];

const LAYERS: readonly (readonly [Layer, string])[] = [
  ['steeringAxis', 'Steering axis'],
  ['contactPatch', 'Contact patch'],
  ['wheelPath', 'Path of the wheel centre'],
  ['ballJointArcs', 'Arcs of the ball joints'],
  ['instantCentres', 'Instant centres'],
  ['rollCentre', 'Roll centre'],
  ['jointCones', 'Cones of the joints’ limits'],
  ['sweptSpace', 'Space the tyre sweeps'],
  ['handles', 'Handles on the hard points'],
  ['grid', 'Scale grid'],
];

interface SegmentsProps<T extends string> {
  readonly title: string;
  readonly choices: readonly (readonly [T, string, string])[];
  readonly chosen: T;
  readonly onChoose: (choice: T) => void;
}

/** A row of buttons of which one is pressed. A press by pointer gives the keyboard back to the bench. */
export function Segments<T extends string>({ title, choices, chosen, onChoose }: SegmentsProps<T>) {
  return (
    <fieldset className="segments" aria-label={title}>
      {choices.map(([choice, label, meaning]) => (
        <button
          key={choice}
          type="button"
          aria-pressed={choice === chosen}
          aria-label={meaning}
          title={meaning}
          onClick={(event) => {
            onChoose(choice);
            if (event.detail > 0) event.currentTarget.blur();
          }}
        >
          {label}
        </button>
      ))}
    </fieldset>
  );
}

export function ViewpointChoice() {
  const chosen = useStore(view, (state) => state.viewpoint);
  return <Segments title="Viewpoint" choices={VIEWPOINTS} chosen={chosen} onChoose={view.look} />;
}

export function ShellChoice() {
  const chosen = useStore(view, (state) => state.wheelShell);
  return (
    <Segments
      title="Wheel and tyre"
      choices={SHELLS}
      chosen={chosen}
      onChoose={(wheelShell) => view.setState({ wheelShell })}
    />
  );
}

export function UnitChoice() {
  const chosen = useStore(view, (state) => state.unit);
  return (
    <Segments
      title="Unit of length"
      choices={UNITS}
      chosen={chosen}
      onChoose={(unit) => view.setState({ unit })}
    />
  );
}

function Check({ label, isOn, onToggle }: { label: string; isOn: boolean; onToggle: () => void }) {
  return (
    <label className="menu-check">
      <input type="checkbox" checked={isOn} onChange={onToggle} />
      {label}
    </label>
  );
}

export function LayerChecks() {
  const layers = useStore(view, (state) => state.layers);
  return LAYERS.map(([layer, label]) => (
    <Check
      key={layer}
      label={label}
      isOn={layers[layer]}
      onToggle={() => view.toggleLayer(layer)}
    />
  ));
}

/** Opens a sheet over the bench. */
export function SheetButton({ sheet, children }: { sheet: SheetName; children: ReactNode }) {
  return (
    <button type="button" className="bar-button bar-hold" onClick={() => openSheet(sheet)}>
      {children}
    </button>
  );
}

/** A titled part of a menu. */
export function MenuPart({ title, children }: { title: string; children: ReactNode }) {
  return (
    <fieldset className="menu-part">
      <legend>{title}</legend>
      {children}
    </fieldset>
  );
}
