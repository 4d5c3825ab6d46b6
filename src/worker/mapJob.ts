/** Work on travel–lock maps, done a few rows at a time wherever it runs: in the worker, or on the page where that fails. */
import { createGapField, type PairKey } from '../../solver/clearance/gapField.ts';
import { assemble, type Model } from '../../solver/index.ts';
import {
  beginMap,
  COARSE_GRID,
  createLockMap,
  FULL_GRID,
  type LockMap,
  mapRow,
  type Range,
} from '../../solver/map.ts';
import { type WorstPlace, withinStops, worstPlace } from '../../solver/worst.ts';
import type { Runner } from './background.ts';
import type { MeshKeys, MeshSending, MeshShelf } from './meshShelf.ts';
import { createWait } from './turns.ts';

/** Whose map: the present design's or the held one's. */
export type MapOwner = 'present' | 'held';

export interface MapRequest {
  readonly kind: 'map';
  /** Grows with every request. */
  readonly number: number;
  readonly owner: MapOwner;
  readonly model: Model;
  readonly pair: PairKey;
  readonly meshes: MeshKeys;
  readonly travel: Range;
  readonly rack: Range;
  /** Maps no longer shown, to be filled again. */
  readonly spare: readonly LockMap[];
}

export interface MapAnswer {
  readonly number: number;
  readonly owner: MapOwner;
  /** False for the coarse map that comes first. */
  readonly isFull: boolean;
  readonly map: LockMap;
  readonly worst: WorstPlace | null;
  /** The pairs that the map's `which` counts, and the gap wanted on its scale, mm. */
  readonly pairs: readonly (readonly [string, string])[];
  readonly wanted: number;
}

/** Longest turn of work before others get theirs, ms. */
const TURN = 4;
const MOST_SPARE = 4;

/**
 * Takes the newest request of each owner; what was asked before is dropped. `later` runs a function soon, after whatever
 * waits; `clock` counts ms. Without a `shelf` no mesh is watched.
 */
export function createMapRunner(
  answer: (answer: MapAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
  shelf: MeshShelf | null = null,
): Runner<MapRequest | MeshSending> {
  const jobs = new Map<MapOwner, Generator<undefined>>();
  const spare: LockMap[] = [];
  const wait = createWait(later, turn);

  function take(rows: number, columns: number): LockMap {
    const at = spare.findIndex(
      ({ travels, racks }) => travels.length === rows && racks.length === columns,
    );
    return spare.splice(at, at < 0 ? 0 : 1)[0] ?? createLockMap(rows, columns);
  }

  /** The coarse map is one step and always answered, so that a steady stream of requests still shows something. */
  function* work(request: MapRequest): Generator<undefined> {
    const { number, owner, model, pair, travel, rack, meshes } = request;
    const corner = assemble(model);
    const field = createGapField(corner, pair, shelf?.surfaces(model, meshes));
    if (field === null) return;
    const { pairs, wanted } = field;
    const isLine = rack[0] === rack[1];
    const within = withinStops(model, travel);
    if (owner === 'present') {
      const map = take(COARSE_GRID.rows, isLine ? 1 : COARSE_GRID.columns);
      const mapping = beginMap(corner, field, map, travel, rack);
      while (mapRow(mapping));
      answer({
        number,
        owner,
        isFull: false,
        map,
        worst: worstPlace(corner, map, field, 1, within),
        pairs,
        wanted,
      });
      yield;
    }
    const map = take(FULL_GRID.rows, isLine ? 1 : FULL_GRID.columns);
    const mapping = beginMap(corner, field, map, travel, rack);
    while (mapRow(mapping)) yield;
    const worst = worstPlace(corner, map, field, undefined, within);
    answer({ number, owner, isFull: true, map, worst, pairs, wanted });
  }

  function turn(): void {
    const end = clock() + TURN;
    while (jobs.size > 0 && clock() < end) {
      const owner: MapOwner = jobs.has('present') ? 'present' : 'held';
      if (jobs.get(owner)!.next().done) jobs.delete(owner);
    }
    if (jobs.size > 0) wait();
  }

  return {
    ask(request) {
      if (request.kind === 'mesh') {
        shelf?.put(request);
        return;
      }
      spare.push(...request.spare);
      spare.splice(0, spare.length - MOST_SPARE);
      jobs.set(request.owner, work(request));
      wait();
    },
  };
}
