/** What stops the present design's wheel, as far as it is known: each answer with the number of what it was asked for. */
import { createStore } from 'zustand/vanilla';
import type { Model, Wish } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { MeshKeys } from '../worker/meshShelf.ts';
import type { StopsAnswer, StopsAnswers, StopsKind, StopsRequest } from '../worker/stopsJob.ts';
import type { DocumentStore } from './document.ts';
import type { Inputs } from './inputs.ts';
import type { MeshStore } from './meshes.ts';
import { createMeshSender, sameKeys } from './meshSender.ts';

export type StopsState = { readonly [Kind in StopsKind]: StopsAnswers[Kind] | null } & {
  /** Kinds whose newest question is not answered yet: what is shown of them is of before. */
  readonly pending: ReadonlySet<StopsKind>;
  /** Whether the usable part of travel × lock is drawn on the map. */
  readonly showsUsable: boolean;
  /** The travel that is wished for; null until it is typed: the model's own. */
  readonly wish: Wish | null;
};

export type StartStops = (answer: (answer: StopsAnswer) => void) => Background<StopsRequest>;

/** The bench rests this long, ms, before what stops it from there is asked anew. */
const REST = 150;

export type Stops = ReturnType<typeof createStops>;

export function createStops(
  documentStore: DocumentStore,
  inputs: Inputs,
  meshStore: MeshStore,
  start: StartStops,
) {
  const store = createStore<StopsState>(() => ({
    rays: null,
    cycle: null,
    region: null,
    extremes: null,
    wanted: null,
    pending: new Set(),
    wish: null,
    showsUsable: false,
  }));
  const { getState, setState } = store;
  const sender = createMeshSender(meshStore);
  const newest = new Map<StopsKind, number>();
  const watched = new Map<StopsKind, number>();
  const asked = new Map<StopsKind, { readonly model: Model; readonly meshes: MeshKeys }>();
  let service: Background<StopsRequest> | null = null;
  let count = 0;
  let leave: (() => void) | null = null;
  let leaveRegion: (() => void) | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  function take({ kind, number, answer }: StopsAnswer): void {
    if (newest.get(kind) !== number) return;
    const pending = new Set(getState().pending);
    pending.delete(kind);
    setState({ [kind]: answer, pending } as Partial<StopsState>);
  }

  function ask(kind: StopsKind): void {
    const { model } = documentStore.getState();
    service ??= start(take);
    sender.send(model, service.ask);
    const meshes = sender.keys(model);
    asked.set(kind, { model, meshes });
    count += 1;
    newest.set(kind, count);
    setState({ pending: new Set([...getState().pending, kind]) });
    const base = { number: count, model, meshes };
    const { travel, rack } = inputs.getState();
    const { bump, droop } = model.travel;
    if (kind === 'rays') service.ask({ ...base, kind, travel, rack });
    else if (kind === 'wanted')
      service.ask({ ...base, kind, wish: getState().wish ?? { bump, droop } });
    else service.ask({ ...base, kind });
  }

  /** Asks what is watched anew where the design or its meshes are others. */
  function follow(): void {
    const { model } = documentStore.getState();
    const meshes = sender.keys(model);
    for (const kind of watched.keys()) {
      const known = asked.get(kind);
      if (known?.model !== model || !sameKeys(known.meshes, meshes)) ask(kind);
    }
  }

  function followRest(): void {
    clearTimeout(timer);
    timer = setTimeout(() => {
      if (watched.has('rays')) ask('rays');
    }, REST);
  }

  function follower(): () => void {
    const exits = [
      documentStore.subscribe((state, before) => {
        if (state.model !== before.model) follow();
      }),
      meshStore.subscribe((state, before) => {
        if (state.files !== before.files) follow();
      }),
      inputs.subscribe((state, before) => {
        if (state.travel !== before.travel || state.rack !== before.rack) followRest();
      }),
    ];
    return () => {
      for (const exit of exits) exit();
      clearTimeout(timer);
    };
  }

  /** What is not watched is asked anew when it is watched again, unless its answer still holds. */
  function unwatch(kind: StopsKind): void {
    const others = (watched.get(kind) ?? 1) - 1;
    if (others > 0) {
      watched.set(kind, others);
      return;
    }
    watched.delete(kind);
    if (kind === 'rays' || getState().pending.has(kind)) asked.delete(kind);
  }

  /** Keeps answers of these kinds up to date until the returned function is called; many may watch. */
  function watch(kinds: readonly StopsKind[]): () => void {
    for (const kind of kinds) watched.set(kind, (watched.get(kind) ?? 0) + 1);
    leave ??= follower();
    follow();
    return () => {
      for (const kind of kinds) unwatch(kind);
      if (watched.size > 0) return;
      service?.ask({ kind: 'cancel' });
      leave?.();
      leave = null;
    };
  }

  /** Asks what a wished travel needs. */
  function wish(wanted: Wish): void {
    setState({ wish: wanted });
    if (watched.has('wanted')) ask('wanted');
  }

  /** Draws the usable part on the map, or leaves it out. */
  function showUsable(isShown: boolean): void {
    leaveRegion?.();
    leaveRegion = isShown ? watch(['region']) : null;
    setState({ showsUsable: isShown });
  }

  return { ...store, watch, setWish: wish, showUsable };
}
