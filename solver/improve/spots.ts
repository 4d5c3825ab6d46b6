/** Places of travel × rack at which a gap or a limit's margin is looked at during a search: where it is known to be low. */
import { certifiedRange } from '../certify/range.ts';
import { pairKey } from '../clearance/gapField.ts';
import type { MeshSurfaces } from '../clearance/mesh.ts';
import { createPairGap, pairGapInto } from '../clearance/pairGap.ts';
import { watchedPairs } from '../clearance/pairs.ts';
import { type Corner, solve } from '../corner.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import { placeParts } from '../measures/parts.ts';
import { createMargins, marginInto } from '../stops/margins.ts';
import { measureQuantities } from '../stops/quantity.ts';

export interface Spot {
  /** The pair's or the limit's key. */
  readonly key: string;
  readonly travel: number;
  readonly rack: number;
}

/** The lowest value of a key, and where. mm or degrees. */
export interface Low extends Spot {
  readonly value: number;
}

const ROWS = 9;
const COLUMNS = 5;

const _pose: Pose = createPose();

/** Reads a gap or margin, mm or degrees, of the pose that stands in `_pose`. */
type Reading = () => number;

/** Readings of the keys that the corner has: no more is made ready than is asked for. */
function readingsOf(
  corner: Corner,
  keys: ReadonlySet<string>,
  meshes: MeshSurfaces | undefined,
): ReadonlyMap<string, Reading> {
  const margins = createMargins(corner, { withPairs: false });
  const limits = margins.list.flatMap(({ key }, index): [string, Reading][] => {
    if (!keys.has(key)) return [];
    const reading = (): number => {
      measureQuantities(corner, _pose.data, margins.measures);
      marginInto(margins, _pose, index, _pose.lastTravel, _pose.lastRack);
      return margins.values[index]!;
    };
    return [[key, reading]];
  });
  const isOfPair = [...keys].some((key) => key.includes('/'));
  const pairs = isOfPair ? watchedPairs(corner, meshes) : [];
  const gaps = pairs.flatMap((pair): [string, Reading][] => {
    const key = pairKey(pair.names);
    if (!keys.has(key)) return [];
    const gap = createPairGap(pair);
    const reading = (): number => {
      pairGapInto(gap, _pose);
      return gap.gap;
    };
    return [[key, reading]];
  });
  return new Map([...limits, ...gaps]);
}

function stand(corner: Corner, travel: number, rack: number): void {
  solve(corner, _pose, travel, rack);
  placeParts(corner, _pose.data);
}

/** Gap or margin at each spot, mm or degrees; NaN where the corner has no such pair or limit. */
export function valuesAt(
  corner: Corner,
  spots: readonly Spot[],
  meshes: MeshSurfaces | undefined,
): Float64Array {
  if (spots.length === 0) return new Float64Array(0);
  const readings = readingsOf(corner, new Set(spots.map(({ key }) => key)), meshes);
  return Float64Array.from(spots, ({ key, travel, rack }) => {
    stand(corner, travel, rack);
    return readings.get(key)?.() ?? Number.NaN;
  });
}

/** The lowest value of each key on a coarse grid over the corner's whole range. */
export function lowsOf(
  corner: Corner,
  keys: readonly string[],
  meshes: MeshSurfaces | undefined,
): readonly Low[] {
  const readings = readingsOf(corner, new Set(keys), meshes);
  const { travel, rack } = certifiedRange(corner.model);
  const columns = rack[0] === rack[1] ? 1 : COLUMNS;
  const lows = new Map<string, Low>();
  for (let i = 0; i < ROWS; i += 1) {
    for (let j = 0; j < columns; j += 1) {
      const height = travel[0] + ((travel[1] - travel[0]) * i) / (ROWS - 1);
      const across = columns === 1 ? rack[0] : rack[0] + ((rack[1] - rack[0]) * j) / (columns - 1);
      stand(corner, height, across);
      for (const [key, reading] of readings) {
        const value = reading();
        const low = lows.get(key);
        if (low === undefined || value < low.value) {
          lows.set(key, { key, value, travel: _pose.lastTravel, rack: _pose.lastRack });
        }
      }
    }
  }
  return [...lows.values()];
}
