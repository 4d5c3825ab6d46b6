/** What is near enough where nothing is stated: by the kind of the figure. Common practice, no source; editable. */
import type { AxleKey } from '../measures/axle.ts';
import type { MeasureKey } from '../measures/keys.ts';
import type { UnitKind } from '../measures/rows/row.ts';
import { measureRow } from '../measures/table.ts';

const NEAR_ENOUGH: Readonly<Record<UnitKind, number>> = {
  degree: 0.25,
  millimetre: 3,
  distance: 100,
  degreePerMm: 0.0005,
  degreePerRackMm: 0.01,
  ratio: 0.01,
  perMm: 0.0001,
  percent: 3,
  newton: 50,
  newtonPerMm: 1,
  hertz: 0.05,
};

/** Toe is read finer than other angles. */
const TOE = 0.05;
/** A gap or a margin, mm or degrees. */
export const NEAR_ENOUGH_LEAST = 1;

/** A miss of a measure that is near enough, in the measure's own unit. */
export function nearEnough(measure: MeasureKey | AxleKey): number {
  return measure === 'toe' ? TOE : NEAR_ENOUGH[measureRow(measure).kind];
}
