/** Camber, caster and toe of a model's set pose, by its pose's report: what aligning is held to. */
import { type AlignedAngles, assemble, type Model, poseReport } from '../../solver/index.ts';

/** The angles, degrees; null where the set pose is out of reach. */
export function standing(model: Model): AlignedAngles | null {
  const report = poseReport(assemble(model), model.travel.ride ?? 0, 0);
  if (report.reached === false) return null;
  const [camber, caster, toe] = ['camber', 'caster', 'toe'].map((key) => report[key] as number);
  return { camber: camber!, caster: caster!, toe: toe! };
}
