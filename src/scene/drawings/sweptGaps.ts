/** What the swept tyre cuts or comes too near to: marked where it is worst, with its depth or its room in words. */
import type { SweptGap } from '../../../solver/envelope/cuts.ts';
import { swept } from '../../state/sweptSpace.ts';
import { gapUnit, length } from '../../words/format.ts';
import type { Words } from '../labels/labels.ts';
import { gapTone } from './gap.ts';
import { mark } from './pen.ts';
import type { Drawing } from './subject.ts';

const MARK = 14;

/** Made once for every gap: a frame makes none. */
const known = new WeakMap<SweptGap, Words>();

function wordsOf(gap: SweptGap): Words {
  const made = known.get(gap);
  if (made !== undefined) return made;
  const words: Words = (value, unit) =>
    value <= 0
      ? `swept tyre cuts ${gap.name}, ${length(-value, gapUnit(unit))} deep`
      : `swept tyre to ${gap.name} ${length(value, gapUnit(unit))}`;
  known.set(gap, words);
  return words;
}

export const drawSweptGaps: Drawing = (pen) => {
  const { shown } = swept.getState();
  if (shown === null) return;
  for (let i = 0; i < shown.gaps.length; i += 1) {
    const gap = shown.gaps[i]!;
    if (gap.gap >= gap.required) continue;
    const [x, y, z] = gap.at;
    const tone = gapTone(gap.gap, gap.required);
    mark(pen, x, y, z, MARK, tone);
    pen.label(x, y, z, tone, wordsOf(gap), gap.gap);
  }
};
