/**
 * Readings typed by hand and the fit of the present design to them. While it is watched, the fit follows whatever is
 * typed and whatever becomes of the design; what it finds can be tried as a ghost, kept, or put beside the design.
 */
import { createStore } from 'zustand/vanilla';
import type { Fit, NoFit } from '../../solver/fit/fit.ts';
import type { Reading, ReadQuantity } from '../../solver/fit/reading.ts';
import type { Model } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { FitAnswer, FitRequest } from '../worker/fitJob.ts';
import { type DocumentStore, sameModel } from './document.ts';
import { asMeasured, type FittedInput, withFit } from './fitLineage.ts';
import { type Cell, type FitRow, newRow, readHeights, readRow, USUAL_HEIGHTS } from './fitRows.ts';
import { createTrials } from './trials.ts';

/** What was fitted: the points as measured, and the readings with the rows they were typed in. */
export interface FitQuestion {
  readonly measured: Model;
  /** How many of its inputs an earlier fit had moved, and were put back. */
  readonly putBack: number;
  readonly readings: readonly Reading[];
  readonly rows: readonly number[];
  /** How well heights are known, mm. */
  readonly heights: number;
}

export interface FitsState {
  readonly rows: readonly FitRow[];
  /** Rows taken away last, for having them back. */
  readonly removed: readonly FitRow[];
  /** How well heights are known, as typed. */
  readonly heights: Cell;
  /** A table being typed or pasted: what of it was not taken stays. */
  readonly pasted: string;
  readonly lineage: readonly FittedInput[];
  /** What `found` answers, and whether a newer question is being worked on. */
  readonly asked: FitQuestion | null;
  readonly found: Fit | NoFit | null;
  readonly isRunning: boolean;
  readonly progress: number;
}

export type StartFits = (answer: (answer: FitAnswer) => void) => Background<FitRequest>;

export type FitStore = ReturnType<typeof createFits>;

/** Typing and dragging rest this long, ms, before the fit is made anew. */
const REST = 250;

function sameReadings(one: readonly Reading[], other: readonly Reading[]): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

export function createFits(documentStore: DocumentStore, start: StartFits) {
  const store = createStore<FitsState>(() => ({
    rows: [],
    removed: [],
    heights: USUAL_HEIGHTS,
    pasted: '',
    lineage: [],
    asked: null,
    found: null,
    isRunning: false,
    progress: 0,
  }));
  const { getState, setState } = store;
  const trials = createTrials<Fit>(documentStore);
  let service: Background<FitRequest> | null = null;
  let newest: FitQuestion | null = null;
  let number = 0;
  let watchers = 0;
  let leave: (() => void) | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  function question(): FitQuestion {
    const { rows, lineage, heights } = getState();
    const known = readHeights(heights);
    const { model: measured, count: putBack } = asMeasured(documentStore.getState().model, lineage);
    const used = rows.filter((row) => !row.isLeftOut);
    const read = used.flatMap((row) => {
      const found = readRow(row, measured);
      return found.ok ? [{ id: row.id, reading: found.reading }] : [];
    });
    return {
      measured,
      putBack,
      readings: read.map(({ reading }) => reading),
      rows: read.map(({ id }) => id),
      heights: known.ok ? known.value : 0,
    };
  }

  function take(answer: FitAnswer): void {
    if (answer.number !== number || !getState().isRunning) return;
    const { progress, found } = answer;
    setState(
      found === null ? { progress } : { asked: newest, found, progress: 1, isRunning: false },
    );
  }

  /** Fits anew where design or readings are others than those of the newest question. */
  function refresh(): void {
    clearTimeout(timer);
    const next = question();
    const isSame =
      newest !== null &&
      sameReadings(newest.readings, next.readings) &&
      newest.rows.join() === next.rows.join() &&
      newest.heights === next.heights &&
      sameModel(newest.measured, next.measured);
    if (isSame && newest?.putBack === next.putBack) return;
    newest = next;
    if (isSame) {
      // The same points, now fitted on the bench: the answer stands.
      if (!getState().isRunning && getState().asked !== null) setState({ asked: next });
      return;
    }
    number += 1;
    if (next.readings.length === 0) {
      service?.ask({ kind: 'cancel' });
      setState({ asked: null, found: null, isRunning: false });
      return;
    }
    service ??= start(take);
    setState({ isRunning: true, progress: 0 });
    const { measured: model, readings, heights } = next;
    service.ask({ kind: 'fit', number, model, readings, heights });
  }

  function later(): void {
    if (watchers === 0) return;
    clearTimeout(timer);
    timer = setTimeout(refresh, REST);
  }

  store.subscribe((state, before) => {
    if (state.rows !== before.rows || state.heights !== before.heights) later();
  });

  /** Keeps the fit up to date until the returned function is called. */
  function watch(): () => void {
    watchers += 1;
    leave ??= documentStore.subscribe((state, before) => {
      if (state.model !== before.model) later();
    });
    refresh();
    return () => {
      watchers -= 1;
      if (watchers > 0) return;
      clearTimeout(timer);
      leave?.();
      leave = null;
      if (!getState().isRunning) return;
      service?.ask({ kind: 'cancel' });
      newest = getState().asked;
      setState({ isRunning: false });
    };
  }

  /** Adds rows with ids of their own. */
  function addRows(make: (id: number) => FitRow, count = 1): void {
    const { rows, removed } = getState();
    const first = Math.max(0, ...[...rows, ...removed].map(({ id }) => id)) + 1;
    setState({ rows: [...rows, ...Array.from({ length: count }, (_, i) => make(first + i))] });
  }

  function add(quantity: ReadQuantity): void {
    const { model } = documentStore.getState();
    addRows((id) => newRow(id, quantity, model));
  }

  function change(id: number, patch: Partial<Omit<FitRow, 'id'>>): void {
    const { rows } = getState();
    setState({ rows: rows.map((row) => (row.id === id ? { ...row, ...patch } : row)) });
  }

  function setHeights(heights: Cell): void {
    setState({ heights });
  }

  function remove(ids: readonly number[]): void {
    const { rows } = getState();
    const removed = rows.filter(({ id }) => ids.includes(id));
    setState({ rows: rows.filter(({ id }) => !ids.includes(id)), removed });
  }

  function putBack(): void {
    const { rows, removed } = getState();
    setState({ rows: [...rows, ...removed].sort((a, b) => a.id - b.id), removed: [] });
  }

  /** Puts the fitted points on the bench, the design before them held as the ghost; false where they are not its own any more. */
  function tryOn(): boolean {
    trials.takeBack();
    const { asked, found, lineage } = getState();
    if (asked === null || found === null || !found.ok) return false;
    const { model } = documentStore.getState();
    if (!sameModel(asMeasured(model, lineage).model, asked.measured)) return false;
    // Written down first: from the moment they are on the bench the points are fitted ones.
    setState({ lineage: withFit(lineage, asked.measured, found.model) });
    if (trials.tryOn(found, model, found.model)) return true;
    setState({ lineage });
    return false;
  }

  return {
    ...store,
    trials,
    watch,
    add,
    addRows,
    change,
    setHeights,
    remove,
    putBack,
    tryOn,
    takeBack: trials.takeBack,
    keep: trials.keep,
  };
}
