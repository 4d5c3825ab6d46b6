/** A place in the design pose that the picture of the corner marks, with the joint at the other end of its link. */
import { createStore } from 'zustand/vanilla';
import type { Vector3 } from '../../solver/index.ts';

export interface PlaceMark {
  /** mm, in the design pose. */
  readonly place: Vector3;
  /** What carries the place: the body, the rack or the knuckle. */
  readonly on: 'body' | 'rack' | 'knuckle';
  /** The joint that a link leads to from there. */
  readonly to: 'outer' | 'inner' | 'upper';
}

export const placeMark = createStore<{ readonly mark: PlaceMark | null }>(() => ({ mark: null }));
