/** The travel–lock maps on show: the present design's, the held design's, and what is still being filled. */
import { createStore } from 'zustand/vanilla';
import type { PairKey } from '../../solver/clearance/gapField.ts';
import type { Model } from '../../solver/index.ts';
import type { LockMap, Range } from '../../solver/map.ts';
import { rackRange } from '../../solver/model/defaults.ts';
import type { WorstPlace } from '../../solver/worst.ts';
import type { MapAnswer, MapOwner } from '../worker/mapJob.ts';
import type { MapService } from '../worker/mapService.ts';
import type { MeshKeys } from '../worker/meshShelf.ts';
import type { DocumentStore } from './document.ts';
import { travelRange } from './inputs.ts';
import type { MeshStore } from './meshes.ts';
import { createMeshSender, sameKeys } from './meshSender.ts';

/** What a map is filled for. */
interface Wanted {
  readonly model: Model;
  readonly pair: PairKey;
  readonly meshes: MeshKeys;
  readonly travel: Range;
  readonly rack: Range;
}

/** A filled map and what it was filled for. */
export interface ShownMap extends Wanted {
  readonly number: number;
  readonly map: LockMap;
  readonly worst: WorstPlace | null;
  readonly isFull: boolean;
  /** The pairs that the map's `which` counts, and the gap wanted on its scale, mm. */
  readonly pairs: readonly (readonly [string, string])[];
  readonly wanted: number;
}

export interface LockMapsState {
  /** The pair on show, or the worst of all. */
  readonly pair: PairKey;
  readonly present: ShownMap | null;
  readonly held: ShownMap | null;
  /** True until the full map of the present model and pair is there. */
  readonly isPending: boolean;
}

/** Starts whatever fills the maps. */
export type StartService = (answer: (answer: MapAnswer) => void) => Pick<MapService, 'ask'>;

function isSame(a: Wanted | undefined, b: Wanted): boolean {
  if (a?.model !== b.model || a.pair !== b.pair || !sameKeys(a.meshes, b.meshes)) return false;
  return [0, 1].every((i) => a.travel[i] === b.travel[i] && a.rack[i] === b.rack[i]);
}

/** Requests under way. An answer that was overtaken still shows, if it is newer than what is shown. */
function createAsked() {
  const newest = new Map<MapOwner, Wanted>();
  const open = new Map<number, Wanted & { readonly owner: MapOwner }>();
  let count = 0;
  return {
    newest,
    /** The number of a new request; undefined where the same was asked last. */
    add(owner: MapOwner, wanted: Wanted): number | undefined {
      if (isSame(newest.get(owner), wanted)) return undefined;
      newest.set(owner, wanted);
      count += 1;
      open.set(count, { ...wanted, owner });
      return count;
    },
    /** What the answer was asked for; older requests of the same owner are forgotten. */
    settle({ number, owner }: MapAnswer): Wanted | undefined {
      for (const [other, { owner: its }] of open) {
        if (its === owner && other < number) open.delete(other);
      }
      return open.get(number);
    },
  };
}

export type LockMaps = ReturnType<typeof createLockMaps>;

export function createLockMaps(
  documentStore: DocumentStore,
  meshStore: MeshStore,
  start: StartService,
) {
  const store = createStore<LockMapsState>(() => ({
    pair: 'tieRod/wheel',
    present: null,
    held: null,
    isPending: true,
  }));
  const { getState, setState } = store;
  const asked = createAsked();
  const sender = createMeshSender(meshStore);
  let service: ReturnType<StartService> | null = null;
  let spare: LockMap[] = [];
  let watchers = 0;
  let leave: (() => void) | null = null;

  function ask(owner: MapOwner, model: Model): void {
    // The held design is mapped over the present one's range: the two are drawn on the same paper.
    const ranges = documentStore.getState().model;
    const wanted: Wanted = {
      model,
      pair: getState().pair,
      meshes: sender.keys(model),
      travel: travelRange(ranges),
      rack: rackRange(ranges.steering),
    };
    const number = asked.add(owner, wanted);
    if (number === undefined) return;
    if (owner === 'present') setState({ isPending: true });
    service ??= start(take);
    sender.send(model, service.ask);
    service.ask({ kind: 'map', ...wanted, number, owner, spare });
    spare = [];
  }

  /** Asks for whatever the document needs and the maps do not show. */
  function follow(): void {
    const { model, held } = documentStore.getState();
    ask('present', model);
    if (held !== null) ask('held', held);
    else {
      asked.newest.delete('held');
      if (getState().held !== null) setState({ held: null });
    }
  }

  function take(answer: MapAnswer): void {
    const { number, owner, isFull, map, worst, pairs, wanted: gap } = answer;
    const wanted = asked.settle(answer);
    const shown = getState()[owner];
    const newest = asked.newest.get(owner);
    if (wanted === undefined || newest === undefined || wanted.pair !== getState().pair) {
      spare.push(map);
      return;
    }
    if (shown !== null) spare.push(shown.map);
    const next: ShownMap = { ...wanted, number, map, worst, isFull, pairs, wanted: gap };
    if (owner === 'held') setState({ held: next });
    else setState({ present: next, isPending: !(isFull && isSame(newest, wanted)) });
  }

  function followBoth(): () => void {
    const exits = [
      documentStore.subscribe((state, before) => {
        if (state.model !== before.model || state.held !== before.held) follow();
      }),
      meshStore.subscribe((state, before) => {
        if (state.files !== before.files) follow();
      }),
    ];
    return () => {
      for (const exit of exits) exit();
    };
  }

  /** Keeps the maps up to date until the returned function is called; many may watch. */
  function watch(): () => void {
    watchers += 1;
    leave ??= followBoth();
    follow();
    return () => {
      watchers -= 1;
      if (watchers > 0) return;
      leave?.();
      leave = null;
    };
  }

  /** Chooses the pair on show. */
  function choose(pair: PairKey): void {
    if (pair === getState().pair) return;
    setState({ pair });
    if (watchers > 0) follow();
  }

  return { ...store, watch, choose };
}
