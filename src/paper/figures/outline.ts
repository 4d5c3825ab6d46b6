/** The posed corner as lines in vehicle axes, from the solver's own points: what the small views draw. */
import { Slot, type Vector3 } from '../../../solver/index.ts';
import { lipDiameter } from '../../../solver/model/rim.ts';
import { tyreSection } from '../../../solver/model/tyre.ts';
import type { PaperSource, Reading } from '../source.ts';

export interface CornerLine {
  readonly kind: 'arm' | 'knuckle' | 'rod' | 'thin';
  readonly points: readonly Vector3[];
}

export interface NamedPoint {
  readonly name: string;
  readonly at: Vector3;
}

export interface CornerOutline {
  readonly lines: readonly CornerLine[];
  /** Circles about the hub axis: the tyre's silhouette is the hull of the first ones; the rim's lips. */
  readonly tyre: readonly (readonly Vector3[])[];
  readonly rim: readonly (readonly Vector3[])[];
  readonly points: readonly NamedPoint[];
  /** Height of the ground. */
  readonly ground: number;
}

export function pointIn(data: Float64Array, at: number): Vector3 {
  return [data[at] ?? 0, data[at + 1] ?? 0, data[at + 2] ?? 0];
}

function plus(a: Vector3, b: Vector3, by: number): Vector3 {
  return [a[0] + by * b[0], a[1] + by * b[1], a[2] + by * b[2]];
}

function cross(a: Vector3, b: Vector3): Vector3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(a: Vector3): Vector3 {
  const size = Math.hypot(...a);
  return [a[0] / size, a[1] / size, a[2] / size];
}

/** Corners of the polygons that stand for circles. */
const SIDES = 96;

function circle(centre: Vector3, axis: Vector3, radius: number): Vector3[] {
  const e1 = unit(cross(axis, [1, 0, 0]));
  const e2 = cross(axis, e1);
  return Array.from({ length: SIDES + 1 }, (_, i) => {
    const turn = (2 * Math.PI * i) / SIDES;
    return plus(plus(centre, e1, radius * Math.cos(turn)), e2, radius * Math.sin(turn));
  });
}

/** Frame of an arm by the geometry contract: e1 along its pivots, e2 towards its ball joint, e3; origin the ball joint. */
function armFrame(front: Vector3, rear: Vector3, ball: Vector3): [Vector3, Vector3, Vector3] {
  const e1 = unit(plus(front, rear, -1));
  const out = plus(ball, rear, -1);
  const along = out[0] * e1[0] + out[1] * e1[1] + out[2] * e1[2];
  const e2 = unit(plus(out, e1, -along));
  return [e1, e2, cross(e1, e2)];
}

function armLines(
  { model, corner }: PaperSource,
  { data }: Reading,
  name: 'lower' | 'upper',
): CornerLine[] {
  const arm = model[`${name}Arm`];
  const ball = pointIn(data, Slot[name]);
  const { pivots } = corner.linkage;
  const [front, rear] = [pivots[`${name}Front`], pivots[`${name}Rear`]];
  const design = armFrame(arm.frontPivot, arm.rearPivot, arm.ballJoint);
  const now = armFrame(front, rear, ball);
  const carried = (point: Vector3): Vector3 => {
    const from = plus(point, arm.ballJoint, -1);
    return design.reduce<Vector3>(
      (at, e, i) => plus(at, now[i]!, from[0] * e[0] + from[1] * e[1] + from[2] * e[2]),
      ball,
    );
  };
  const legs = arm.legs ?? { front: [], rear: [] };
  return [
    { kind: 'arm', points: [front, ...legs.front.map(carried), ball] },
    { kind: 'arm', points: [rear, ...legs.rear.map(carried), ball] },
    { kind: 'thin', points: [front, rear] },
  ];
}

function partLines({ model }: PaperSource, { data }: Reading): CornerLine[] {
  const at = (slot: number): Vector3 => pointIn(data, slot);
  const { coilover, halfShaft, antiRollBar } = model;
  return [
    ...(coilover === undefined
      ? []
      : [{ kind: 'thin', points: [coilover.top, at(Slot.damperBottom)] } as const]),
    ...(halfShaft === undefined
      ? []
      : [{ kind: 'thin', points: [halfShaft.inner, at(Slot.shaftOuter)] } as const]),
    ...(antiRollBar === undefined || !((data[Slot.leverRoom] ?? 0) > 0)
      ? []
      : [{ kind: 'thin', points: [at(Slot.leverEnd), at(Slot.link)] } as const]),
  ];
}

/** The tie rod's line, its bends included: frames of the rod by the geometry contract. */
function rodLine({ model }: PaperSource, { data }: Reading): CornerLine {
  const [inner, outer] = [pointIn(data, Slot.inner), pointIn(data, Slot.outer)];
  const bends = (model.tieRod.bends ?? []).map((bend) => {
    const { tieRod } = model;
    const normal = tieRod.studAxis ?? ([0, 0, 1] as const);
    const e1 = unit(plus(tieRod.outer, tieRod.inner, -1));
    const along = normal[0] * e1[0] + normal[1] * e1[1] + normal[2] * e1[2];
    const e2 = unit(plus(normal, e1, -along));
    const design = [e1, e2, cross(e1, e2)];
    const from = plus(bend, tieRod.outer, -1);
    return design.reduce<Vector3>(
      (at, e, i) =>
        plus(
          at,
          pointIn(data, Slot.rodFrame + 3 * i),
          from[0] * e[0] + from[1] * e[1] + from[2] * e[2],
        ),
      outer,
    );
  });
  return { kind: 'rod', points: [inner, ...bends, outer] };
}

/** Everything the views draw of a pose. */
export function cornerOutline(source: PaperSource, reading: Reading): CornerOutline {
  const { model, corner } = source;
  const at = (slot: number): Vector3 => pointIn(reading.data, slot);
  const [lower, upper, outer, centre, axis] = [
    at(Slot.lower),
    at(Slot.upper),
    at(Slot.outer),
    at(Slot.centre),
    at(Slot.hubAxis),
  ];
  const half = (model.wheel.width * 25.4) / 2 + 12.7;
  const lip = lipDiameter(model.wheel) / 2;
  const { pivots } = corner.linkage;
  return {
    lines: [
      ...armLines(source, reading, 'lower'),
      ...armLines(source, reading, 'upper'),
      rodLine(source, reading),
      { kind: 'knuckle', points: [lower, upper, outer, lower] },
      { kind: 'knuckle', points: [plus(lower, plus(upper, lower, -1), 0.5), centre] },
      ...partLines(source, reading),
    ],
    tyre: tyreSection(model.tyre, model.wheel).map(([s, radius]) =>
      circle(plus(centre, axis, s), axis, radius),
    ),
    rim: [-half, half].map((s) => circle(plus(centre, axis, s), axis, lip)),
    points: [
      { name: 'lower ball joint', at: lower },
      { name: 'upper ball joint', at: upper },
      { name: 'tie rod, inner end', at: at(Slot.inner) },
      { name: 'wheel centre', at: centre },
      { name: 'lower arm, front pivot', at: pivots.lowerFront },
      { name: 'upper arm, front pivot', at: pivots.upperFront },
    ],
    ground: reading.data[Slot.contact + 2] ?? 0,
  };
}
