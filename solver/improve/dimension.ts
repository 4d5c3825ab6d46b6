/** What can be moved: the measured inputs of a model, and the lengths of its arms. mm, degrees. */
import type { Input, InputGroup } from '../inputs/input.ts';
import { inputOf, inputsOf } from '../inputs/list.ts';
import { inputValue, withInput } from '../inputs/value.ts';
import { dot, length, scale, subtract, unit } from '../math/vec3.ts';
import type { Model } from '../model/model.ts';
import { moved } from '../moving/move.ts';

export type ArmName = 'lowerArm' | 'upperArm';

export interface Dimension {
  /** An input's key, or "lowerArm.length". */
  readonly key: string;
  readonly label: string;
  readonly unit: 'mm' | 'degree';
  readonly group: InputGroup;
  /** Words of more and of less of it: "up", "down". */
  readonly ways: readonly [string, string];
  /** The measured input that it is; null for an arm's length. */
  readonly input: Input | null;
}

const ARMS: readonly (readonly [ArmName, string])[] = [
  ['lowerArm', 'Lower arm, length'],
  ['upperArm', 'Upper arm, length'],
];

const WAYS: readonly (readonly [string, string])[] = [
  ['forward', 'rearward'],
  ['outboard', 'inboard'],
  ['up', 'down'],
];

/** From the line through an arm's pivots square to its ball joint, mm. */
function armLength({ frontPivot, rearPivot, ballJoint }: Model[ArmName]): number {
  const along = unit(subtract(frontPivot, rearPivot));
  const spoke = subtract(ballJoint, rearPivot);
  return length(subtract(spoke, scale(along, dot(spoke, along))));
}

function ofInput(input: Input): Dimension[] {
  const { key, label, group, component } = input;
  if (input.unit !== 'mm' && input.unit !== 'degree') return [];
  const ways = component === null ? (['more', 'less'] as const) : WAYS[component]!;
  return [{ key, label, unit: input.unit, group, ways, input }];
}

function ofArm([name, label]: readonly [ArmName, string]): Dimension {
  const ways = ['longer', 'shorter'] as const;
  return { key: `${name}.length`, label, unit: 'mm', group: name, ways, input: null };
}

/** All that can be moved in a model: every input that is a length or an angle, then the arms' lengths. */
export function dimensionsOf(model: Model): readonly Dimension[] {
  return [...inputsOf(model).flatMap(ofInput), ...ARMS.map(ofArm)];
}

/** The dimension of a key; undefined where the model has none. */
export function dimensionOf(model: Model, key: string): Dimension | undefined {
  const arm = ARMS.find(([name]) => key === `${name}.length`);
  if (arm !== undefined) return ofArm(arm);
  const input = inputOf(model, key);
  return input === undefined ? undefined : ofInput(input)[0];
}

/** A dimension's value, mm or degrees. */
export function dimensionValue(model: Model, { input, group }: Dimension): number {
  return input === null ? armLength(model[group as ArmName]) : inputValue(model, input);
}

/** Whether two values of a dimension are the same but for rounding, mm or degrees. */
export function isStill(was: number, is: number): boolean {
  return Math.abs(is - was) < 1e-3;
}

/** A model with a dimension at a value: a longer arm's ball joint goes straight away from its pivots' line. */
export function withDimension(model: Model, dimension: Dimension, value: number): Model {
  const { input, group } = dimension;
  if (input !== null) return withInput(model, input, value);
  return moved(
    model,
    { kind: 'arm', arm: group as ArmName },
    value - dimensionValue(model, dimension),
  );
}

function tidyArm(arm: Model[ArmName], before: Model[ArmName]): Model[ArmName] {
  if (arm.ballJoint === before.ballJoint) return arm;
  const [x, y, z] = arm.ballJoint.map((each) => Number(each.toFixed(4)));
  return { ...arm, ballJoint: [x!, y!, z!] };
}

/** A model whose arms' ball joints are without the dust of sums, to 0.0001 mm, where they are not as in `before`. */
export function withoutDust(model: Model, before: Model): Model {
  return {
    ...model,
    lowerArm: tidyArm(model.lowerArm, before.lowerArm),
    upperArm: tidyArm(model.upperArm, before.upperArm),
  };
}
