/** Which measure is being explained, and beside what: one explanation at a time. */
import { createStore } from 'zustand/vanilla';
import type { AxleKey, MeasureKey } from '../../solver/index.ts';
import { view } from '../state/bench.ts';

export interface Explained {
  readonly key: MeasureKey | AxleKey;
  readonly title: string;
  /** The name that asked. */
  readonly anchor: HTMLElement;
}

export const explained = createStore<{ readonly now: Explained | null }>(() => ({ now: null }));

/** Explains a measure and lights its drawing in the scene. */
export function explain(now: Explained): void {
  explained.setState({ now });
  view.light(now.key);
}

/** Ends the explanation: of `anchor` alone when one is given, so that a late leave ends no newer one. */
export function stopExplaining(anchor?: HTMLElement): void {
  const { now } = explained.getState();
  if (now === null || (anchor !== undefined && now.anchor !== anchor)) return;
  explained.setState({ now: null });
  view.light(null);
}
