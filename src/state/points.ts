/**
 * The hard points of a model: where each stands in the file, what it is called, which body carries it, and how a model
 * with that point moved is made. All in the design pose, vehicle axes, mm. Used by the handles and by the points panel.
 */
import type { Arm, Model, Vector3 } from '../../solver/index.ts';
import { carrier } from '../../solver/model/defaults.ts';

/** What a point is fixed to: the vehicle's body, the rack, a moving arm, the knuckle, the tie rod or the bar's lever. */
export type PointBody =
  | 'body'
  | 'rack'
  | 'lowerArm'
  | 'upperArm'
  | 'knuckle'
  | 'tieRod'
  | 'antiRollBar';

/** Folders the points are shown in. */
export type PointGroup =
  | 'lowerArm'
  | 'upperArm'
  | 'tieRod'
  | 'hub'
  | 'coilover'
  | 'antiRollBar'
  | 'halfShaft'
  | 'strap'
  | 'knuckle'
  | 'obstacles';

export interface HardPoint {
  /** Path in the model file, keys and places joined by dots: "lowerArm.frontPivot", "tieRod.bends.0". */
  readonly path: string;
  /** Full name, unique in a model: "Lower arm, front pivot". */
  readonly label: string;
  /** Name inside its group: "Front pivot". */
  readonly shortLabel: string;
  readonly group: PointGroup;
  readonly body: PointBody;
  /** The point in a model that has it; throws for a model without it. */
  readonly get: (model: Model) => Vector3;
  /** A model with the point moved; the model itself when it already stands there. */
  readonly set: (model: Model, point: Vector3) => Model;
}

export const GROUP_LABELS: Readonly<Record<PointGroup, string>> = {
  lowerArm: 'Lower arm',
  upperArm: 'Upper arm',
  tieRod: 'Tie rod',
  hub: 'Hub',
  coilover: 'Coilover',
  antiRollBar: 'Anti-roll bar',
  halfShaft: 'Half-shaft',
  strap: 'Limit strap',
  knuckle: 'Knuckle',
  obstacles: 'Obstacles',
};

function isPoint(value: unknown): value is Vector3 {
  return (
    Array.isArray(value) && value.length === 3 && value.every((part) => typeof part === 'number')
  );
}

function child(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null
    ? (value as Record<string, unknown>)[key]
    : undefined;
}

/** The point at a path, or null when the model has none there. */
export function pointAt(model: Model, path: string): Vector3 | null {
  const found = path.split('.').reduce<unknown>(child, model);
  return isPoint(found) ? found : null;
}

/** A copy of `value` whose place at `keys` holds `point`; everything not on the way is shared. */
function withPlace(value: unknown, keys: readonly string[], point: Vector3): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return point;
  const inner = withPlace(child(value, key), rest, point);
  if (Array.isArray(value)) return value.map((item, i) => (String(i) === key ? inner : item));
  return { ...(value as object), [key]: inner };
}

/** A model with the point at `path` moved to `point`; the model itself when it already stands there. */
export function withPointAt(model: Model, path: string, point: Vector3): Model {
  const now = pointAt(model, path);
  if (now === null) throw new Error(`The model has no point at ${path}.`);
  if (now.every((part, i) => part === point[i])) return model;
  return withPlace(model, path.split('.'), [...point]) as Model;
}

function hardPoint(
  group: PointGroup,
  rest: string,
  shortLabel: string,
  body: PointBody,
  before = GROUP_LABELS[group],
): HardPoint {
  const path = `${group}.${rest}`;
  return {
    path,
    shortLabel,
    label: `${before}, ${shortLabel.charAt(0).toLowerCase()}${shortLabel.slice(1)}`,
    group,
    body,
    get: (model) => {
      const point = pointAt(model, path);
      if (point === null) throw new Error(`The model has no point at ${path}.`);
      return point;
    },
    set: (model, point) => withPointAt(model, path, point),
  };
}

function armPoints(group: 'lowerArm' | 'upperArm', arm: Arm): HardPoint[] {
  const leg = (side: 'front' | 'rear') =>
    (arm.legs?.[side] ?? []).map((_, i) =>
      hardPoint(
        group,
        `legs.${side}.${i}`,
        `${side === 'front' ? 'Front' : 'Rear'} leg, bend ${i + 1}`,
        group,
      ),
    );
  return [
    hardPoint(group, 'frontPivot', 'Front pivot', 'body'),
    hardPoint(group, 'rearPivot', 'Rear pivot', 'body'),
    hardPoint(group, 'ballJoint', 'Ball joint', group),
    ...leg('front'),
    ...leg('rear'),
  ];
}

function springPoints(model: Model): HardPoint[] {
  const { coilover, antiRollBar, strap } = model;
  const points: HardPoint[] = [];
  if (coilover !== undefined) {
    points.push(
      hardPoint('coilover', 'top', 'Top', 'body'),
      hardPoint('coilover', 'bottom', 'Bottom', carrier(coilover)),
    );
  }
  if (antiRollBar !== undefined) {
    points.push(
      hardPoint('antiRollBar', 'axis.0', 'Near bearing', 'body'),
      hardPoint('antiRollBar', 'axis.1', 'Far bearing', 'body'),
      hardPoint('antiRollBar', 'leverEnd', 'Lever end', 'antiRollBar'),
      hardPoint('antiRollBar', 'link', 'Drop link', carrier(antiRollBar)),
    );
  }
  if (strap !== undefined) {
    points.push(
      hardPoint('strap', 'top', 'Top', 'body'),
      hardPoint('strap', 'bottom', 'Bottom', carrier(strap)),
    );
  }
  return points;
}

function obstaclePoints(model: Model): HardPoint[] {
  return (model.obstacles ?? []).flatMap((obstacle, i) => {
    const at = (rest: string, name: string) =>
      hardPoint('obstacles', `${i}.${rest}`, `${obstacle.name}: ${name}`, 'body', 'Obstacle');
    if (obstacle.shape === 'box') return [at('min', 'least corner'), at('max', 'greatest corner')];
    if (obstacle.shape === 'tube') {
      return obstacle.points.map((_, j) => at(`points.${j}`, `point ${j + 1}`));
    }
    return obstacle.position === undefined ? [] : [at('position', 'place of its origin')];
  });
}

/** Every hard point a model has, in the order a person reads the corner: arms, steering, hub, springs, shaft, surroundings. */
export function hardPoints(model: Model): readonly HardPoint[] {
  const { tieRod, halfShaft, knuckle } = model;
  return [
    ...armPoints('lowerArm', model.lowerArm),
    ...armPoints('upperArm', model.upperArm),
    hardPoint('tieRod', 'inner', 'Inner joint', 'rack'),
    ...(tieRod.bends ?? []).map((_, i) =>
      hardPoint('tieRod', `bends.${i}`, `Bend ${i + 1}`, 'tieRod'),
    ),
    hardPoint('tieRod', 'outer', 'Outer joint', 'knuckle'),
    hardPoint('hub', 'face', 'Face', 'knuckle'),
    ...springPoints(model),
    ...(halfShaft === undefined
      ? []
      : [
          hardPoint('halfShaft', 'inner', 'Inner joint', 'body'),
          hardPoint('halfShaft', 'outer', 'Outer joint', 'knuckle'),
        ]),
    ...(knuckle?.tubes ?? []).flatMap((tube, i) =>
      tube.points.map((_, j) =>
        hardPoint('knuckle', `tubes.${i}.points.${j}`, `Tube ${i + 1}, point ${j + 1}`, 'knuckle'),
      ),
    ),
    ...obstaclePoints(model),
  ];
}
