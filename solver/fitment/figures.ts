/** The figures a wheel and tyre are compared by, of one model at its set pose. Lengths mm. */
import { assemble, type Corner, solve } from '../corner.ts';
import { createPose } from '../linkage/solve.ts';
import { createMeasures, Measure } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import { rideTravel, wheelSpacer } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { loadedRadius, parseTyreSize, type TyreDimensions, tyreDimensions } from '../model/tyre.ts';
import { MM_PER_INCH } from '../units.ts';
import { centrePlane, innerReach, type RimPlaces, rimPlaces } from './rimPlace.ts';
import { type RimFit, rimFit } from './rimRange.ts';
import { revolutionsPerKm, revolutionsPerMile } from './rolling.ts';

export interface FitmentFigures {
  /** Where the tyre's dimensions come from: those of a flotation size are nominal. */
  readonly form: TyreDimensions['form'];
  readonly overallDiameter: number;
  /** On the wheel's actual rim. */
  readonly sectionWidth: number;
  readonly loadedRadius: number;
  readonly rim: RimFit;
  readonly revolutionsPerKm: number;
  readonly revolutionsPerMile: number;
  readonly places: RimPlaces;
  readonly offset: number;
  readonly backspacing: number;
  readonly spacer: number;
  /** Wheel centre plane from the hub face along the hub axis, positive outboard. */
  readonly centrePlane: number;
  /** Of both wheels at the ground in the set pose; null where the set pose is out of reach, as the two below. */
  readonly track: number | null;
  readonly scrubRadius: number | null;
  readonly casterTrail: number | null;
  /** kg, where the wheel states it. */
  readonly mass: number | null;
}

/** Measures of the set pose, or null where it is out of reach. */
function setMeasures(corner: Corner): Float64Array | null {
  const [pose, measures] = [createPose(), createMeasures()];
  if (solve(corner, pose, rideTravel(corner.model.travel), 0) !== 'reached') return null;
  measureInto(corner, pose, measures);
  return measures;
}

/** The width a tyre is named after, or else was measured at, mm. */
function nominalWidth({ tyre }: Model, sectionWidth: number): number {
  const parsed = parseTyreSize(tyre.size ?? '');
  if (!parsed.ok) return sectionWidth;
  const { form, width } = parsed.size;
  return form === 'metric' ? width : width * MM_PER_INCH;
}

/** Figures of a sound model. */
export function fitmentFigures(model: Model): FitmentFigures {
  const { wheel, tyre } = model;
  const { overallDiameter, sectionWidth, form } = tyreDimensions(tyre, wheel);
  const measures = setMeasures(assemble(model));
  const halfTrack = measures?.[Measure.halfTrack] ?? null;
  return {
    form,
    overallDiameter,
    sectionWidth,
    loadedRadius: loadedRadius(tyre, wheel),
    rim: rimFit(form, wheel.width * MM_PER_INCH, nominalWidth(model, sectionWidth)),
    revolutionsPerKm: revolutionsPerKm(overallDiameter),
    revolutionsPerMile: revolutionsPerMile(overallDiameter),
    places: rimPlaces(model),
    offset: wheel.offset,
    backspacing: innerReach(wheel) + wheel.offset,
    spacer: wheelSpacer(wheel),
    centrePlane: centrePlane(wheel),
    track: halfTrack === null ? null : 2 * halfTrack,
    scrubRadius: measures?.[Measure.scrubRadius] ?? null,
    casterTrail: measures?.[Measure.casterTrail] ?? null,
    mass: wheel.mass ?? null,
  };
}
