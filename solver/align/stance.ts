/**
 * The corner at ride and rack 0, seen from its angles. Camber and toe give the hub axis, caster and the constant angle between
 * hub and steering axis give the steering axis: so the knuckle's attitude follows from camber, caster and toe alone, and its
 * height from the wheel centre's. What is left is where the lower ball joint stands in plan, p = [x, y], and every link (an
 * arm's side or the tie rod) leaves its joint a circle in that plan. A cam or shim moves its circle. Angles rad, lengths mm.
 */
import type { Linkage } from '../linkage/linkage.ts';
import { Fixed } from '../linkage/slots.ts';
import { add, cross, distance, dot, scale, subtract, unit, type Vector3 } from '../math/vec3.ts';
import { rideTravel, tieRodChange } from '../model/defaults.ts';
import { type Fitting, fittingsOf } from './hardware.ts';

export type Plan = readonly [number, number];

/** A side of an arm, or the tie rod: a joint of the knuckle at a constant distance from a pivot that its hardware may move. */
export interface Link {
  /** The joint from the lower ball joint, along the steering axis and along the knuckle's second axis. */
  readonly joint: Plan;
  readonly pivot: Vector3;
  readonly length: number;
  /** Unit direction and size of the pivot's shift per unit share; size 0 without hardware. */
  readonly direction: Vector3;
  readonly reach: number;
  /** Least and greatest share: −1 to 1 of a cam, sin(angle); 0 to 1 of shims. */
  readonly range: readonly [number, number];
  readonly fitting: Fitting | null;
}

/** Everything about a corner that does not change while it is aligned. */
export interface Stance {
  readonly linkage: Linkage;
  /** Lower front, lower rear, upper front, upper rear. */
  readonly arms: readonly Link[];
  /** The tie rod with the turns that the model states. */
  readonly rod: Link;
  /** False when the rod's length is fixed: no pitch is stated. */
  readonly setsToe: boolean;
  /** Height of the wheel centre when the vehicle stands. */
  readonly height: number;
}

/** The knuckle held to its angles: heights are known, the plan is not. */
export interface Held {
  /** Height of the lower ball joint. */
  readonly z: number;
  /** From the lower ball joint to the upper one and to the tie rod's outer joint. */
  readonly upper: Vector3;
  readonly outer: Vector3;
}

const SIDEWAYS: Vector3 = [0, 1, 0];

function armLinks(linkage: Linkage): Link[] {
  const { model, fixed } = linkage;
  const fittings = fittingsOf(model);
  const span = 1 / fixed[Fixed.spanInverse]!;
  return (['lowerArm', 'upperArm'] as const).flatMap((name) =>
    (['front', 'rear'] as const).map((end): Link => {
      const arm = model[name];
      const found = fittings.find((each) => each.arm === name && each.end === end);
      // Hardware that moves nothing sets nothing: it is left at 0.
      const fitting = found !== undefined && found.reach > 0 ? found : null;
      const pivot = arm[`${end}Pivot`];
      return {
        joint: name === 'lowerArm' ? [0, 0] : [span, 0],
        pivot,
        length: distance(arm.ballJoint, pivot),
        direction: fitting === null ? SIDEWAYS : unit(fitting.direction),
        reach: fitting?.reach ?? 0,
        range: fitting?.kind === 'shim' ? [0, 1] : [-1, 1],
        fitting,
      };
    }),
  );
}

export function createStance(linkage: Linkage): Stance {
  const { model, fixed } = linkage;
  const { tieRod } = model;
  return {
    linkage,
    arms: armLinks(linkage),
    rod: {
      joint: [fixed[Fixed.outerAlong]!, fixed[Fixed.outerAside]!],
      pivot: tieRod.inner,
      length: distance(tieRod.inner, tieRod.outer) + tieRodChange(tieRod),
      direction: SIDEWAYS,
      reach: 0,
      range: [0, 0],
      fitting: null,
    },
    setsToe: tieRod.pitch !== undefined,
    height: fixed[Fixed.designHeight]! + rideTravel(model.travel),
  };
}

/**
 * The steering axis k: k·a = `along` with a the hub axis, and atan2(−k_x, k_z) = caster, so k = [−sin κ·cos β, sin β,
 * cos κ·cos β]; null where no axis has that caster. Of the two the one that leans less is taken.
 */
function steeringAxis(hub: Vector3, caster: number, along: number): Vector3 | null {
  const upright = -Math.sin(caster) * hub[0] + Math.cos(caster) * hub[2];
  const size = Math.hypot(upright, hub[1]);
  if (!(Math.abs(along) < size)) return null;
  const middle = Math.atan2(hub[1], upright);
  const swing = Math.acos(along / size);
  const beta = [middle - swing, middle + swing]
    .map((angle) => Math.atan2(Math.sin(angle), Math.cos(angle)))
    .reduce((best, angle) => (Math.cos(angle) > Math.cos(best) ? angle : best));
  if (!(Math.cos(beta) > 0)) return null;
  return [-Math.sin(caster) * Math.cos(beta), Math.sin(beta), Math.cos(caster) * Math.cos(beta)];
}

/** Holds the knuckle to camber, caster and toe, rad; null where no attitude has them. */
export function hold(
  { linkage: { fixed }, arms, rod, height }: Stance,
  camber: number,
  caster: number,
  toe: number,
): Held | null {
  const hub: Vector3 = [
    Math.cos(camber) * Math.sin(toe),
    Math.cos(camber) * Math.cos(toe),
    -Math.sin(camber),
  ];
  const [along, second, third] = [0, 1, 2].map((i) => fixed[Fixed.hubInFrame + i]!) as [
    number,
    number,
    number,
  ];
  const k = steeringAxis(hub, caster, along);
  const aside = Math.hypot(second, third);
  if (k === null || !(aside > 0)) return null;
  const e = unit(subtract(hub, scale(k, dot(hub, k))));
  const f = cross(k, e);
  const m = add(scale(e, second / aside), scale(f, -third / aside));
  const n = cross(k, m);
  const [w0, w1, w2] = [0, 1, 2].map((i) => fixed[Fixed.centreInFrame + i]!) as [
    number,
    number,
    number,
  ];
  const at = ([first, other]: Plan): Vector3 => add(scale(k, first), scale(m, other));
  return {
    z: height - (w0 * k[2] + w1 * m[2] + w2 * n[2]),
    upper: at(arms[2]!.joint),
    outer: at(rod.joint),
  };
}

/** The joint of an arm's side by its place in `Stance.arms`, from the lower ball joint. */
export function jointOf(held: Held, place: number): Vector3 {
  return place < 2 ? [0, 0, 0] : held.upper;
}

/** From the pivot, unshifted, to the joint, with the lower ball joint at p. */
export function spanOf(link: Link, joint: Vector3, z: number, p: Plan): Vector3 {
  return [
    p[0] + joint[0] - link.pivot[0],
    p[1] + joint[1] - link.pivot[1],
    z + joint[2] - link.pivot[2],
  ];
}

/** Length the tie rod must have, mm. */
export function rodLength({ rod }: Stance, held: Held, p: Plan): number {
  return Math.hypot(...spanOf(rod, held.outer, held.z, p));
}
