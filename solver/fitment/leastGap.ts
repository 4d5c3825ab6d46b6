/** The tie rod's least gap to wheel and tyre over all travel and lock, for comparing what might be fitted. */
import type { Corner } from '../corner.ts';
import { createLockMap, FULL_GRID, type LockMap, type MapPair, mapInto } from '../map.ts';
import { rackRange } from '../model/defaults.ts';
import { type WorstPlace, worstPlace } from '../worst.ts';

export interface RodGaps {
  /** Null where no pose is in reach. */
  readonly wheel: WorstPlace | null;
  readonly tyre: WorstPlace | null;
}

/** A map of the size this range needs, to be used again. */
function mapFor(isLine: boolean): LockMap {
  return createLockMap(FULL_GRID.rows, isLine ? 1 : FULL_GRID.columns);
}

/** Least gaps over travel −droop to bump × the steering's limit (rack 0 where there is none), to 0.01 mm: found, not proven. */
export function leastRodGaps(corner: Corner): RodGaps {
  const { bump, droop } = corner.model.travel;
  const rack = rackRange(corner.model.steering);
  const map = mapFor(rack[0] === rack[1]);
  const worst = (pair: MapPair): WorstPlace | null => {
    mapInto(corner, pair, map, [-droop, bump], rack);
    return worstPlace(corner, map, pair);
  };
  return { wheel: worst('wheel'), tyre: worst('tyre') };
}
