/**
 * How well every measure is known: in the present pose, over the whole travel at the present rack, and, while somebody
 * watches, what spoils it in the set pose. Worked out behind the page a little after the bench has moved, one question of
 * a kind at a time, the newest winning; what is shown until then is what was known last.
 */
import { createStore } from 'zustand/vanilla';
import type { AxleKey, MeasureKey } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { Knowledge } from '../worker/knowledge.ts';
import type { SpreadAnswer, SpreadRequest } from '../worker/spreadJob.ts';
import type { DocumentStore } from './document.ts';
import type { Inputs } from './inputs.ts';
import type { PlusMinusStore } from './plusMinus.ts';
import type { Spread } from './spread.ts';

/** One standard uncertainty of each measure, in its own unit; NaN where there is no number. */
export type Uncertainties = Readonly<Partial<Record<MeasureKey | AxleKey, number>>>;

export interface SpreadsState {
  /** Of the present pose, as far as it is known; null: not shown, or not known yet. */
  readonly pose: Uncertainties | null;
  readonly band: Spread | null;
  /** Of the set pose, whether shown or not; null: nobody watches, or not known yet. */
  readonly set: Knowledge | null;
  /** What is known of the set pose is of before the last change. */
  readonly isSetPending: boolean;
}

export type StartSpreads = (answer: (answer: SpreadAnswer) => void) => Background<SpreadRequest>;

/** The bench moves this long, ms, before it is asked how well the new pose is known. */
const REST = 120;

type Kind = SpreadRequest['kind'];
const KINDS: readonly Kind[] = ['set', 'pose', 'line'];

export type SpreadStore = ReturnType<typeof createSpreads>;

export function createSpreads(
  documentStore: DocumentStore,
  inputs: Inputs,
  plusMinus: PlusMinusStore,
  start: StartSpreads,
) {
  const store = createStore<SpreadsState>(() => ({
    pose: null,
    band: null,
    set: null,
    isSetPending: true,
  }));
  const { setState } = store;
  const stale: Record<Kind, boolean> = { pose: true, line: true, set: true };
  const open: Record<Kind, number> = { pose: 0, line: 0, set: 0 };
  let service: Background<SpreadRequest> | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let count = 0;
  let watchers = 0;

  function isWanted(kind: Kind): boolean {
    return kind === 'set' ? watchers > 0 : plusMinus.getState().isShown;
  }

  function take(answer: SpreadAnswer): void {
    const { kind } = answer;
    if (answer.number !== open[kind]) return;
    open[kind] = 0;
    if (!isWanted(kind)) {
      stale[kind] = true;
      return;
    }
    if (kind === 'pose') setState({ pose: answer.uncertainties });
    else if (kind === 'line') setState({ band: answer.spread });
    else setState({ set: answer.knowledge, isSetPending: stale.set });
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
      if (!hasSteered && state.travel === before.travel) return;
      stale.pose = true;
      stale.line ||= hasSteered;
      soon();
    }),
    plusMinus.subscribe((state, before) => {
      if (state.isShown === before.isShown) return;
      if (state.isShown) askAll();
      else setState({ pose: null, band: null });
      stale.pose ||= !state.isShown;
      stale.line ||= !state.isShown;
    }),
  ];
  soon();

  /** Keeps what is known of the set pose up to date until the returned function is called. */
  function watchSet(): () => void {
    watchers += 1;
    soon();
    return () => {
      watchers -= 1;
    };
  }

  return {
    ...store,
    watchSet,
    /** The band over the whole travel at about the present rack; null where none is shown. */
    band: (): Spread | null => store.getState().band,
    stop(): void {
      clearTimeout(timer);
      service?.stop();
      for (const exit of exits) exit();
    },
  };
}
