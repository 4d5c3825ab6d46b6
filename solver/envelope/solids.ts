/** What stands fixed to the vehicle's body and can be in the tyre's way: obstacles, and where parts are mounted. */
import { wantedGap } from '../clearance/required.ts';
import type { Corner } from '../corner.ts';
import type { Model, Vector3 } from '../model/model.ts';

/** A box, or a line of points thickened by `radius`; a single point is a ball. */
export type FixedSolid = {
  readonly name: string;
  /** The least gap wanted to the tyre, mm. */
  readonly required: number;
} & (
  | { readonly shape: 'box'; readonly min: Vector3; readonly max: Vector3 }
  | { readonly shape: 'line'; readonly points: readonly Vector3[]; readonly radius: number }
);

function obstacles(model: Model): FixedSolid[] {
  return (model.obstacles ?? []).flatMap((obstacle): FixedSolid[] => {
    const { name } = obstacle;
    const required = wantedGap(model, 'tyre', name);
    if (obstacle.shape === 'mesh') return [];
    if (obstacle.shape === 'box')
      return [{ shape: 'box', name, required, min: obstacle.min, max: obstacle.max }];
    return [
      { shape: 'line', name, required, points: obstacle.points, radius: obstacle.diameter / 2 },
    ];
  });
}

/** The places where moving parts are held by the body, as thick as the parts themselves. */
function mounts(model: Model): FixedSolid[] {
  const ball = (
    name: string,
    part: string,
    point: Vector3,
    diameter: number | undefined,
  ): FixedSolid => ({
    shape: 'line',
    name,
    required: wantedGap(model, 'tyre', part),
    points: [point],
    radius: (diameter ?? 0) / 2,
  });
  const { lowerArm, upperArm, coilover, halfShaft, strap } = model;
  return [
    ball('lower arm’s front pivot', 'lowerArm', lowerArm.frontPivot, lowerArm.tubeDiameter),
    ball('lower arm’s rear pivot', 'lowerArm', lowerArm.rearPivot, lowerArm.tubeDiameter),
    ball('upper arm’s front pivot', 'upperArm', upperArm.frontPivot, upperArm.tubeDiameter),
    ball('upper arm’s rear pivot', 'upperArm', upperArm.rearPivot, upperArm.tubeDiameter),
    ...(coilover ? [ball('coilover’s top', 'coilover', coilover.top, coilover.diameter)] : []),
    ...(halfShaft
      ? [ball('half-shaft’s inner joint', 'halfShaft', halfShaft.inner, halfShaft.diameter)]
      : []),
    ...(strap ? [ball('strap’s top', 'strap', strap.top, undefined)] : []),
  ];
}

/** All of them; mesh obstacles, which have no closed form, are left out. */
export function fixedSolids({ model }: Corner): FixedSolid[] {
  return [...obstacles(model), ...mounts(model)];
}

function toSegment(p: Vector3, a: Vector3, b: Vector3): number {
  const along = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
  const from = [p[0] - a[0], p[1] - a[1], p[2] - a[2]] as const;
  const squared = along[0] ** 2 + along[1] ** 2 + along[2] ** 2;
  const foot = (from[0] * along[0] + from[1] * along[1] + from[2] * along[2]) / (squared || 1);
  const t = Math.max(0, Math.min(1, foot));
  return Math.hypot(from[0] - t * along[0], from[1] - t * along[1], from[2] - t * along[2]);
}

/** Signed distance from a point to a solid's surface, mm, negative inside. */
export function distanceToSolid(solid: FixedSolid, p: Vector3): number {
  if (solid.shape === 'line') {
    const { points, radius } = solid;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < points.length; i += 1) {
      least = Math.min(least, toSegment(p, points[i]!, points[i + 1] ?? points[i]!));
    }
    return least - radius;
  }
  const off = [0, 1, 2].map((i) => Math.max(solid.min[i]! - p[i]!, p[i]! - solid.max[i]!));
  const outside = Math.hypot(...off.map((value) => Math.max(0, value)));
  return outside > 0 ? outside : Math.max(...off);
}
