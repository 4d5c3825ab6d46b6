/** The tie rod against its own wheel or tyre as a pair to be certified, by the exact rod gap. */

import type { Chain, ProvablePair } from '../../solver/certify/bounder.ts';
import { rodPieces } from '../../solver/clearance/rodPieces.ts';
import {
  type Corner,
  createRodGap,
  type Pose,
  rodGapInto,
  Slot,
  tyreSections,
  wheelSections,
} from '../../solver/index.ts';

function rodChain(corner: Corner): Chain {
  const { points, radii } = rodPieces(corner);
  return {
    kind: 'chain',
    body: 'tieRod',
    radii,
    starts: Array.from(radii, (_, piece) => piece),
    points: radii.length + 1,
    place: (pose, out) => {
      for (let at = 0; at < points.length; at += 3) {
        for (let i = 0; i < 3; i += 1) {
          let x = pose[Slot.outer + i]!;
          for (let axis = 0; axis < 3; axis += 1) {
            x += points[at + axis]! * pose[Slot.rodFrame + 3 * axis + i]!;
          }
          out[at + i] = x;
        }
      }
    },
  };
}

export function rodPair(corner: Corner, against: 'wheel' | 'tyre', required: number): ProvablePair {
  const rod = createRodGap(corner, against);
  const sections = against === 'wheel' ? wheelSections(corner.model) : tyreSections(corner.model);
  return {
    names: ['tieRod', against],
    required,
    isConstant: false,
    shapes: [rodChain(corner), { kind: 'revolved', sections }],
    measure: {
      measure: (pose: Pose) => rodGapInto(rod, pose),
      gap: () => rod.gap,
      pointA: rod.rodPoint,
      pointB: rod.wheelPoint,
    },
  };
}
