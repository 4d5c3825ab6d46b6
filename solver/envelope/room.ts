/** Where on the swept surface something fixed is met, or nearly met. */
import type { Corner } from '../corner.ts';
import { distanceToSolid, fixedSolids } from './solids.ts';

/**
 * Two numbers a vertex: the signed distance to the nearest fixed solid, mm, negative inside it, and the gap wanted to
 * that solid. Infinite where there is none.
 */
export function roomAt(corner: Corner, positions: Float32Array): Float32Array {
  const solids = fixedSolids(corner);
  const room = new Float32Array((positions.length / 3) * 2);
  for (let i = 0; i < room.length; i += 2) {
    const at = 1.5 * i;
    const place = [positions[at]!, positions[at + 1]!, positions[at + 2]!] as const;
    let nearest = Number.POSITIVE_INFINITY;
    let wanted = 0;
    for (const solid of solids) {
      const distance = distanceToSolid(solid, place);
      if (distance >= nearest) continue;
      nearest = distance;
      wanted = solid.required;
    }
    room[i] = nearest;
    room[i + 1] = wanted;
  }
  return room;
}
