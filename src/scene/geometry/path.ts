/** Places on polylines. */
import { Vector3 } from 'three';

/** Point of a polyline at a share of its length. */
export function pointAlong(path: readonly Vector3[], share: number): Vector3 {
  const spans = path.slice(1).map((point, i) => point.distanceTo(path[i]!));
  let left = share * spans.reduce((sum, span) => sum + span, 0);
  for (let i = 0; i < spans.length; i += 1) {
    if (left <= spans[i]! || i === spans.length - 1) {
      return path[i]!.clone().lerp(path[i + 1]!, spans[i]! > 0 ? left / spans[i]! : 0);
    }
    left -= spans[i]!;
  }
  return path[0]!.clone();
}

/** The point of a polyline nearest to `point`: where a bracket is welded on. */
export function nearestAlong(path: readonly Vector3[], point: Vector3): Vector3 {
  const best = path[0]!.clone();
  const foot = new Vector3();
  for (let i = 1; i < path.length; i += 1) {
    const from = path[i - 1]!;
    const along = path[i]!.clone().sub(from);
    const share = foot.copy(point).sub(from).dot(along) / (along.lengthSq() || 1);
    foot.copy(from).addScaledVector(along, Math.min(1, Math.max(0, share)));
    if (foot.distanceToSquared(point) < best.distanceToSquared(point)) best.copy(foot);
  }
  return best;
}
