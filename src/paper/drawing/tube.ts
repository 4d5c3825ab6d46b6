/** The outline of a tube seen from somewhere: both edges of its thickened centreline, cut square at its ends. */
import { type Mark, type Spot, stroke } from './marks.ts';

/** Pieces seen shorter than this part of the diameter are taken as seen end on. */
const END_ON = 0.02;

function without(spots: readonly Spot[], least: number): Spot[] {
  return spots.filter((spot, at) => {
    const before = spots[at - 1];
    return before === undefined || Math.hypot(spot[0] - before[0], spot[1] - before[1]) > least;
  });
}

/** The edge `half` mm to the left of a line, mitred at its corners. */
function edge(spots: readonly Spot[], half: number): Spot[] {
  const normals = spots.slice(1).map((spot, at): Spot => {
    const before = spots[at]!;
    const [dx, dy] = [spot[0] - before[0], spot[1] - before[1]];
    const size = Math.hypot(dx, dy);
    return [-dy / size, dx / size];
  });
  return spots.map((spot, at) => {
    const a = normals[at - 1] ?? normals[at]!;
    const b = normals[at] ?? a;
    const stretch = Math.max(0.25, 1 + a[0] * b[0] + a[1] * b[1]);
    return [spot[0] + (half * (a[0] + b[0])) / stretch, spot[1] + (half * (a[1] + b[1])) / stretch];
  });
}

export function tubeOutline(line: readonly Spot[], diameter: number): Mark[] {
  const spots = without(line, END_ON * diameter);
  if (spots.length < 2) {
    return [{ kind: 'circle', layer: 'outline', at: line[0]!, radius: diameter / 2 }];
  }
  const left = edge(spots, diameter / 2);
  const right = edge(spots, -diameter / 2);
  return [stroke('outline', ...left, ...right.reverse(), left[0]!), stroke('centre', ...spots)];
}
