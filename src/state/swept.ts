/** The space the tyre sweeps: the surface on show, what it cuts, and the file that is being made of it. */
import { createStore } from 'zustand/vanilla';
import type { SweptGap } from '../../solver/envelope/cuts.ts';
import type { SweptRange } from '../../solver/envelope/range.ts';
import type { SweptSurface } from '../../solver/envelope/surface.ts';
import type { Model } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { SweptAnswer, SweptOwner, SweptRequest } from '../worker/sweptJob.ts';
import type { DocumentStore } from './document.ts';

export interface ShownSweep {
  readonly model: Model;
  readonly range: SweptRange;
  readonly surface: SweptSurface;
  /** Room and wanted gap, two numbers a vertex. */
  readonly room: Float32Array;
  readonly gaps: readonly SweptGap[];
}

export type SweptStage = 'idle' | 'running' | 'done' | 'stopped' | 'unreached';

export interface SweptState {
  readonly range: SweptRange;
  /** Of the surface on show. Unless it is 'done', what is shown belongs to an earlier design. */
  readonly stage: SweptStage;
  readonly progress: number;
  readonly shown: ShownSweep | null;
  /** Progress of the file that is being made, or null. */
  readonly saving: number | null;
}

/** Grid of the surface on show, mm. */
export const SHOWN_STEP = 14;

/** What a file is made of. */
export interface SavedSweep {
  readonly model: Model;
  readonly range: SweptRange;
  readonly margin: number;
  readonly step: number;
  readonly surface: SweptSurface;
}

export type StartSwept = (answer: (answer: SweptAnswer) => void) => Background<SweptRequest>;

export type Swept = ReturnType<typeof createSwept>;

export function createSwept(documentStore: DocumentStore, start: StartSwept) {
  const store = createStore<SweptState>(() => ({
    range: 'whole',
    stage: 'idle',
    progress: 0,
    shown: null,
    saving: null,
  }));
  const { getState, setState } = store;
  let service: Background<SweptRequest> | null = null;
  let number = 0;
  let watchers = 0;
  let leave: (() => void) | null = null;
  /** What was asked for last, by owner. */
  const asked = new Map<SweptOwner, { number: number; model: Model; range: SweptRange }>();
  let save: {
    readonly margin: number;
    readonly step: number;
    done(saved: SavedSweep | null): void;
  } | null = null;

  function ask(owner: SweptOwner, margin: number, step: number): void {
    const { model } = documentStore.getState();
    const { range } = getState();
    number += 1;
    asked.set(owner, { number, model, range });
    service ??= start(take);
    service.ask({ kind: 'sweep', number, owner, model, range, margin, step });
  }

  function take(answer: SweptAnswer): void {
    const { owner, kind } = answer;
    const wanted = asked.get(owner);
    if (wanted?.number !== answer.number) return;
    if (kind === 'progress') {
      setState(owner === 'shown' ? { progress: answer.progress } : { saving: answer.progress });
      return;
    }
    const { model, range } = wanted;
    if (owner === 'shown') {
      if (kind === 'unreached') setState({ stage: 'unreached', shown: null });
      else {
        const { surface, room, gaps } = answer;
        setState({ stage: 'done', progress: 1, shown: { model, range, surface, room, gaps } });
      }
    } else if (save !== null) {
      const { margin, step, done } = save;
      save = null;
      setState({ saving: null });
      done(kind === 'done' ? { model, range, margin, step, surface: answer.surface } : null);
    }
  }

  /** Works out the surface of the present design anew. */
  function sweep(): void {
    setState({ stage: 'running', progress: 0 });
    ask('shown', 0, SHOWN_STEP);
  }

  function stop(): void {
    if (getState().stage !== 'running') return;
    service?.ask({ kind: 'cancel', owner: 'shown' });
    asked.delete('shown');
    setState({ stage: 'stopped' });
  }

  function follow(): void {
    const last = asked.get('shown');
    const { model } = documentStore.getState();
    if (last?.model !== model || last.range !== getState().range) sweep();
  }

  /** Keeps the surface up to date until the returned function is called; many may watch. */
  function watch(): () => void {
    watchers += 1;
    leave ??= documentStore.subscribe((state, before) => {
      if (state.model !== before.model) follow();
    });
    follow();
    return () => {
      watchers -= 1;
      if (watchers > 0) return;
      leave?.();
      leave = null;
      stop();
    };
  }

  /** Chooses the poses that are swept. */
  function choose(range: SweptRange): void {
    if (range === getState().range) return;
    setState({ range });
    if (watchers > 0) follow();
  }

  /** Takes back the file that is being made. */
  function cancelSaving(): void {
    if (save === null) return;
    service?.ask({ kind: 'cancel', owner: 'saved' });
    const { done } = save;
    save = null;
    setState({ saving: null });
    done(null);
  }

  /** Meshes the present design's sweep for a file; null where it was taken back or no pose can be reached. */
  function saved(margin: number, step: number): Promise<SavedSweep | null> {
    cancelSaving();
    return new Promise((done) => {
      save = { margin, step, done };
      setState({ saving: 0 });
      ask('saved', margin, step);
    });
  }

  return { ...store, watch, sweep, stop, choose, saved, cancelSaving };
}
