/** What the hardware that is there can reach of camber and caster together. */
import './region.css';
import { useStore } from 'zustand';
import type { ReachableRegion } from '../../../solver/index.ts';
import { alignment } from '../../state/aligned.ts';
import { angle } from '../../words/format.ts';
import { RegionChart } from './RegionChart.tsx';

/** What the region is of, in words: its toe, or the lack of hardware. */
function note(region: ReachableRegion): string {
  const { isArea, paths, toe } = region;
  if (paths.length === 0) return 'No cam or shim is there to move camber and caster with.';
  if (!canBeDrawn(region))
    return 'This hardware moves the arms too far for an outline: look at its throws.';
  const held = toe === null ? 'toe follows' : `toe held at ${angle(toe)} by the tie rod`;
  return isArea
    ? `Every camber and caster that this hardware reaches, ${held}. Drag in it to ask for a pair: the settings follow.`
    : `One adjuster moves camber and caster along one line only; ${held}.`;
}

/** A throw beyond all measure tilts a corner past upright: there is nothing sensible to draw. */
const MOST_ANGLE = 60;

function canBeDrawn({ outline, paths }: ReachableRegion): boolean {
  const points = [...outline, ...paths.flatMap((path) => path.points)];
  const isSmall = (degrees: number) => Math.abs(degrees) < MOST_ANGLE;
  return (
    paths.length > 0 && points.every(({ camber, caster }) => isSmall(camber) && isSmall(caster))
  );
}

export function Region() {
  const region = useStore(alignment, (state) => state.region);
  const isPending = useStore(alignment, (state) => state.pending.has('region'));
  return (
    <section className="align-region" aria-label="What can be reached" aria-busy={isPending}>
      <h3>What can be reached</h3>
      {region === null ? (
        <p className="align-note">
          {isPending
            ? 'Working out what can be reached…'
            : 'With these settings the corner cannot stand at ride height.'}
        </p>
      ) : (
        <>
          <p className="align-note">{note(region)}</p>
          {canBeDrawn(region) && <RegionChart region={region} />}
        </>
      )}
    </section>
  );
}
