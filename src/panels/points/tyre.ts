/** Changes of tyre and rim that must go together: neither could be changed alone without the model being refused in between. */
import { withSquat } from '../../../solver/fitment/squat.ts';
import type { Model } from '../../../solver/index.ts';
import { parseTyreSize } from '../../../solver/model/tyre.ts';

/** The rim's code at the end of a size, before a service mark. */
const RIM_CODE = /\d+(?:\.\d+)?(?=\s*(?:LT)?\s*$)/i;

/** Another size, as typed. One for another rim changes the rim with it. */
export function withTyreSize(model: Model, size: string): Model {
  const parsed = parseTyreSize(size);
  const diameter = parsed.ok ? parsed.size.rimDiameterCode : model.wheel.diameter;
  const next = {
    ...model,
    wheel: { ...model.wheel, diameter },
    tyre: { ...model.tyre, size },
  };
  return withSquat(model, next);
}

/** Another rim diameter (inch code). The tyre's size follows it. */
export function withWheelDiameter(model: Model, diameter: number): Model {
  const { size } = model.tyre;
  const tyre =
    size === undefined
      ? model.tyre
      : { ...model.tyre, size: size.replace(RIM_CODE, String(diameter)) };
  return withSquat(model, { ...model, wheel: { ...model.wheel, diameter }, tyre });
}
