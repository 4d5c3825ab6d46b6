/** The gaps of the sheet's columns as they come in from behind the page. */
import { createStore } from 'zustand/vanilla';
import type { Model } from '../../solver/index.ts';
import type { Background } from '../worker/background.ts';
import type { FitmentAnswer, FitmentMeshes, FitmentRequest } from '../worker/fitmentJob.ts';

/** A column's model and what is known of it; null until there is an answer. */
export interface ColumnGaps {
  readonly model: Model;
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

export function createFittedGaps(start: StartFitment) {
  const store = createStore<FittedGapsState>(() => ({ columns: {}, isStopped: false }));
  const { getState, setState } = store;
  let service: Background<FitmentRequest> | null = null;
  let meshes: FitmentMeshes = new Map();
  let count = 0;

  function take(answer: FitmentAnswer): void {
    const { columns } = getState();
    const column = columns[answer.column];
    if (column?.number !== answer.number) return;
    setState({ columns: { ...columns, [answer.column]: { ...column, answer } } });
  }

  function begin(column: string, model: Model | null): void {
    count += 1;
    if (service === null) {
      service = start(take);
      service.ask({ kind: 'meshes', meshes });
    }
    service.ask({ kind: 'column', number: count, column, model });
    const { [column]: _, ...others } = getState().columns;
    setState({
      columns:
        model === null ? others : { ...others, [column]: { model, number: count, answer: null } },
    });
  }

  /** Asks for a column's gaps, unless they were asked for this very model; null lets go of the column. */
  function ask(column: string, model: Model | null): void {
    if ((getState().columns[column]?.model ?? null) === model) return;
    setState({ isStopped: false });
    begin(column, model);
  }

  /** Hands over the meshes that are at hand; what was asked before is asked again where they are others. */
  function withMeshes(next: FitmentMeshes): void {
    const isSame =
      next.size === meshes.size && [...next].every(([name, mesh]) => meshes.get(name) === mesh);
    if (isSame) return;
    meshes = next;
    service?.ask({ kind: 'meshes', meshes });
    for (const [column, { model }] of Object.entries(getState().columns)) begin(column, model);
  }

  /** Stops the work where it is; what came in stays. */
  function halt(): void {
    service?.stop();
    service = null;
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
    service?.stop();
    service = null;
    setState({ columns: {}, isStopped: false });
  }

  return { ...store, ask, withMeshes, halt, goOn, stop };
}
