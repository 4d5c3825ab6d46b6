/** Tubes and rods as thick polylines in the axes of the body that carries them. */
import type { Corner } from '../corner.ts';
import { CIRCLE_AXIS, RADIUS } from '../linkage/circle.ts';
import { pointInFrame } from '../linkage/frames.ts';
import { Fixed } from '../linkage/slots.ts';
import { dot, subtract } from '../math/vec3.ts';
import { tubeDiameter } from '../model/defaults.ts';
import type { Tube, Vector3 } from '../model/model.ts';
import { rodPieces } from './rodPieces.ts';

/** One polyline without branches; piece i runs from break point i to break point i + 1. */
export interface Strand {
  /** Break points, three numbers each: in the body's frame from its origin, or in vehicle axes; mm. */
  readonly points: Float64Array;
  /** Half the diameter of each piece, mm. */
  readonly radii: Float64Array;
}

function strandOf(points: readonly Vector3[], diameter: number): Strand {
  return {
    points: Float64Array.from(points.flat()),
    radii: new Float64Array(points.length - 1).fill(diameter / 2),
  };
}

/** A pivot in its arm's frame: both pivots lie on the axis through the circle's centre. */
function pivotInArm(fixed: Float64Array, circle: number, pivot: Vector3): Vector3 {
  const at = (i: number): Vector3 => [fixed[i]!, fixed[i + 1]!, fixed[i + 2]!];
  const along = dot(subtract(pivot, at(circle)), at(circle + CIRCLE_AXIS));
  return [along, -fixed[circle + RADIUS]!, 0];
}

/** Both legs of an arm, one after the other: front pivot, ball joint, rear pivot, with what bends lie between. */
export function armStrand({ linkage, model }: Corner, name: 'lowerArm' | 'upperArm'): Strand {
  const arm = model[name];
  const { pivots, fixed } = linkage;
  const isLower = name === 'lowerArm';
  const circle = isLower ? Fixed.lowerCircle : Fixed.upperCircle;
  const bends = (points: readonly Vector3[] | undefined): Vector3[] =>
    (points ?? []).map((point) => pointInFrame(linkage[name], point));
  const line: Vector3[] = [
    pivotInArm(fixed, circle, isLower ? pivots.lowerFront : pivots.upperFront),
    ...bends(arm.legs?.front),
    [0, 0, 0],
    ...bends(arm.legs?.rear).reverse(),
    pivotInArm(fixed, circle, isLower ? pivots.lowerRear : pivots.upperRear),
  ];
  return strandOf(line, tubeDiameter(model, name));
}

/** The tie rod from its outer joint inwards, with its bends and the steps of its profile. */
export function rodStrand(corner: Corner): Strand {
  const { points, radii } = rodPieces(corner);
  return { points, radii };
}

/** The knuckle's tubes in its frame. */
export function knuckleStrands({ linkage, model }: Corner): Strand[] {
  return (model.knuckle?.tubes ?? []).map(({ points, diameter }) =>
    strandOf(
      points.map((point) => pointInFrame(linkage.knuckle, point)),
      diameter,
    ),
  );
}

/** A tube that stands still. */
export function tubeStrand({ points, diameter }: Tube): Strand {
  return strandOf(points, diameter);
}
