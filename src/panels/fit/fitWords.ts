/** What a fit says, in words: readings, probabilities, and how far something is in its own ±. */
import type { Agreement } from '../../../solver/fit/agreement.ts';
import { POINT_TABLE } from '../../../solver/fit/points.ts';
import { READ_TABLE, type Reading, type ReadQuantity } from '../../../solver/fit/reading.ts';
import { inWords, measureRow } from '../../../solver/index.ts';
import type { LengthUnit } from '../../state/view.ts';
import { type FigureStyle, figureNumber, figureSteps, figureStyle } from '../../words/figures.ts';
import { fixed, gapUnit, signedLength } from '../../words/format.ts';
import { spreadWords } from '../../words/known.ts';

/** Readings of lengths are compared to a tenth of a mm: in decimal inches where sixteenths are shown. */
export function readStyle(quantity: ReadQuantity, unit: LengthUnit): FigureStyle {
  return figureStyle(READ_TABLE[quantity].unit, gapUnit(unit));
}

/** "0.12°", "352.4 mm". */
export function readAmount(quantity: ReadQuantity, value: number, unit: LengthUnit): string {
  const style = readStyle(quantity, unit);
  return `${figureNumber(figureSteps(value, style), style)}${style.unit}`;
}

/** "±0.05°". */
export function readSpread(quantity: ReadQuantity, plusMinus: number, unit: LengthUnit): string {
  return spreadWords(readStyle(quantity, unit), plusMinus);
}

/** What the sign of a reading means: "front edge in"; undefined for a length. */
export function readSense(quantity: ReadQuantity, value: number): string | undefined {
  if (quantity === 'damperLength' || quantity === 'distance' || quantity === 'width')
    return undefined;
  if (quantity !== 'toeChange') return inWords(measureRow(quantity), value);
  if (value === 0) return 'as at ride height';
  return value > 0 ? 'front edge turns in' : 'front edge turns out';
}

/** "toe at +50 mm", "lower ball joint to upper ball joint". */
export function readName(
  { quantity, travel, rack, between }: Reading,
  unit: LengthUnit,
  ride: number,
): string {
  const { label } = READ_TABLE[quantity];
  const points = between?.map((point) => POINT_TABLE[point].label) ?? [];
  const name =
    quantity === 'distance'
      ? points.join(' to ')
      : quantity === 'width'
        ? `${points[0]}, side to side,`
        : label;
  const at = travel === ride ? 'at ride height' : `at ${signedLength(travel, gapUnit(unit), 1)}`;
  const steered = rack === 0 ? '' : `, rack ${signedLength(rack, gapUnit(unit), 1)}`;
  return `${name} ${at}${steered}`;
}

/** Where probabilities below this are no longer worth a number. */
const HARDLY_EVER = 1e-4;

/** "in 52 of 100", "in 3 of 1000", "less than once in 10 000": how often chance does it. */
export function oftenWords(probability: number): string {
  if (probability < HARDLY_EVER) return 'less than once in 10 000 times';
  if (probability < 0.01) return `in ${fixed(Math.max(1, probability * 1e4), 0)} of 10 000 times`;
  return `in ${fixed(probability * 100, 0)} of 100 times`;
}

/** The verdict in one sentence. */
export function verdictWords({ verdict, degrees }: Agreement): string {
  const these = degrees === 1 ? 'Reading and points' : 'Readings and points';
  if (verdict === 'agree') return `${these} agree within their ±.`;
  if (verdict === 'strained') return `${these} agree badly: either luck, or something is off.`;
  return `${these} cannot all be right.`;
}

/** "0.8 of its ±", "2.3 times its ±": how far off, without a sign. */
export function timesWords(times: number): string {
  const size = Math.abs(times);
  return size < 1 ? `${fixed(size, 1)} of its ±` : `${fixed(size, 1)} times its ±`;
}
