/** The gap of the pair on the map, in the present pose. */
import { createGapField, type GapField, type PairKey } from '../../solver/clearance/gapField.ts';
import type { Corner } from '../../solver/index.ts';
import { posed } from './bench.ts';
import { lockMaps } from './mapped.ts';
import { surfacesOf, surfacesVersion } from './surfaces.ts';

let field: GapField | null = null;
let corner: Corner | null = null;
let key: PairKey | null = null;
let surfaces: object | null = null;

/**
 * The chosen pair's gap, read in the present pose; null where the corner has no such pair. A field is made anew when the
 * design, the choice or the meshes change; else nothing is allocated.
 */
export function chosenGap(): GapField | null {
  const now = posed.current();
  const { pair } = lockMaps.getState();
  if (now.corner !== corner || pair !== key || surfacesVersion() !== surfaces) {
    corner = now.corner;
    key = pair;
    surfaces = surfacesVersion();
    field = createGapField(corner, pair, surfacesOf(corner.model));
  }
  field?.read(now.pose);
  return field;
}
