/** The tie rod's gap to its wheel in words: its state, and where it is least. */
import { type RodGap, type WheelPlace, wheelPlace } from '../../solver/index.ts';
import type { LengthUnit } from '../state/view.ts';
import { length } from '../words/format.ts';

export type GapState = 'clear' | 'near' | 'touch';

export function gapState(gap: number, wanted: number): GapState {
  if (gap <= 0) return 'touch';
  return gap < wanted ? 'near' : 'clear';
}

const PLACES: Readonly<Record<WheelPlace, string>> = {
  innerLip: 'at the inner lip',
  outerLip: 'at the outer lip',
  barrel: 'in the barrel',
  disc: 'at the wheel’s disc',
  weights: 'at the stick-on weights',
  tyre: 'on the tyre',
  brake: 'at the brake',
};

/** "at the inner lip, 84 mm from the rod end". */
export function gapPlace(gap: RodGap, unit: LengthUnit): string {
  const isAtEnd = gap.fromOuter < 0.5;
  const along = isAtEnd ? 'at' : `${length(gap.fromOuter, unit, 0)} from`;
  return `${PLACES[wheelPlace(gap)]}, ${along} the rod end`;
}

/** "clear", "near: under the wanted gap", "touch: 3.1 mm deep". */
export function gapVerdict(gap: number, wanted: number, unit: LengthUnit): string {
  const state = gapState(gap, wanted);
  if (state === 'touch') return `touch: ${length(-gap, unit)} deep`;
  return state === 'near' ? 'near: under the wanted gap' : 'clear';
}
