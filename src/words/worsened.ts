/** What else a change moves, in words: sizes, and what has turned bad. */
import type { MarginUnit } from '../../solver/index.ts';
import { angle, gapUnit, length } from './format.ts';
import type { LengthUnit } from './lengthUnit.ts';

/** What has become of a gap or a limit that is worse than before. */
export const TURNED_WORDS = {
  touch: 'now touches',
  tight: 'now tight',
  met: 'now passed',
} as const;

/** "12.3 mm", "1.20°": finer in angles than margins are told. */
export function movedAmount(value: number, of: MarginUnit, unit: LengthUnit): string {
  return of === 'mm' ? length(value, gapUnit(unit)) : angle(value);
}
