/** Where the corner comes to stand with its pivots shifted: camber, caster and toe as functions of cams and shims. */
import { designHubAxis } from '../linkage/frames.ts';
import { Fixed } from '../linkage/slots.ts';
import { addScaled, dot, subtract, type Vector3 } from '../math/vec3.ts';
import { hubAngle } from '../model/defaults.ts';
import { radians } from '../units.ts';
import { solveLinear } from './linear.ts';
import { type Held, hold, jointOf, type Link, type Plan, type Stance, spanOf } from './stance.ts';

/** A place the corner stands in: angles rad, lower ball joint in plan mm. */
export interface Placed {
  readonly camber: number;
  readonly caster: number;
  readonly toe: number;
  readonly p: Plan;
}

/** Residual of every length that counts as solved, mm. */
const SOLVED = 1e-11;
const ROUNDING = 1e-9;
const MOST_STEPS = 12;
/** Half the step of the angles' differences, rad: their error is of the order of its square. */
const NUDGE = 1e-5;
/** Longest stretch of a way from one place to another: rad of toe, mm of height, share of a shift. */
const TOE_STRIDE = 0.06;
const HEIGHT_STRIDE = 15;

/** The place of the design pose. */
export function designPlace({ linkage }: Stance): Placed {
  const { model } = linkage;
  const [kx, , kz] = subtract(model.upperArm.ballJoint, model.lowerArm.ballJoint);
  const [ax, ay, az] = designHubAxis(model);
  const [x, y] = model.lowerArm.ballJoint;
  return {
    camber: -Math.asin(az),
    caster: Math.atan2(-kx, kz),
    toe: Math.atan2(ax, ay),
    p: [x, y],
  };
}

/** Shares of the links' reach, in the order of `Stance.arms`. */
export type Shares = readonly number[];

/** What the corner's links are asked to be: shares of the pivots' reach, toe held or (null) the rod's length kept. */
interface Asked {
  readonly stance: Stance;
  readonly shares: Shares;
  readonly toe: number | null;
}

/** From the pivot, as shifted, to the joint. */
function linkSpan(link: Link, joint: Vector3, z: number, p: Plan, share: number): Vector3 {
  return addScaled(spanOf(link, joint, z, p), link.direction, -share * link.reach);
}

function spans({ stance, shares, toe }: Asked, held: Held, p: Plan): Vector3[] {
  const arms = stance.arms.map((link, i) =>
    linkSpan(link, jointOf(held, i), held.z, p, shares[i]!),
  );
  return toe === null ? [...arms, spanOf(stance.rod, held.outer, held.z, p)] : arms;
}

function lengths({ stance, toe }: Asked): number[] {
  const arms = stance.arms.map(({ length }) => length);
  return toe === null ? [...arms, stance.rod.length] : arms;
}

/** Unknowns in the order camber, caster, toe (while it is free), x, y. */
function toPlaced(unknowns: readonly number[], toe: number | null): Placed {
  const [camber, caster] = unknowns as [number, number];
  const [x, y] = unknowns.slice(-2) as [number, number];
  return { camber, caster, toe: toe ?? unknowns[2]!, p: [x, y] };
}

function residuals(asked: Asked, unknowns: readonly number[]): number[] | null {
  const { camber, caster, toe, p } = toPlaced(unknowns, asked.toe);
  const held = hold(asked.stance, camber, caster, toe);
  if (held === null) return null;
  const wanted = lengths(asked);
  return spans(asked, held, p).map((span, i) => Math.hypot(...span) - wanted[i]!);
}

/** Derivative of the residuals, by rows. */
function derivative(asked: Asked, unknowns: readonly number[]): number[][] | null {
  const columns: number[][] = [];
  for (let k = 0; k < unknowns.length - 2; k += 1) {
    const [up, down] = [NUDGE, -NUDGE].map((by) =>
      residuals(
        asked,
        unknowns.map((value, i) => (i === k ? value + by : value)),
      ),
    );
    if (!up || !down) return null;
    columns.push(up.map((value, i) => (value - down[i]!) / (2 * NUDGE)));
  }
  const { camber, caster, toe, p } = toPlaced(unknowns, asked.toe);
  const held = hold(asked.stance, camber, caster, toe);
  if (held === null) return null;
  return spans(asked, held, p).map(([x, y, z], i) => {
    const size = Math.hypot(x, y, z);
    return [...columns.map((column) => column[i]!), x / size, y / size];
  });
}

function newton(asked: Asked, from: Placed): Placed | null {
  const { camber, caster, toe, p } = from;
  let unknowns = asked.toe === null ? [camber, caster, toe, ...p] : [camber, caster, ...p];
  let least = Number.POSITIVE_INFINITY;
  for (let count = 0; count < MOST_STEPS; count += 1) {
    const now = residuals(asked, unknowns);
    if (now === null) return null;
    const worst = Math.max(...now.map(Math.abs));
    if (worst <= SOLVED || (worst <= ROUNDING && worst >= least))
      return toPlaced(unknowns, asked.toe);
    least = Math.min(least, worst);
    const matrix = derivative(asked, unknowns);
    const step =
      matrix &&
      solveLinear(
        matrix,
        now.map((value) => [value]),
      );
    if (!step) return null;
    unknowns = unknowns.map((value, i) => value - step[i]![0]!);
  }
  return null;
}

/**
 * The place with these shares, on the way from a place nearby; toe (rad) is held by the rod's length, or (null) the
 * rod keeps its length. null where the links cannot be kept.
 */
export function placeNear(
  stance: Stance,
  shares: Shares,
  toe: number | null,
  from: Placed,
): Placed | null {
  return newton({ stance, shares, toe }, from);
}

/**
 * Derivatives of camber, caster and (while no toe is held) toe with respect to the shares of the links named, rad per
 * share, one row an angle; implicit differentiation of the lengths. null at a singular place.
 */
export function slopesAt(
  stance: Stance,
  shares: Shares,
  toe: number | null,
  { camber, caster, toe: toeNow, p }: Placed,
  links: readonly number[],
): number[][] | null {
  const asked: Asked = { stance, shares, toe };
  const unknowns = toe === null ? [camber, caster, toeNow, ...p] : [camber, caster, ...p];
  const matrix = derivative(asked, unknowns);
  const held = hold(stance, camber, caster, toeNow);
  if (matrix === null || held === null) return null;
  const spansNow = spans(asked, held, p);
  const pushes = matrix.map((_, row) =>
    links.map((link) => {
      if (link !== row) return 0;
      const { direction, reach } = stance.arms[link]!;
      const span = spansNow[link]!;
      return (reach * dot(span, direction)) / Math.hypot(...span);
    }),
  );
  return solveLinear(matrix, pushes)?.slice(0, toe === null ? 3 : 2) ?? null;
}

/**
 * The place without any shift at ride, toe held to `toe` or (null) the rod keeping its length: the way there from the
 * design pose is walked in strides. null where it cannot be walked to its end.
 */
export function placeCentred(stance: Stance, toe: number | null): Placed | null {
  const { linkage, height } = stance;
  const rise = height - linkage.fixed[Fixed.designHeight]!;
  const start = designPlace(stance);
  const swing = toe === null ? 0 : toe - radians(hubAngle(linkage.model.hub.toe));
  const strides = Math.max(
    1,
    Math.ceil(Math.abs(rise) / HEIGHT_STRIDE),
    Math.ceil(Math.abs(swing) / TOE_STRIDE),
  );
  const none = stance.arms.map(() => 0);
  let place: Placed | null = start;
  for (let stride = 1; stride <= strides && place !== null; stride += 1) {
    const part = stride / strides;
    const there: Stance = { ...stance, height: height - (1 - part) * rise };
    place = placeNear(there, none, toe === null ? null : start.toe + part * swing, place);
  }
  return place;
}
