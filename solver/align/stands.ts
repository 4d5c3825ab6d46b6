/** How a model stands: camber, caster and toe of its set pose by the linkage itself, whatever they were sought by. */
import { assemble, solve } from '../corner.ts';
import type { Failure } from '../linkage/linkage.ts';
import { createPose } from '../linkage/solve.ts';
import { createMeasures, Measure } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import { rideTravel } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import type { AlignedAngles } from './alignment.ts';

export type Stands =
  | { readonly angles: AlignedAngles; readonly fails: null }
  | { readonly angles: null; readonly fails: Failure };

/** The angles of the set pose, degrees, or what cannot be kept in it. */
export function standsAt(model: Model): Stands {
  const corner = assemble(model);
  const pose = createPose();
  const outcome = solve(corner, pose, rideTravel(model.travel), 0);
  if (outcome !== 'reached') return { angles: null, fails: outcome };
  const measures = createMeasures();
  measureInto(corner, pose, measures);
  // Minus zero is zero.
  const [camber, caster, toe] = [
    measures[Measure.camber]! + 0,
    measures[Measure.caster]! + 0,
    measures[Measure.toe]! + 0,
  ];
  return { angles: { camber, caster, toe }, fails: null };
}
