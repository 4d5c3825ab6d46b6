/** What stops the wheel one way: the first limit large, the next ones under it, and what is met already. */
import { Fragment } from 'react';
import { canBeCured, type Margin, type RayStops, type Stop } from '../../../solver/index.ts';
import { inputs } from '../../state/bench.ts';
import { cures } from '../../state/cured.ts';
import type { LengthUnit } from '../../state/view.ts';
import { signedLength } from '../../words/format.ts';

const TITLES = { bump: 'Bump', droop: 'Droop', left: 'Left lock', right: 'Right lock' } as const;
/** Limits named after the first one. */
const MOST_NEXT = 4;

function isVertical({ ray }: RayStops): boolean {
  return ray.way === 'bump' || ray.way === 'droop';
}

function go(found: RayStops, at: number): void {
  inputs.play(null);
  if (isVertical(found)) inputs.move(at, found.ray.held);
  else inputs.move(found.ray.held, at);
}

/** Looks for cures of a limit that is met inside the range; the sheet shows them. */
function CureButton({ margin }: { readonly margin: Margin }) {
  if (!canBeCured(margin.key)) return null;
  const { key: cureKey, label } = margin;
  const name = label.charAt(0).toUpperCase() + label.slice(1);
  return (
    <button
      type="button"
      className="stops-go stops-cure"
      aria-label={`Look for the smallest cure: ${name}`}
      onClick={() => cures.look({ cureKey, name })}
    >
      cure
    </button>
  );
}

function Next({ found, stop, unit }: { found: RayStops; stop: Stop; unit: LengthUnit }) {
  return (
    <li>
      <button type="button" className="stops-go" onClick={() => go(found, stop.at)}>
        {signedLength(stop.at, unit)}
      </button>{' '}
      {stop.margin.met}{' '}
      {stop.isBeyondRange ? (
        <small>(beyond the model’s range)</small>
      ) : (
        <CureButton margin={stop.margin} />
      )}
    </li>
  );
}

function First({
  found,
  stop,
  unit,
}: {
  found: RayStops;
  stop: Stop | undefined;
  unit: LengthUnit;
}) {
  if (stop === undefined) {
    return (
      <p className="stops-first">
        Nothing {found.stops.length > 0 ? 'else ' : ''}stops it up to{' '}
        {signedLength(found.lookedTo, unit, 0)}.
      </p>
    );
  }
  return (
    <p className="stops-first">
      stops at{' '}
      <button type="button" className="stops-go" onClick={() => go(found, stop.at)}>
        {signedLength(stop.at, unit)}
      </button>
      : <strong>{stop.margin.met}</strong>{' '}
      {stop.isBeyondRange ? (
        <small>(beyond the model’s range)</small>
      ) : (
        <CureButton margin={stop.margin} />
      )}
    </p>
  );
}

export function RayCard({ found, unit }: { readonly found: RayStops; readonly unit: LengthUnit }) {
  const { ray, stops: all, provenTo, lookedTo } = found;
  const already = all.filter((stop) => stop.isOutsideAtStart);
  const [first, ...next] = all.filter((stop) => !stop.isOutsideAtStart);
  const held = `${isVertical(found) ? 'rack' : 'travel'} ${signedLength(ray.held, unit, 0)}`;
  return (
    <section className="stops-ray" data-way={ray.way}>
      <h3>
        {TITLES[ray.way]} <small>at {held}</small>
      </h3>
      <First found={found} stop={first} unit={unit} />
      {next.length > 0 && (
        <ol>
          {next.slice(0, MOST_NEXT).map((stop) => (
            <Next key={stop.margin.key} found={found} stop={stop} unit={unit} />
          ))}
        </ol>
      )}
      {already.length > 0 && (
        <p className="stops-already">
          <strong>Already at the start:</strong>{' '}
          {already.map(({ margin }, index) => (
            <Fragment key={margin.key}>
              {index > 0 && '; '}
              {margin.met} <CureButton margin={margin} />
            </Fragment>
          ))}
        </p>
      )}
      {Math.abs(lookedTo - provenTo) > 0.5 && (
        <p className="stops-doubt">
          Proven to {signedLength(provenTo, unit, 0)}; beyond it by close samples only.
        </p>
      )}
    </section>
  );
}
