/** Whether the close-up of the tight spot is shown in the picture. Slow state; React may render from it. */
import { createStore } from 'zustand/vanilla';

export const closeUp = createStore<{ readonly isShown: boolean }>(() => ({ isShown: false }));

export function showCloseUp(isShown: boolean): void {
  if (closeUp.getState().isShown !== isShown) closeUp.setState({ isShown });
}
