/** What a row of the table of measures says. */
import type { AxleKey } from '../axle.ts';
import type { MeasureKey } from '../keys.ts';

/** What a measure is counted in. Two rates stand apart from plain ratios because people read them per 100 mm or per inch. */
export type UnitKind =
  | 'degree'
  | 'millimetre'
  /** In mm, of a size that people read in metres or feet. */
  | 'distance'
  /** Degrees per mm of wheel travel. */
  | 'degreePerMm'
  /** Degrees per mm of rack displacement. */
  | 'degreePerRackMm'
  | 'ratio'
  | 'perMm'
  | 'percent'
  | 'newton'
  | 'newtonPerMm'
  | 'hertz';

export type MeasureGroup =
  | 'alignment'
  | 'steeringAxis'
  | 'bump'
  | 'springing'
  | 'centres'
  | 'steering'
  | 'halfShaft'
  | 'joints';

/** What the sign means, for the left wheel; the unsigned amount with its unit goes where {} stands. */
export interface Sense {
  readonly positive: string;
  readonly negative: string;
  /** What a value that reads as zero means. */
  readonly none: string;
}

export interface MeasureRow {
  readonly key: MeasureKey | AxleKey;
  readonly group: MeasureGroup;
  readonly kind: UnitKind;
  readonly label: string;
  readonly sense?: Sense;
  /** Keys of the model, dotted, that the measure cannot do without. */
  readonly needs?: readonly string[];
  /** What it means when all parts are there and the number still does not exist. */
  readonly absent?: string;
}
