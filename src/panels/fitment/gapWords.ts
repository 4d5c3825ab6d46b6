/** A least gap in words: whether it is enough, and where it is. */

import type { Model } from '../../../solver/index.ts';
import { wantedGap } from '../../../solver/index.ts';
import type { WorstPlace } from '../../../solver/worst.ts';
import type { LengthUnit } from '../../state/view.ts';
import { gapUnit, length, signedLength } from '../../words/format.ts';
import { type GapState, gapState } from '../gap.ts';

export interface GapText {
  readonly state: GapState;
  readonly figure: string;
  /** The state in a word, for those who do not see colours. */
  readonly word: string;
  readonly where: string;
  readonly change: string | null;
}

const STATES: Readonly<Record<GapState, string>> = {
  clear: 'clear',
  near: 'near',
  touch: 'touch',
};

/** The rod's least gap to `part`; the difference is told from `present` where there is one. */
export function gapText(
  model: Model,
  part: 'wheel' | 'tyre',
  worst: WorstPlace,
  present: WorstPlace | null,
  unit: LengthUnit,
): GapText {
  const shownUnit = gapUnit(unit);
  const state = gapState(worst.gap, wantedGap(model, 'tieRod', part));
  const change = present === null ? null : worst.gap - present.gap;
  return {
    state,
    figure: length(worst.gap, shownUnit),
    word: STATES[state],
    where: `at travel ${length(worst.travel, unit, 0)}, rack ${length(worst.rack, unit, 0)}`,
    change:
      change === null
        ? null
        : Math.abs(change) < 0.05
          ? 'as now'
          : `${signedLength(change, shownUnit)} ${change > 0 ? 'more' : 'less'} room`,
  };
}
