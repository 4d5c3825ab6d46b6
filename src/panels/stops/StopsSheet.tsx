/** The work sheet of stops: what stops the wheel first in each direction, its worst angles, and what a wanted travel needs. */
import './stopsSheet.css';
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { view } from '../../state/bench.ts';
import { cures } from '../../state/cured.ts';
import { stops } from '../../state/stopped.ts';
import { CureList } from '../cures/CureList.tsx';
import { Extremes } from './Extremes.tsx';
import { RayCard } from './RayCard.tsx';
import { WantedTravel } from './WantedTravel.tsx';

const KINDS = ['rays', 'extremes', 'wanted'] as const;

function Rays() {
  const rays = useStore(stops, (state) => state.rays);
  const isPending = useStore(stops, (state) => state.pending.has('rays'));
  const unit = useStore(view, (state) => state.unit);
  if (rays === null) return <p className="stops-wait">Looking for what stops the wheel…</p>;
  return (
    <div className="stops-rays" aria-busy={isPending}>
      {rays.map((found) => (
        <RayCard key={found.ray.way} found={found} unit={unit} />
      ))}
    </div>
  );
}

/** Cures of the limit that was asked for last. */
function Cured() {
  const asked = useStore(cures, (state) => state.asked);
  return asked === null ? null : <CureList {...asked} />;
}

/** Switches the usable part of travel × lock on the map. */
function RegionSwitch() {
  const isShown = useStore(stops, (state) => state.showsUsable);
  return (
    <label className="stops-switch">
      <input
        type="checkbox"
        checked={isShown}
        onChange={(event) => stops.showUsable(event.target.checked)}
      />
      Draw the part that can be used on the map
    </label>
  );
}

export default function StopsSheet() {
  useEffect(() => stops.watch(KINDS), []);
  return (
    <div className="stops">
      <Rays />
      <Cured />
      <RegionSwitch />
      <Extremes />
      <WantedTravel />
      <p className="stops-caution">
        The limits are those that the model states: measure them on the parts, and let the makers’
        own limits rule. Rigid parts, unloaded; hoses, wires and the strength of stops and straps
        are not checked.
      </p>
    </div>
  );
}
