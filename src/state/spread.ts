/** How well the measures are known along the travel, as it comes from behind the page. */
import type { MeasureKey } from '../../solver/index.ts';

export interface Spread {
  /** Travel, evenly spaced, ascending, mm. */
  readonly axis: Float64Array;
  /** One standard uncertainty in the measure's unit; NaN where there is no number. */
  readonly columns: Readonly<Partial<Record<MeasureKey, Float64Array>>>;
}
