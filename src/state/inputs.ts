/** Where the corner stands: travel and rack. Session state: no history, not in the file; every slider, key and drag calls `move`. */
import { createStore } from 'zustand/vanilla';
import type { Model } from '../../solver/index.ts';
import { rackRange, rideTravel } from '../../solver/model/defaults.ts';
import type { DocumentStore } from './document.ts';

/** What the play button cycles through. */
export type Cycle = 'bump' | 'lock' | 'both';

export interface InputsState {
  /** mm from the design pose, positive in bump. */
  readonly travel: number;
  /** mm along the steering direction, positive to the left. */
  readonly rack: number;
  /** The cycle that runs, or null. */
  readonly playing: Cycle | null;
}

/** Range of travel the bench moves through, mm: droop to bump, widened to the ride height where a lift lies outside. */
export function travelRange(model: Model): readonly [number, number] {
  const ride = rideTravel(model.travel);
  return [Math.min(-model.travel.droop, ride), Math.max(model.travel.bump, ride)];
}

function clamp(value: number, [least, most]: readonly [number, number]): number {
  return Math.min(most, Math.max(least, value));
}

export type Inputs = ReturnType<typeof createInputs>;

export function createInputs(documentStore: DocumentStore) {
  const first = documentStore.getState().model;
  const store = createStore<InputsState>(() => ({
    travel: rideTravel(first.travel),
    rack: 0,
    playing: null,
  }));

  /** Moves to (travel, rack), clamped to the model's ranges; what is no number moves nothing. */
  function move(travel: number, rack: number): void {
    if (Number.isNaN(travel) || Number.isNaN(rack)) return;
    const { model } = documentStore.getState();
    const next = {
      travel: clamp(travel, travelRange(model)),
      rack: clamp(rack, rackRange(model.steering)),
    };
    const now = store.getState();
    if (next.travel !== now.travel || next.rack !== now.rack) store.setState(next);
  }

  function setTravel(travel: number): void {
    move(travel, store.getState().rack);
  }

  function setRack(rack: number): void {
    move(store.getState().travel, rack);
  }

  function play(playing: Cycle | null): void {
    store.setState({ playing });
  }

  documentStore.subscribe((state, before) => {
    if (state.model === before.model) return;
    const { travel, rack } = store.getState();
    move(travel, rack);
  });

  return { ...store, move, setTravel, setRack, play };
}
