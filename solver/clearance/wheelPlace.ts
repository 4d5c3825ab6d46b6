/** Where on its wheel the tie rod comes nearest, as the trade names the places. */
import type { RodGap } from './rodGap.ts';
import type { Section } from './section.ts';

export type WheelPlace = 'innerLip' | 'outerLip' | Section['name'];

/** Rounding left of a vertex, mm. */
const AT_VERTEX = 1e-6;

/**
 * The place of the nearest point: a lip is the flange at either end of the barrel's section, its first or last stretch
 * down to the bead seat's edge; what lies between is the barrel.
 */
export function wheelPlace({ place, sections, sectionPoint }: RodGap): WheelPlace {
  if (place !== 'barrel') return place;
  const line = sections.find(({ name }) => name === 'barrel')!.line;
  const first = line[2]!;
  const last = line[line.length - 4]!;
  const [inner, outer] = first <= last ? [first, last] : [last, first];
  if (sectionPoint[0] <= inner + AT_VERTEX) return 'innerLip';
  return sectionPoint[0] >= outer - AT_VERTEX ? 'outerLip' : 'barrel';
}
