/** How well the measures are known along a line of poses, as it comes from behind the page. */
import type { MeasureKey, Model } from '../../solver/index.ts';

export interface Spread {
  readonly model: Model;
  readonly along: 'travel' | 'rack';
  /** What stayed the same along the line: rack or travel, mm. */
  readonly at: number;
  /** Evenly spaced, ascending, mm. */
  readonly axis: Float64Array;
  /** One standard uncertainty in the measure's unit; NaN where there is no number. */
  readonly columns: Readonly<Partial<Record<MeasureKey, Float64Array>>>;
}
