/** One thing of a design moved: a point along an axis, an arm made longer, or a measured length made more. */
import type { Input } from '../inputs/input.ts';
import { inputOf, inputsOf } from '../inputs/list.ts';
import { inputValue, withInput } from '../inputs/value.ts';
import { add, dot, scale, subtract, unit } from '../math/vec3.ts';
import type { Model } from '../model/model.ts';

/** Path of a point and one of the vehicle's axes; an arm whose ball joint goes straight away from its pivots' line; a length's path. */
export type Movable =
  | { readonly kind: 'point'; readonly path: string; readonly axis: 0 | 1 | 2 }
  | { readonly kind: 'arm'; readonly arm: 'lowerArm' | 'upperArm' }
  | { readonly kind: 'length'; readonly path: string };

/** Paths of the points that a measure of a pose depends on, in the format's order. */
export function movablePoints(model: Model): readonly string[] {
  return inputsOf(model)
    .filter(({ component, isMeasured }) => component === 0 && isMeasured)
    .map(({ path }) => path);
}

/** The measured lengths that a measure of a pose depends on: offset, spacer, loaded radius, … */
export function movableLengths(model: Model): readonly Input[] {
  return inputsOf(model).filter(
    ({ component, isMeasured, unit: of }) => component === null && isMeasured && of === 'mm',
  );
}

function withLongerArm(model: Model, name: 'lowerArm' | 'upperArm', by: number): Model {
  const arm = model[name];
  const along = unit(subtract(arm.frontPivot, arm.rearPivot));
  const spoke = subtract(arm.ballJoint, arm.rearPivot);
  const away = unit(subtract(spoke, scale(along, dot(spoke, along))));
  return { ...model, [name]: { ...arm, ballJoint: add(arm.ballJoint, scale(away, by)) } };
}

/**
 * The design with one thing moved by so many mm along its axis (positive forward, left, up; an arm longer, a length more). Everything
 * else stands where the file says: the design pose's camber and toe, being stated by themselves, do not change. The model
 * itself where it has no such point or length. The result is not checked: the model's door says whether it is sound.
 */
export function moved(model: Model, what: Movable, by: number): Model {
  if (what.kind === 'arm') return withLongerArm(model, what.arm, by);
  const key =
    what.kind === 'length' ? what.path : `${what.path}.${(['x', 'y', 'z'] as const)[what.axis]}`;
  const input = inputOf(model, key);
  return input === undefined ? model : withInput(model, input, inputValue(model, input) + by);
}
