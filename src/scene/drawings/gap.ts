/** Words at the tie rod's and the wheel's nearest points: where they are near, and how deep they meet. The line between them is a part's. */

import { type WheelPlace, wantedGap, wheelPlace } from '../../../solver/index.ts';
import { gapUnit, length } from '../../words/format.ts';
import type { Words } from '../labels/labels.ts';
import type { Tone } from '../palette.ts';
import type { Drawing } from './subject.ts';

const NAMES: Readonly<Record<WheelPlace, string>> = {
  innerLip: 'wheel’s inner lip',
  outerLip: 'wheel’s outer lip',
  barrel: 'wheel’s barrel',
  disc: 'wheel’s disc',
  weights: 'stick-on weights',
  tyre: 'tyre',
  brake: 'brake',
};

function words(name: WheelPlace): readonly [apart: Words, deep: Words] {
  return [
    (value, unit) => `rod to ${NAMES[name]} ${length(value, gapUnit(unit))}`,
    (value, unit) => `rod meets the ${NAMES[name]}, ${length(-value, gapUnit(unit))} deep`,
  ];
}

const WORDS: Readonly<Record<WheelPlace, readonly [apart: Words, deep: Words]>> = {
  innerLip: words('innerLip'),
  outerLip: words('outerLip'),
  barrel: words('barrel'),
  disc: words('disc'),
  weights: words('weights'),
  tyre: words('tyre'),
  brake: words('brake'),
};

/** 'ink' when there is room enough, 'near' below the wanted gap, 'touch' when they meet. */
export function gapTone(gap: number, wanted: number): Tone {
  if (gap <= 0) return 'touch';
  return gap < wanted ? 'near' : 'ink';
}

/** The gap in words, whatever it is. */
export const drawGap: Drawing = (pen, { now }) => {
  const { wheelGap } = now;
  const { rodPoint, wheelPoint, gap } = wheelGap;
  const tone = gapTone(gap, wantedGap(now.corner.model, 'tieRod', 'wheel'));
  const said = WORDS[wheelPlace(wheelGap)];
  pen.label(
    (rodPoint[0]! + wheelPoint[0]!) / 2,
    (rodPoint[1]! + wheelPoint[1]!) / 2,
    (rodPoint[2]! + wheelPoint[2]!) / 2,
    tone,
    said[gap <= 0 ? 1 : 0],
    gap,
  );
};

/** Said unasked where the rod meets the wheel or comes nearer than wanted. */
export const drawGapWarning: Drawing = (pen, subject) => {
  const { wheelGap, corner } = subject.now;
  if (wheelGap.gap < wantedGap(corner.model, 'tieRod', 'wheel')) drawGap(pen, subject);
};
