/** What a person decides of a mesh file before it becomes an obstacle, and what follows from it. */
import type { MeshUnit, Model, Vector3 } from '../../../solver/index.ts';
import { unitInMillimetres } from '../../../solver/model/defaults.ts';
import { type Axis, axesAcross, boxIn, rotationOf } from '../../mesh/axes.ts';
import type { MeshBox } from '../../mesh/data.ts';
import { baseOf, endingOf } from '../../mesh/names.ts';
import { meshObstacles, type OfferedMesh } from '../../state/meshes.ts';
import type { MeshChoice } from '../../state/meshLoader.ts';
import type { LengthUnit } from '../../state/view.ts';
import { lengthNumber, lengthUnitName } from '../../words/format.ts';

export const UNITS: readonly { readonly unit: MeshUnit; readonly name: string }[] = [
  { unit: 'mm', name: 'millimetres' },
  { unit: 'cm', name: 'centimetres' },
  { unit: 'm', name: 'metres' },
  { unit: 'inch', name: 'inches' },
];

/** Where the file's origin goes: to the vehicle's, or to where the mesh's middle is above the wheel. */
export type Where = 'own' | 'wheel';

export interface MeshDraft {
  readonly name: string;
  /** null until it is chosen: no unit is taken for granted. */
  readonly unit: MeshUnit | null;
  readonly up: Axis;
  readonly forward: Axis;
  /** null until a person decides: then what lies near the wheel stays where it is drawn. */
  readonly where: Where | null;
  readonly replaces: string | null;
}

/** Where the wheel stands and how far its tyre reaches, mm. */
export interface WheelPlace {
  readonly centre: Vector3;
  readonly radius: number;
}

/** A name for the obstacle: the file's, made free of the model's other names. */
function freeName(file: string, model: Model): string {
  const bare = baseOf(file).replace(/\.[^.]*$/, '');
  const name = bare.replaceAll(/[-_/]+/g, ' ').trim() || 'mesh';
  const taken = new Set((model.obstacles ?? []).map((obstacle) => obstacle.name));
  let free = name;
  for (let count = 2; taken.has(free); count += 1) free = `${name} ${count}`;
  return free;
}

/** Obstacles whose file has this name: a newer version of it may take their place. */
export function namesakes({ name }: OfferedMesh, model: Model): readonly string[] {
  return meshObstacles(model)
    .filter(({ file }) => baseOf(file) === name)
    .map((mesh) => mesh.name);
}

export function isGlb({ name }: OfferedMesh): boolean {
  return endingOf(name) === 'glb';
}

export function draftOf(offered: OfferedMesh, model: Model): MeshDraft {
  return {
    name: freeName(offered.name, model),
    unit: isGlb(offered) ? 'm' : null,
    up: 'z',
    forward: 'x',
    where: null,
    replaces: namesakes(offered, model)[0] ?? null,
  };
}

/** Turning up another axis keeps forward across it. */
export function withUp(draft: MeshDraft, up: Axis): MeshDraft {
  const across = axesAcross(up);
  return { ...draft, up, forward: across.includes(draft.forward) ? draft.forward : across[0]! };
}

/** The box in a unit, turned, its origin at the vehicle's, mm. */
export function boxOfDraft(offered: OfferedMesh, draft: MeshDraft, unit: MeshUnit): MeshBox {
  return boxIn(offered.reading.box, unitInMillimetres(unit), draft.forward, draft.up);
}

/** Length, width and height of a box. */
export function sidesOf({ min, max }: MeshBox): readonly [number, number, number] {
  return [max[0] - min[0], max[1] - min[1], max[2] - min[2]];
}

/** "1 240 × 380 × 95 mm": sides with their thousands apart. */
export function sizeWords(sides: readonly number[], unit: LengthUnit): string {
  const numbers = sides.map((side) =>
    lengthNumber(side, unit, side < 10 ? 1 : 0).replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f'),
  );
  return `${numbers.join(' × ')} ${lengthUnitName(unit)}`;
}

/** A count with its thousands apart. */
export function countWords(count: number): string {
  return count.toLocaleString('en').replaceAll(',', '\u202f');
}

/** Beyond this from the wheel's centre a part is hardly meant to stand where it is drawn, mm. */
const NEAR = 1500;

function middleOf({ min, max }: MeshBox): Vector3 {
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
}

export function whereOf(draft: MeshDraft, box: MeshBox, { centre }: WheelPlace): Where {
  if (draft.where !== null) return draft.where;
  const apart = Math.hypot(...middleOf(box).map((value, i) => value - centre[i]!));
  return apart < NEAR ? 'own' : 'wheel';
}

/** Air between the tyre and a mesh that is put above it, mm. */
const AIR = 60;

function positionOf(where: Where, box: MeshBox, { centre, radius }: WheelPlace): Vector3 {
  if (where === 'own') return [0, 0, 0];
  const [x, y] = middleOf(box);
  const half = (value: number): number => Math.round(2 * value) / 2 + 0;
  return [half(centre[0] - x), half(centre[1] - y), half(centre[2] + radius + AIR - box.min[2])];
}

/** The finished choice; null while the unit is open. */
export function choiceOf(
  offered: OfferedMesh,
  draft: MeshDraft,
  wheel: WheelPlace,
): MeshChoice | null {
  const { unit, name, forward, up, replaces } = draft;
  if (unit === null) return null;
  const box = boxOfDraft(offered, draft, unit);
  return {
    name: name.trim(),
    unit,
    rotation: rotationOf(forward, up),
    position: positionOf(whereOf(draft, box, wheel), box, wheel),
    replaces,
  };
}
