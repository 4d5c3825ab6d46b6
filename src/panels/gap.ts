/** The tie rod's gap to its wheel in words: its state, and where it is least. */
import type { RodGap } from '../../solver/index.ts';
import type { LengthUnit } from '../state/view.ts';
import { length } from '../words/format.ts';

export type GapState = 'clear' | 'near' | 'touch';

export function gapState(gap: number, wanted: number): GapState {
  if (gap <= 0) return 'touch';
  return gap < wanted ? 'near' : 'clear';
}

/** A section's nearest point this near to its inboard end, mm, is on the inner lip. */
const LIP = 15;

function spot({ place, sections, sectionPoint }: RodGap): string {
  if (place === 'tyre') return 'on the tyre';
  if (place === 'disc') return 'at the wheel’s disc';
  const line = sections.find(({ name }) => name === 'barrel')?.line;
  if (line === undefined) return 'in the barrel';
  // A section may be drawn from either end: the inboard one is the inner lip.
  const isInboardFirst = (line[0] ?? 0) <= (line.at(-2) ?? 0);
  const [s = 0, radius = 0] = isInboardFirst ? line : line.slice(-2);
  const fromLip = Math.hypot(sectionPoint[0] - s, sectionPoint[1] - radius);
  return fromLip <= LIP ? 'at the inner lip' : 'in the barrel';
}

/** "at the inner lip, 84 mm from the rod end". */
export function gapPlace(gap: RodGap, unit: LengthUnit): string {
  const isAtEnd = gap.fromOuter < 0.5;
  const along = isAtEnd ? 'at' : `${length(gap.fromOuter, unit, 0)} from`;
  return `${spot(gap)}, ${along} the rod end`;
}

/** "clear", "near: under the wanted gap", "touch: 3.1 mm deep". */
export function gapVerdict(gap: number, wanted: number, unit: LengthUnit): string {
  const state = gapState(gap, wanted);
  if (state === 'touch') return `touch: ${length(-gap, unit)} deep`;
  return state === 'near' ? 'near: under the wanted gap' : 'clear';
}
