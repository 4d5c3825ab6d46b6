/** Heights and locks as mm of travel and rack. */
import type { Corner } from '../corner.ts';
import { rackRange, rideTravel } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { steerSign } from '../stops/margins.ts';
import type { Height, Lock } from './plan.ts';

/** Travel of a height, mm. */
export function travelAt({ travel, stops }: Model, height: Height): number {
  if (typeof height === 'number') return height;
  if (height === 'ride') return rideTravel(travel);
  if (height === 'bump') return Math.min(travel.bump, stops?.bump ?? travel.bump);
  return -Math.min(travel.droop, stops?.droop ?? travel.droop);
}

/** Heights over a stretch at which what changes along it is read. */
const HEIGHTS = 17;

/** Travel at evenly spaced heights of a stretch, both ends among them, mm. */
export function heightsOf(model: Model, from: Height, to: Height): Float64Array {
  const [start, end] = [travelAt(model, from), travelAt(model, to)];
  return Float64Array.from(
    { length: HEIGHTS },
    (_, i) => start + ((end - start) * i) / (HEIGHTS - 1),
  );
}

/** Displacement of the rack at a lock, mm; 0 where the model states no limit. */
export function rackAt(corner: Corner, lock: Lock): number {
  const [low, high] = rackRange(corner.model.steering);
  if (lock === 'straight' || low === high) return 0;
  return (lock === 'left') === steerSign(corner) > 0 ? high : low;
}
