/** Two thick polylines: every piece against every piece. */
import { type Bounder, type Pieces, stretches, swingsOfBoth } from './element.ts';
import { aimSegments, createSeparation, POINT, segmentBound } from './separation.ts';

const _separation = createSeparation();

/** Copies the two ends of a piece out of a track. */
function takePiece(track: Float64Array, start: number, to: Float64Array): void {
  const from = start * POINT;
  for (let i = 0; i < 2 * POINT; i += 1) to[i] = track[from + i]!;
}

/** Bounds the gap of two chains whose break points are seen from the same body. */
export function chainBounder(first: Pieces, second: Pieces): Bounder {
  return {
    elements: stretches(first.radii.length, second.radii.length),
    bound: (cell, element, enough) => {
      const one = first.track(cell);
      const other = second.track(cell);
      if (one === null || other === null) return Number.NEGATIVE_INFINITY;
      if (one.length === 0 || other.length === 0) return Number.POSITIVE_INFINITY;
      const thick = first.radii[element.first]! + second.radii[element.second]!;
      takePiece(one, first.starts[element.first]!, _separation.first);
      takePiece(other, second.starts[element.second]!, _separation.second);
      aimSegments(_separation);
      return segmentBound(_separation, enough + thick) - thick;
    },
    isCoarse: () => false,
    swings: (cell) => swingsOfBoth(first.track(cell), second.track(cell)),
  };
}
