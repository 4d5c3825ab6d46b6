/**
 * What the swept tyre cuts or comes too near to: marked where it is worst, with its depth or its room in words. And
 * whether the surface belongs to the design as it stands.
 */
import type { SweptGap } from '../../../solver/envelope/cuts.ts';
import type { ShownSweep } from '../../state/swept.ts';
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
      ? `swept tyre cuts ${gap.name}, ${length(-value, gapUnit(unit))} ${gap.isThrough ? 'or more ' : ''}deep`
      : `swept tyre to ${gap.name} ${length(value, gapUnit(unit))}`;
  known.set(gap, words);
  return words;
}

const NAME: Words = () => 'space the tyre sweeps';
const STALE: Words = () => 'space the tyre swept before the last change';

/** Where the name stands: the highest vertex, sought once for every surface. */
const tops = new WeakMap<ShownSweep, number>();

function topOf(shown: ShownSweep): number {
  const sought = tops.get(shown);
  if (sought !== undefined) return sought;
  const { positions } = shown.surface;
  let top = 0;
  for (let at = 3; at < positions.length; at += 3) {
    if (positions[at + 2]! > positions[top + 2]!) top = at;
  }
  tops.set(shown, top);
  return top;
}

export const drawSweptGaps: Drawing = (pen) => {
  const { shown, stage } = swept.getState();
  if (shown === null) return;
  for (let i = 0; i < shown.gaps.length; i += 1) {
    const gap = shown.gaps[i]!;
    if (gap.gap >= gap.required) continue;
    const [x, y, z] = gap.at;
    const tone = gapTone(gap.gap, gap.required);
    mark(pen, x, y, z, MARK, tone);
    pen.label(x, y, z, tone, wordsOf(gap), gap.gap);
  }
  const { positions } = shown.surface;
  const top = topOf(shown);
  const words = stage === 'done' ? NAME : STALE;
  pen.label(positions[top]!, positions[top + 1]!, positions[top + 2]!, 'accent', words, 0);
};
