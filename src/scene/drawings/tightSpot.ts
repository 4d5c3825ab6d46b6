/** The tight spot of the pair on the map: its two nearest points, the way between them, and the gap in words. */
import { chosenGap } from '../../state/chosenGap.ts';
import { closeUp } from '../../state/closeUp.ts';
import { gapUnit, length } from '../../words/format.ts';
import { pairWords } from '../../words/parts.ts';
import type { Words } from '../labels/labels.ts';
import { gapTone } from './gap.ts';
import { mark } from './pen.ts';
import type { Drawing } from './subject.ts';

const MARK = 7;

/** Made once for every pair: a frame makes none. */
const known = new WeakMap<readonly [string, string], Words>();

function wordsOf(pair: readonly [string, string]): Words {
  const made = known.get(pair);
  if (made !== undefined) return made;
  const title = pairWords(pair);
  const words: Words = (gap, unit) =>
    gap <= 0
      ? `${title}: ${length(-gap, gapUnit(unit))} deep`
      : `${title} ${length(gap, gapUnit(unit))}`;
  known.set(pair, words);
  return words;
}

/** The tie rod and its wheel have a marker and words of their own: only the close-up shows their points besides. */
export const drawTightSpot: Drawing = (pen, { now }) => {
  if (now.pose.outcome !== 'reached') return;
  const field = chosenGap();
  const pair = field?.pairs[field.which];
  if (field === null || pair === undefined) return;
  const isRodAtWheel = pair[0] === 'tieRod' && pair[1] === 'wheel';
  if (isRodAtWheel && !closeUp.getState().isShown) return;
  const { pointA: a, pointB: b, gap } = field;
  const tone = gapTone(field.value, field.wanted);
  pen.line(a[0]!, a[1]!, a[2]!, b[0]!, b[1]!, b[2]!, tone);
  mark(pen, a[0]!, a[1]!, a[2]!, MARK, tone);
  mark(pen, b[0]!, b[1]!, b[2]!, MARK, tone);
  if (isRodAtWheel) return;
  const middle = (k: number): number => (a[k]! + b[k]!) / 2;
  pen.label(middle(0), middle(1), middle(2), tone, wordsOf(pair), gap);
};
