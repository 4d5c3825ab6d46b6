/** What measured points and numbers are called. */
import type { MeasuredNumber } from '../model/measured.ts';
import type { Model } from '../model/model.ts';
import type { InputGroup } from './input.ts';

const GROUP_WORDS: Readonly<Record<InputGroup, string>> = {
  lowerArm: 'Lower arm',
  upperArm: 'Upper arm',
  tieRod: 'Tie rod',
  hub: 'Hub',
  wheel: 'Wheel',
  tyre: 'Tyre',
  knuckle: 'Knuckle',
  coilover: 'Coilover',
  antiRollBar: 'Anti-roll bar',
  halfShaft: 'Half-shaft',
  strap: 'Limit strap',
  obstacles: 'Obstacle',
  vehicle: 'Vehicle',
};

/** x, y and z in vehicle axes. */
export const COORDINATE_WORDS = ['fore and aft', 'sideways', 'height'] as const;

const POINT_WORDS: Readonly<Record<string, string>> = {
  frontPivot: 'front pivot',
  rearPivot: 'rear pivot',
  ballJoint: 'ball joint',
  'tieRod.inner': 'inner joint',
  'tieRod.outer': 'outer joint',
  'halfShaft.inner': 'inner joint',
  'halfShaft.outer': 'outer joint',
  face: 'face',
  top: 'top',
  bottom: 'bottom',
  'axis.0': 'near bearing',
  'axis.1': 'far bearing',
  leverEnd: 'lever end',
  link: 'drop link',
  min: 'least corner',
  max: 'greatest corner',
  position: 'place of its origin',
};

/** The words of a point in a list: the last number of its path counts from 1. */
function listed(keys: readonly string[]): string {
  const place = Number(keys.at(-1)) + 1;
  if (keys[0] === 'legs') return `${keys[1]} leg, bend ${place}`;
  if (keys[0] === 'bends') return `bend ${place}`;
  if (keys[0] === 'tubes') return `tube ${Number(keys[1]) + 1}, point ${place}`;
  return `point ${place}`;
}

/** The part a path begins with. */
export function groupOf(path: string): InputGroup {
  return path.split('.')[0] as InputGroup;
}

/** A point by its dotted path: "Lower arm, front pivot"; an obstacle's by the obstacle's name. */
export function pointLabel(model: Model, path: string): string {
  const group = groupOf(path);
  const keys = path.split('.').slice(1);
  const obstacle = group === 'obstacles' ? model.obstacles?.[Number(keys.shift())] : undefined;
  const rest = keys.join('.');
  const words = POINT_WORDS[rest] ?? POINT_WORDS[`${group}.${rest}`] ?? listed(keys);
  if (obstacle !== undefined) return `Obstacle, ${obstacle.name}: ${words}`;
  return `${GROUP_WORDS[group]}, ${words}`;
}

/** A measured number: "Hub, camber, design pose". */
export function numberLabel({ path, label }: MeasuredNumber): string {
  return `${GROUP_WORDS[groupOf(path)]}, ${label}`;
}
