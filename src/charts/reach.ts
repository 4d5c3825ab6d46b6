/** The edge of what can be reached, from the last reachable places a map knows. */
import type { LockMap } from '../../solver/map.ts';

/** Nodes along the map's own edge, once round: droop edge, then up, bump edge, then down. */
function edgeNodes({ travels, racks }: LockMap): number[] {
  const columns = racks.length;
  const rows = travels.length;
  const nodes: number[] = [];
  for (let column = 0; column < columns; column += 1) nodes.push(column);
  for (let row = 1; row < rows; row += 1) nodes.push(row * columns + columns - 1);
  for (let column = columns - 2; column >= 0; column -= 1)
    nodes.push((rows - 1) * columns + column);
  for (let row = rows - 2; row > 0; row -= 1) nodes.push(row * columns);
  return nodes;
}

/**
 * Rack, travel, rack, travel, … round the reachable part, or null when all of it is in reach. What can be reached is
 * seen whole from (0, 0), so the last places on the paths to the map's edge go round it, each exact to 0.01 mm.
 */
export function reachEdge(map: LockMap): Float64Array | null {
  if (map.reached.every((reached) => reached === 1)) return null;
  const nodes = edgeNodes(map);
  const points = new Float64Array(2 * nodes.length);
  nodes.forEach((node, i) => {
    points[2 * i] = map.lastRack[node]!;
    points[2 * i + 1] = map.lastTravel[node]!;
  });
  return points;
}
