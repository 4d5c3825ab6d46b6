/** Work on travel–lock maps, done a few rows at a time wherever it runs: in the worker, or on the page where that fails. */
import { assemble, type Model } from '../../solver/index.ts';
import {
  beginMap,
  COARSE_GRID,
  createLockMap,
  FULL_GRID,
  type LockMap,
  type MapPair,
  mapRow,
  type Range,
} from '../../solver/map.ts';
import { type WorstPlace, withinStops, worstPlace } from '../../solver/worst.ts';

/** Whose map: the present design's or the held one's. */
export type MapOwner = 'present' | 'held';

export interface MapRequest {
  /** Grows with every request. */
  readonly number: number;
  readonly owner: MapOwner;
  readonly model: Model;
  readonly pair: MapPair;
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
}

/** The buffers of a map, to be handed over without copying. */
export function buffersOf(map: LockMap): Transferable[] {
  return Object.values(map).map((array: Float64Array | Uint8Array) => array.buffer as ArrayBuffer);
}

/** Longest turn of work before others get theirs, ms. */
const TURN = 4;
const MOST_SPARE = 4;

/** Takes the newest request of each owner; what was asked before is dropped. */
export interface MapRunner {
  ask(request: MapRequest): void;
}

/** @param later runs a function soon, after whatever waits; @param clock counts ms. */
export function createMapRunner(
  answer: (answer: MapAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
): MapRunner {
  const jobs = new Map<MapOwner, Generator<undefined>>();
  const spare: LockMap[] = [];
  let isWaiting = false;

  function take(rows: number, columns: number): LockMap {
    const at = spare.findIndex(
      ({ travels, racks }) => travels.length === rows && racks.length === columns,
    );
    return spare.splice(at, at < 0 ? 0 : 1)[0] ?? createLockMap(rows, columns);
  }

  /** The coarse map is one step and always answered, so that a steady stream of requests still shows something. */
  function* work({ number, owner, model, pair, travel, rack }: MapRequest): Generator<undefined> {
    const corner = assemble(model);
    const isLine = rack[0] === rack[1];
    const within = withinStops(model, travel);
    if (owner === 'present') {
      const map = take(COARSE_GRID.rows, isLine ? 1 : COARSE_GRID.columns);
      const mapping = beginMap(corner, pair, map, travel, rack);
      while (mapRow(mapping));
      answer({
        number,
        owner,
        isFull: false,
        map,
        worst: worstPlace(corner, map, pair, 1, within),
      });
      yield;
    }
    const map = take(FULL_GRID.rows, isLine ? 1 : FULL_GRID.columns);
    const mapping = beginMap(corner, pair, map, travel, rack);
    while (mapRow(mapping)) yield;
    const worst = worstPlace(corner, map, pair, undefined, within);
    answer({ number, owner, isFull: true, map, worst });
  }

  function turn(): void {
    isWaiting = false;
    const end = clock() + TURN;
    while (jobs.size > 0 && clock() < end) {
      const owner: MapOwner = jobs.has('present') ? 'present' : 'held';
      if (jobs.get(owner)!.next().done) jobs.delete(owner);
    }
    if (jobs.size > 0) wait();
  }

  function wait(): void {
    if (isWaiting) return;
    isWaiting = true;
    later(turn);
  }

  return {
    ask(request) {
      spare.push(...request.spare);
      spare.splice(0, spare.length - MOST_SPARE);
      jobs.set(request.owner, work(request));
      wait();
    },
  };
}
