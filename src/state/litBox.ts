/** Where on the page the drawing lies that a lit name is explained by: written by the picture, kept clear by the words. */
import { createStore } from 'zustand/vanilla';

/** Edges of a part of the page, px. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface LitBoxState {
  /** The key whose drawing it is, and its box; null while there is no picture of it. */
  readonly key: string | null;
  readonly box: Box | null;
}

export const litBox = createStore<LitBoxState>(() => ({ key: null, box: null }));
