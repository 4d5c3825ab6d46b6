/** What stands fixed to the vehicle's body and can be in the tyre's way: obstacles, and where parts are mounted. */
import type { Corner } from '../corner.ts';
import type { Model, Vector3 } from '../model/model.ts';

/** A box, or a line of points thickened by `radius`; a single point is a ball. */
export type FixedSolid =
  | { readonly shape: 'box'; readonly name: string; readonly min: Vector3; readonly max: Vector3 }
  | {
      readonly shape: 'line';
      readonly name: string;
      readonly points: readonly Vector3[];
      readonly radius: number;
    };

function obstacles({ obstacles: stated }: Model): FixedSolid[] {
  return (stated ?? []).flatMap((obstacle): FixedSolid[] => {
    const { name } = obstacle;
    if (obstacle.shape === 'mesh') return [];
    if (obstacle.shape === 'box')
      return [{ shape: 'box', name, min: obstacle.min, max: obstacle.max }];
    return [{ shape: 'line', name, points: obstacle.points, radius: obstacle.diameter / 2 }];
  });
}

function ball(name: string, point: Vector3, diameter: number | undefined): FixedSolid {
  return { shape: 'line', name, points: [point], radius: (diameter ?? 0) / 2 };
}

/** The places where moving parts are held by the body, as thick as the parts themselves. */
function mounts({ lowerArm, upperArm, coilover, halfShaft, strap }: Model): FixedSolid[] {
  return [
    ball('lower arm’s front pivot', lowerArm.frontPivot, lowerArm.tubeDiameter),
    ball('lower arm’s rear pivot', lowerArm.rearPivot, lowerArm.tubeDiameter),
    ball('upper arm’s front pivot', upperArm.frontPivot, upperArm.tubeDiameter),
    ball('upper arm’s rear pivot', upperArm.rearPivot, upperArm.tubeDiameter),
    ...(coilover ? [ball('coilover’s top', coilover.top, coilover.diameter)] : []),
    ...(halfShaft ? [ball('half-shaft’s inner joint', halfShaft.inner, halfShaft.diameter)] : []),
    ...(strap ? [ball('strap’s top', strap.top, undefined)] : []),
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
