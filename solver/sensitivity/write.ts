/** Where the answers of a pose are written: values and derivatives by the measures' keys. */
import type { AxleKey } from '../measures/axle.ts';
import type { MeasureKey } from '../measures/keys.ts';
import type { Jet } from './jets.ts';

/** Takes a measure at s = 0 in its public unit: `factor` times the jet. At a corner (`isCorner`) it has a value and no derivatives. */
export type Write = (
  key: MeasureKey | AxleKey,
  jet: Jet,
  factor?: number,
  isCorner?: boolean,
) => void;
