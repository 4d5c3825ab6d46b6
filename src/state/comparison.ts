/** How designs are compared on the sheet, and their measurements, made once a model. */
import { createStore } from 'zustand/vanilla';
import {
  type MeasuredDesign,
  type Model,
  measureDesign,
  type Station,
} from '../../solver/index.ts';
import type { BesideDesign } from './designStore.ts';

export type ColumnKey = 'present' | BesideDesign['key'];

export interface ComparisonState {
  readonly station: Station;
  /** The design that differences are taken from; the present one where it is not there any more. */
  readonly base: ColumnKey;
  /** Whether rows in which all designs read the same are left out. */
  readonly isDiffering: boolean;
}

export const comparison = createStore<ComparisonState>(() => ({
  station: 'ride',
  base: 'present',
  isDiffering: false,
}));

const known = new WeakMap<Model, MeasuredDesign>();

/** A model measured at every station. */
export function measuredOf(model: Model): MeasuredDesign {
  const measured = known.get(model) ?? measureDesign(model);
  known.set(model, measured);
  return measured;
}
