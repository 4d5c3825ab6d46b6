/**
 * How well every measure is known: in the present pose, over the whole travel at the present rack, and, while somebody
 * watches, over the whole rack and what spoils the set pose. Worked out behind the page a little after the bench has
 * moved, one question of a kind at a time, the newest winning; what is shown until then is what was known last.
 */
import { createStore } from 'zustand/vanilla';
import type { AnswerKey, Band, Knowledge } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { SpreadAnswer, SpreadRequest } from '../worker/spreadJob.ts';
import type { DocumentStore } from './document.ts';
import type { Inputs } from './inputs.ts';
import type { PlusMinusStore } from './plusMinus.ts';

/** One standard uncertainty of each measure, in its own unit; NaN where there is no number. */
export type Uncertainties = Readonly<Partial<Record<AnswerKey, number>>>;

export interface SpreadsState {
  /** Of the present pose, as far as it is known; null: not shown, or not known yet. */
  readonly pose: Uncertainties | null;
  /** Bands along travel and along rack, as far as they are known; null: not shown, not watched or not known yet. */
  readonly travel: Band | null;
  readonly rack: Band | null;
  /** Of the set pose, whether shown or not; null: nobody watches, or not known yet. */
  readonly set: Knowledge | null;
  /** What is known of the set pose is of before the last change. */
  readonly isSetPending: boolean;
}

export type StartSpreads = (answer: (answer: SpreadAnswer) => void) => Background<SpreadRequest>;

/** The bench moves this long, ms, before it is asked how well the new pose is known. */
const REST = 120;

type Kind = SpreadRequest['kind'];
const KINDS: readonly Kind[] = ['set', 'pose', 'travel', 'rack'];
/** Kinds that are asked for only while somebody watches. */
type Watched = Extract<Kind, 'set' | 'rack'>;

const NOTHING_SHOWN = { pose: null, travel: null, rack: null } as const;

export type SpreadStore = ReturnType<typeof createSpreads>;

export function createSpreads(
  documentStore: DocumentStore,
  inputs: Inputs,
  plusMinus: PlusMinusStore,
  start: StartSpreads,
) {
  const store = createStore<SpreadsState>(() => ({
    ...NOTHING_SHOWN,
    set: null,
    isSetPending: true,
  }));
  const { setState } = store;
  const stale: Record<Kind, boolean> = { pose: true, travel: true, rack: true, set: true };
  const open: Record<Kind, number> = { pose: 0, travel: 0, rack: 0, set: 0 };
  const watchers: Record<Watched, number> = { set: 0, rack: 0 };
  let service: Background<SpreadRequest> | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let count = 0;

  function isWanted(kind: Kind): boolean {
    if ((kind === 'set' || kind === 'rack') && watchers[kind] === 0) return false;
    return kind === 'set' || plusMinus.getState().isShown;
  }

  function take(answer: SpreadAnswer): void {
    const { kind } = answer;
    if (answer.number !== open[kind]) return;
    open[kind] = 0;
    if (!isWanted(kind)) {
      stale[kind] = true;
      return;
    }
    if (kind === 'set') setState({ set: answer.knowledge, isSetPending: stale.set });
    else if (kind === 'pose') setState({ pose: answer.uncertainties });
    else setState({ [kind]: answer.band });
    if (stale[kind]) soon();
  }

  function ask(kind: Kind): void {
    if (!stale[kind] || open[kind] !== 0 || !isWanted(kind)) return;
    stale[kind] = false;
    service ??= start(take);
    count += 1;
    open[kind] = count;
    const { model } = documentStore.getState();
    const { travel, rack } = inputs.getState();
    service.ask({ kind, number: count, model, travel, rack });
  }

  function askAll(): void {
    timer = undefined;
    for (const kind of KINDS) ask(kind);
  }

  /** Not started anew at each change: a drag must not make and clear a timer per frame. */
  function soon(): void {
    timer ??= setTimeout(askAll, REST);
  }

  const exits = [
    documentStore.subscribe((state, before) => {
      if (state.model === before.model) return;
      for (const kind of KINDS) stale[kind] = true;
      setState({ isSetPending: true });
      soon();
    }),
    inputs.subscribe((state, before) => {
      const hasSteered = state.rack !== before.rack;
      const hasRisen = state.travel !== before.travel;
      if (!hasSteered && !hasRisen) return;
      stale.pose = true;
      stale.travel ||= hasSteered;
      stale.rack ||= hasRisen;
      soon();
    }),
    plusMinus.subscribe((state, before) => {
      if (state.isShown === before.isShown) return;
      if (!state.isShown) setState(NOTHING_SHOWN);
      for (const kind of ['pose', 'travel', 'rack'] as const) stale[kind] = true;
      askAll();
    }),
  ];
  soon();

  /** Keeps what is known of that kind up to date until the returned function is called. */
  function watch(kind: Watched): () => void {
    watchers[kind] += 1;
    soon();
    return () => {
      watchers[kind] -= 1;
    };
  }

  function stop(): void {
    clearTimeout(timer);
    service?.stop();
    for (const exit of exits) exit();
  }

  return { ...store, watch, stop };
}
