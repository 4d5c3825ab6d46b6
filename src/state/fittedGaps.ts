/** The gaps of the sheet's columns as they come in from behind the page. */
import { createStore } from 'zustand/vanilla';
import type { Model } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { FitmentAnswer, FitmentRequest } from '../worker/fitmentJob.ts';
import type { MeshKeys } from '../worker/meshShelf.ts';
import type { MeshStore } from './meshes.ts';
import { createMeshSender, type MeshSender, sameKeys } from './meshSender.ts';

/** A column's model and what is known of it; null until there is an answer. */
export interface ColumnGaps {
  readonly model: Model;
  /** The meshes that were at hand. */
  readonly meshes: MeshKeys;
  readonly number: number;
  readonly answer: FitmentAnswer | null;
}

export interface FittedGapsState {
  readonly columns: Readonly<Record<string, ColumnGaps>>;
  /** True after the work was stopped by hand, until it is taken up again. */
  readonly isStopped: boolean;
}

/** Starts whatever works them out. */
export type StartFitment = (answer: (answer: FitmentAnswer) => void) => Background<FitmentRequest>;

export type FittedGaps = ReturnType<typeof createFittedGaps>;

/** What works behind the page, and which meshes it has been sent. */
interface Work {
  readonly service: Background<FitmentRequest>;
  readonly sender: MeshSender;
}

export function createFittedGaps(meshStore: MeshStore, start: StartFitment) {
  const store = createStore<FittedGapsState>(() => ({ columns: {}, isStopped: false }));
  const { getState, setState } = store;
  const keysOf = createMeshSender(meshStore).keys;
  let work: Work | null = null;
  let count = 0;

  function take(answer: FitmentAnswer): void {
    const { columns } = getState();
    const column = columns[answer.column];
    if (column?.number !== answer.number) return;
    setState({ columns: { ...columns, [answer.column]: { ...column, answer } } });
  }

  function begin(column: string, model: Model): void {
    count += 1;
    work ??= { service: start(take), sender: createMeshSender(meshStore) };
    const { service, sender } = work;
    const meshes = keysOf(model);
    sender.send(model, service.ask);
    service.ask({ kind: 'column', number: count, column, model, meshes });
    const own = { model, meshes, number: count, answer: null };
    setState({ columns: { ...getState().columns, [column]: own } });
  }

  /** Asks for a column's gaps, unless they were asked for this very model with the meshes that are at hand. */
  function ask(column: string, model: Model): void {
    const known = getState().columns[column];
    if (known?.model === model && sameKeys(known.meshes, keysOf(model))) return;
    setState({ isStopped: false });
    begin(column, model);
  }

  /** Lets go of a column. */
  function leave(column: string): void {
    const { [column]: known, ...columns } = getState().columns;
    if (known === undefined) return;
    work?.service.ask({ kind: 'leave', column });
    setState({ columns });
  }

  function end(): void {
    work?.service.stop();
    work = null;
  }

  /** Stops the work where it is; what came in stays. */
  function halt(): void {
    end();
    setState({ isStopped: true });
  }

  /** Takes stopped work up again, from the start. */
  function goOn(): void {
    setState({ isStopped: false });
    for (const [column, { model, answer }] of Object.entries(getState().columns)) {
      if (answer?.progress !== 1) begin(column, model);
    }
  }

  /** Ends all work and forgets it. What is asked afterwards starts anew. */
  function stop(): void {
    end();
    setState({ columns: {}, isStopped: false });
  }

  return { ...store, ask, leave, halt, goOn, stop };
}
