/** The work sheet of the space the tyre sweeps: shown or not, over what, what it cuts, and as a file for the body builder. */
import './sweptSheet.css';
import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { SweptGap } from '../../../solver/envelope/cuts.ts';
import { stopsShorten } from '../../../solver/envelope/range.ts';
import { documentStore, inputs, view } from '../../state/bench.ts';
import { SHOWN_STEP } from '../../state/swept.ts';
import { swept } from '../../state/sweptSpace.ts';
import type { LengthUnit } from '../../state/view.ts';
import { gapUnit, length } from '../../words/format.ts';
import { placeWords } from '../../words/margins.ts';
import { Icon } from '../icons.tsx';
import { SaveSweep } from './SaveSweep.tsx';

const RANGES = [
  ['whole', 'The whole travel of the model'],
  ['stops', 'Only what the stops let through'],
] as const;

function ShowSwitch() {
  const isShown = useStore(view, (state) => state.layers.sweptSpace);
  return (
    <label className="swept-switch">
      <input type="checkbox" checked={isShown} onChange={() => view.toggleLayer('sweptSpace')} />
      Show it in the picture
    </label>
  );
}

function RangeChoice() {
  const range = useStore(swept, (state) => state.range);
  const model = useStore(documentStore, (state) => state.model);
  if (!stopsShorten(model)) return null;
  return (
    <fieldset className="swept-range">
      <legend>Swept over every lock and</legend>
      {RANGES.map(([key, words]) => (
        <label key={key}>
          <input
            type="radio"
            name="swept-range"
            checked={range === key}
            onChange={() => swept.choose(key)}
          />
          {words}
        </label>
      ))}
    </fieldset>
  );
}

/** mm, measured on the shipped models: what a sharp edge may lose on show, and what a gap may be off. */
const SHOWN_ROUNDING = 3;
const GAP_TRUTH = 0.5;

function Stage() {
  const { stage, progress, shown } = useStore(swept);
  const unit = useStore(view, (state) => state.unit);
  if (stage === 'done')
    return (
      <p role="status">
        Swept: the tyre’s own section, every pose of travel and lock, on a grid of{' '}
        {length(SHOWN_STEP, unit, 0)}; sharp edges may look up to {length(SHOWN_ROUNDING, unit, 0)}{' '}
        rounder than they are. The gaps below are true to {length(GAP_TRUTH, gapUnit(unit))}.
      </p>
    );
  if (stage === 'unreached') return <p role="status">No pose of this range can be reached.</p>;
  const isRunning = stage === 'running';
  return (
    <div className="swept-stage">
      <p role="status">
        {isRunning ? 'Sweeping…' : 'Stopped.'}
        {shown !== null && ' What is shown belongs to the design before.'}
      </p>
      <progress value={progress} max={1} aria-label="Progress of the sweep" />
      <button
        type="button"
        className="bar-button"
        onClick={() => (isRunning ? swept.stop() : swept.sweep())}
      >
        {isRunning ? 'Stop' : 'Sweep again'}
      </button>
    </div>
  );
}

function stateOf({ gap, required }: SweptGap): 'touch' | 'near' | 'clear' {
  if (gap <= 0) return 'touch';
  return gap < required ? 'near' : 'clear';
}

const ICONS = { touch: 'touch', near: 'warn', clear: 'clear' } as const;
const WORDS = { touch: 'cut', near: 'near', clear: 'clear' } as const;

function GapRow({ gap, unit }: { readonly gap: SweptGap; readonly unit: LengthUnit }) {
  const state = stateOf(gap);
  const size = length(Math.abs(gap.gap), gapUnit(unit));
  const where = placeWords(gap.travel, gap.rack, unit);
  return (
    <tr data-state={state}>
      <td className="swept-mark">
        <Icon name={ICONS[state]} />
        {WORDS[state]}
      </td>
      <th scope="row">{gap.name}</th>
      <td>
        <strong>{gap.gap <= 0 ? `${size} ${gap.isThrough ? 'or more ' : ''}deep` : size}</strong>
        <small>wanted {length(gap.required, gapUnit(unit))}</small>
      </td>
      <td>
        <button
          type="button"
          className="swept-go"
          aria-label={`Go to where the tyre is nearest to ${gap.name}: ${where}`}
          onClick={() => inputs.move(gap.travel, gap.rack)}
        >
          {where}
        </button>
      </td>
    </tr>
  );
}

function Gaps() {
  const shown = useStore(swept, (state) => state.shown);
  const unit = useStore(view, (state) => state.unit);
  if (shown === null) return null;
  if (shown.gaps.length === 0) return <p>The model has no fixed part that it could cut.</p>;
  return (
    <table className="swept-table">
      <tbody>
        {shown.gaps.map((gap) => (
          <GapRow key={gap.name} gap={gap} unit={unit} />
        ))}
      </tbody>
    </table>
  );
}

export default function SweptSheet() {
  useEffect(() => swept.watch(), []);
  return (
    <div className="swept">
      <ShowSwitch />
      <RangeChoice />
      <Stage />
      <Gaps />
      <SaveSweep />
      <p className="swept-caution">
        A rigid tyre of the stated size: no bulge, no growth at speed, no chains. Scanned meshes are
        watched on the Clearance sheet, not here. Leave running clearance: common practice is 12 mm
        to fixed parts, 25 mm off the road.
      </p>
    </div>
  );
}
