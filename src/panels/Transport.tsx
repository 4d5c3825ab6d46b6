/** Moves the bench: the cycle that plays, travel, rack and ride height as figures and sliders. */
import './transport.css';
import { useLayoutEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { rideTravel } from '../../solver/model/defaults.ts';
import { documentStore, inputs } from '../state/bench.ts';
import { onFrame } from '../state/frame.ts';
import type { Cycle } from '../state/inputs.ts';
import { chosenCycle, togglePlay } from './cycle.ts';
import { Icon } from './icons.tsx';
import { Slide } from './Slide.tsx';
import { LIFT_SLIDE, RACK_SLIDE, TRAVEL_SLIDE } from './slides.ts';

const CYCLES: readonly (readonly [Cycle, string])[] = [
  ['bump', 'Bump sweep'],
  ['lock', 'Lock to lock'],
  ['both', 'Both'],
];

/** Keeps the present travel and rack on the element as plain numbers, mm. */
function useInputsData() {
  const root = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    let travel = Number.NaN;
    let rack = Number.NaN;
    return onFrame(() => {
      const now = inputs.getState();
      if (root.current === null || (now.travel === travel && now.rack === rack)) return;
      ({ travel, rack } = now);
      root.current.dataset['travel'] = String(travel);
      root.current.dataset['rack'] = String(rack);
    });
  }, []);
  return root;
}

function Cycles() {
  const playing = useStore(inputs, (state) => state.playing);
  const cycle = useStore(chosenCycle, (state) => state.cycle);
  return (
    <select
      className="transport-cycle"
      aria-label="Cycle that plays"
      value={playing ?? cycle}
      onChange={(event) => {
        const wanted = CYCLES.find(([name]) => name === event.target.value)?.[0] ?? 'bump';
        chosenCycle.setState({ cycle: wanted });
        if (playing !== null) inputs.play(wanted);
        event.target.blur();
      }}
    >
      {CYCLES.map(([name, label]) => (
        <option key={name} value={name}>
          {label}
        </option>
      ))}
    </select>
  );
}

function Player({ hasCycles }: { readonly hasCycles: boolean }) {
  const playing = useStore(inputs, (state) => state.playing);
  return (
    <div className="transport-player">
      <button
        type="button"
        className="transport-play"
        aria-label={playing === null ? 'Play' : 'Pause'}
        title={playing === null ? 'Play (Space)' : 'Pause (Space)'}
        onClick={togglePlay}
      >
        <Icon name={playing === null ? 'play' : 'pause'} size={22} />
      </button>
      {hasCycles && <Cycles />}
    </div>
  );
}

function Places() {
  return (
    <div className="transport-places">
      <button type="button" title="Home" onClick={() => inputs.move(0, 0)}>
        Design pose
      </button>
      <button
        type="button"
        onClick={() => inputs.move(rideTravel(documentStore.getState().model.travel), 0)}
      >
        Ride height
      </button>
    </div>
  );
}

/** Where there is little room: travel and rack, and the rest when it is asked for. */
function CompactTransport() {
  const root = useInputsData();
  const [isOpen, setOpen] = useState(false);
  return (
    <section
      ref={root}
      className="transport transport-compact"
      data-panel="transport"
      data-open={isOpen || undefined}
      aria-label="Move the corner"
    >
      <Player hasCycles={isOpen} />
      <Slide source={TRAVEL_SLIDE} />
      <Slide source={RACK_SLIDE} />
      <button
        type="button"
        className="transport-more"
        aria-expanded={isOpen}
        aria-label="Lift, cycle and poses"
        onClick={() => setOpen(!isOpen)}
      >
        <Icon name="down" size={18} />
      </button>
      {isOpen && <Slide source={LIFT_SLIDE} />}
      {isOpen && <Places />}
    </section>
  );
}

function WholeTransport() {
  const root = useInputsData();
  return (
    <section ref={root} className="transport" data-panel="transport" aria-label="Move the corner">
      <Player hasCycles />
      <Slide source={TRAVEL_SLIDE} />
      <Slide source={RACK_SLIDE} />
      <Slide source={LIFT_SLIDE} />
      <Places />
    </section>
  );
}

export function Transport({ isCompact = false }: { readonly isCompact?: boolean }) {
  return isCompact ? <CompactTransport /> : <WholeTransport />;
}
