/** What the close-up in the picture shows: the tight spot of the pair on the map, or a cam in hand. Slow state; React may render from it. */
import { createStore } from 'zustand/vanilla';

/** A pivot with a cam on it, as the linkage calls it, and what people do. */
export interface CamLook {
  readonly pivot: 'lowerFront' | 'lowerRear' | 'upperFront' | 'upperRear';
  readonly name: string;
}

export interface CloseUpState {
  /** Of the tight spot. */
  readonly isShown: boolean;
  /** The cam that is looked at, before the tight spot; null while none is in hand. */
  readonly cam: CamLook | null;
}

export const closeUp = createStore<CloseUpState>(() => ({ isShown: false, cam: null }));

export function showCloseUp(isShown: boolean): void {
  if (closeUp.getState().isShown !== isShown) closeUp.setState({ isShown });
}

export function lookAtCam(cam: CamLook | null): void {
  if (closeUp.getState().cam !== cam) closeUp.setState({ cam });
}
