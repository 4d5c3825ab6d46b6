/** The tie rod as straight pieces of constant diameter: its centreline cut at the bends and where the profile steps. */
import type { Corner } from '../corner.ts';
import { Fixed } from '../linkage/slots.ts';
import { addScaled, distance, type Vector3 } from '../math/vec3.ts';
import { tieRodDiameter } from '../model/defaults.ts';
import type { TieRod } from '../model/model.ts';

export interface RodPieces {
  /** Break points from the outer joint inwards, three components each in the rod frame, from TO. */
  readonly points: Float64Array;
  /** Distance of each break point from the outer joint along the rod, mm. */
  readonly lengths: Float64Array;
  /** Half diameter of each piece, mm. */
  readonly radii: Float64Array;
}

/**
 * Diameter at a distance from the outer joint: `profile` states [distance, diameter from there on]; nearer than its
 * first distance the plain diameter holds.
 */
export function rodDiameterAt(tieRod: TieRod, fromOuter: number): number {
  let diameter = tieRodDiameter(tieRod);
  for (const [from, next] of tieRod.profile ?? []) {
    if (from <= fromOuter) diameter = next;
  }
  return diameter;
}

/** Cuts the rod of a corner into pieces. */
export function rodPieces(corner: Corner): RodPieces {
  const { tieRod } = corner.model;
  const { rodBends } = corner;
  const line: Vector3[] = [[0, 0, 0]];
  for (let at = rodBends.length - 3; at >= 0; at -= 3) {
    line.push([rodBends[at]!, rodBends[at + 1]!, rodBends[at + 2]!]);
  }
  line.push([-Math.sqrt(corner.linkage.fixed[Fixed.rodSquared]!), 0, 0]);
  const points: Vector3[] = [line[0]!];
  const lengths = [0];
  const radii: number[] = [];
  for (let i = 1; i < line.length; i += 1) {
    const from = line[i - 1]!;
    const to = line[i]!;
    const span = distance(from, to);
    const start = lengths.at(-1)!;
    const cuts = (tieRod.profile ?? [])
      .map(([at]) => at)
      .filter((at) => at > start && at < start + span);
    for (const cut of [...cuts, start + span]) {
      radii.push(rodDiameterAt(tieRod, lengths.at(-1)!) / 2);
      points.push(cut === start + span ? to : addScaled(from, direction(from, to), cut - start));
      lengths.push(cut);
    }
  }
  return {
    points: Float64Array.from(points.flat()),
    lengths: Float64Array.from(lengths),
    radii: Float64Array.from(radii),
  };
}

function direction(from: Vector3, to: Vector3): Vector3 {
  const span = distance(from, to);
  return [(to[0] - from[0]) / span, (to[1] - from[1]) / span, (to[2] - from[2]) / span];
}
