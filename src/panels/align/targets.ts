/** What is wanted of the three angles, as edits of the model. */
import type { Model, Target } from '../../../solver/index.ts';
import { withValue } from '../points/place.ts';
import type { AngleKey } from './setPose.ts';

/** What may be off a target that is stated anew, degrees: common practice, no source. */
const USUAL_PLUS_MINUS: Readonly<Record<AngleKey, number>> = {
  camber: 0.5,
  caster: 0.5,
  toe: 0.05,
};

/** The model with that value wanted. */
export function withTarget(model: Model, key: AngleKey, value: number): Model {
  const plusMinus = model.targets?.[key]?.plusMinus ?? USUAL_PLUS_MINUS[key];
  return withValue(model, `targets.${key}`, { value, plusMinus } satisfies Target);
}
