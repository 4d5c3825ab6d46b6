/** The curves of the page's bench, and the sheet of large curves that its panels open. */
import { createStore } from 'zustand/vanilla';
import type { SweepKey } from '../../solver/sweep.ts';
import { inputs, posed } from './bench.ts';
import { beside } from './compared.ts';
import { createCurves } from './curves.ts';

export const curves = createCurves(posed, inputs, beside);

export interface CurveSheetState {
  readonly isOpen: boolean;
  /** The measures drawn, in the order chosen. */
  readonly keys: readonly SweepKey[];
}

export const curveSheet = createStore<CurveSheetState>(() => ({
  isOpen: false,
  keys: ['camber', 'toe'],
}));

/** Opens the sheet of large curves, with one measure or as it was left. */
export function openCurves(key?: SweepKey): void {
  curveSheet.setState(key === undefined ? { isOpen: true } : { isOpen: true, keys: [key] });
}

export function closeCurves(): void {
  curveSheet.setState({ isOpen: false });
}
