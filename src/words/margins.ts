/** Margins, travel and rack of what stops the wheel, in words. */
import type { Margin, MarginUnit } from '../../solver/index.ts';
import { angle, gapUnit, length, signedLength } from './format.ts';
import type { LengthUnit } from './lengthUnit.ts';

/** "4.1 mm", "12.3°". */
export function amount(value: number, of: MarginUnit, unit: LengthUnit): string {
  return of === 'mm' ? length(value, gapUnit(unit)) : angle(value, 1);
}

/** "4.1 mm left", "2.3° past it": what a margin's value says. */
export function marginWords({ unit: of, kind }: Margin, value: number, unit: LengthUnit): string {
  const size = amount(Math.abs(value), of, unit);
  if (kind === 'gap') return value <= 0 ? `${size} deep` : `${size} gap`;
  return value < 0 ? `${size} past it` : `${size} left`;
}

/** "travel +20 mm, rack −30 mm". */
export function placeWords(travel: number, rack: number, unit: LengthUnit): string {
  return `travel ${signedLength(travel, unit, 0)}, rack ${signedLength(rack, unit, 0)}`;
}
