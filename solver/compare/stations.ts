/** Where designs are compared: ride height, the two ends of travel straight ahead, and both locks at ride height. */
import type { Corner } from '../corner.ts';
import { rackRange, rideTravel } from '../model/defaults.ts';
import { steerSign } from '../stops/margins.ts';

export const STATIONS = ['ride', 'fullBump', 'fullDroop', 'leftLock', 'rightLock'] as const;

export type Station = (typeof STATIONS)[number];

export const STATION_LABELS: Readonly<Record<Station, string>> = {
  ride: 'ride height',
  fullBump: 'full bump',
  fullDroop: 'full droop',
  leftLock: 'left lock',
  rightLock: 'right lock',
};

/** A design's own place for a station, mm. */
export interface StationPlace {
  readonly travel: number;
  readonly rack: number;
}

/**
 * The place of a station in a design: the ends of its own travel (what its model states for the bench, not cut by
 * stops) and of its own steering. Null for a lock of a model that states no steering limit.
 */
export function stationPlace(corner: Corner, station: Station): StationPlace | null {
  const { travel, steering } = corner.model;
  const ride = rideTravel(travel);
  if (station === 'ride') return { travel: ride, rack: 0 };
  if (station === 'fullBump') return { travel: travel.bump, rack: 0 };
  if (station === 'fullDroop') return { travel: -travel.droop, rack: 0 };
  if (steering?.limit === undefined) return null;
  const [least, most] = rackRange(steering);
  const isMost = steerSign(corner) > 0 === (station === 'leftLock');
  return { travel: ride, rack: isMost ? most : least };
}
