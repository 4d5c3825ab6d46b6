/** Two thick polylines: every piece against every piece. */
import { type Bounder, stretches, swingsOfBoth, type Track } from './element.ts';
import { aimSegments, createSeparation, POINT, segmentBound } from './separation.ts';

const _separation = createSeparation();

/** Copies the two ends of a piece out of a track. */
export function takePiece(track: Float64Array, piece: number, to: Float64Array): void {
  const from = piece * POINT;
  for (let i = 0; i < 2 * POINT; i += 1) to[i] = track[from + i]!;
}

/** Bounds the gap of two chains whose break points are seen from the same body; radii one a piece, mm. */
export function chainBounder(
  first: Track,
  firstRadii: Float64Array,
  second: Track,
  secondRadii: Float64Array,
): Bounder {
  return {
    elements: stretches(firstRadii.length, secondRadii.length),
    bound: (cell, element, enough) => {
      const one = first(cell);
      const other = second(cell);
      if (one === null || other === null) return Number.NEGATIVE_INFINITY;
      const thick = firstRadii[element.first]! + secondRadii[element.second]!;
      takePiece(one, element.first, _separation.first);
      takePiece(other, element.second, _separation.second);
      aimSegments(_separation);
      return segmentBound(_separation, enough + thick) - thick;
    },
    isCoarse: () => false,
    swings: (cell) => swingsOfBoth(first(cell), second(cell)),
  };
}
