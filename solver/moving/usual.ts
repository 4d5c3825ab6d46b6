/** How large a change of each measure people begin to care about: what changes are sorted by. Common practice, no source. */
import type { AxleKey } from '../measures/axle.ts';
import type { MeasureKey } from '../measures/keys.ts';
import type { UnitKind } from '../measures/rows/row.ts';
import { measureRow } from '../measures/table.ts';

/** In the measure's own unit; a kind's size stands for all its measures but those below. */
const BY_KIND: Readonly<Record<UnitKind, number>> = {
  degree: 1,
  millimetre: 5,
  distance: 200,
  degreePerMm: 0.002,
  degreePerRackMm: 0.005,
  ratio: 0.02,
  perMm: 2e-4,
  percent: 5,
  newton: 200,
  newtonPerMm: 1,
  hertz: 0.05,
};

const OWN: Readonly<Partial<Record<MeasureKey | AxleKey, number>>> = {
  camber: 0.25,
  toe: 0.05,
  caster: 0.5,
  kingpinInclination: 0.5,
  bumpSteer: 0.0015,
  bumpCamber: 0.004,
  bumpCaster: 0.006,
  rollCentreHeight: 15,
  ackermann: 10,
  plunge: 3,
};

/** The part of a centre's distance that counts as one: far away a large change means little. */
const CENTRE_PART = 0.3;
const LEAST_CENTRE = 50;
/** A centre of a view beyond this, mm, is as good as none: the lines that meet there are parallel to within a degree. */
export const FAR_CENTRE = 20_000;
/** What a change of a centre counts for at most. */
export const MOST_CENTRE_WEIGHT = 1;

/** Whether it is a coordinate of the centre of a view. */
export function isCentre(key: MeasureKey | AxleKey): boolean {
  return /View/.test(key);
}

/** Of the toe change over the whole travel, degrees. */
export const USUAL_TOE_CHANGE = 0.1;

/** The size of a change of this measure that counts as one, where the farther of both values is `farther` from 0. */
export function usualSize(key: MeasureKey | AxleKey, farther: number): number {
  if (isCentre(key)) return Math.max(LEAST_CENTRE, CENTRE_PART * farther);
  return OWN[key] ?? BY_KIND[measureRow(key).kind];
}
