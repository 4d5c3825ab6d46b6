/** The cycle that the play button and the space bar start. */
import { createStore } from 'zustand/vanilla';
import { inputs } from '../state/bench.ts';
import type { Cycle } from '../state/inputs.ts';

export const chosenCycle = createStore<{ readonly cycle: Cycle }>(() => ({ cycle: 'bump' }));

export function togglePlay(): void {
  inputs.play(inputs.getState().playing === null ? chosenCycle.getState().cycle : null);
}
