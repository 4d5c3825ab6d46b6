/** What is to be moved, which way and how far; and the move that is on trial. */
import { createStore } from 'zustand/vanilla';
import type { Movable } from '../../solver/index.ts';
import { documentStore, view } from './bench.ts';
import { createTrials } from './trials.ts';

export interface MovingState {
  readonly what: Movable;
  /** mm along the point's axis (forward, left, up), or longer; negative the other way. */
  readonly by: number;
}

export const moving = createStore<MovingState>(() => ({
  what: { kind: 'point', path: 'tieRod.inner', axis: 2 },
  by: 10,
}));

/** Trials of moves, each by its words. */
export const moves = createTrials<string>(documentStore);

/** Chooses a point to be moved; the way stays, where the point can go it. */
export function choosePoint(path: string): void {
  const { what } = moving.getState();
  const axis = what.kind === 'point' ? what.axis : 2;
  moving.setState({ what: { kind: 'point', path, axis } });
}

// A handle that is taken in the scene says which point is meant.
view.subscribe(({ touched }, before) => {
  if (touched !== null && touched !== before.touched) choosePoint(touched);
});
