/** Whether readings and points can all be right, and which reading cannot when the others are. */
import { STRAINED_BELOW } from '../../../solver/fit/agreement.ts';
import type { Fit } from '../../../solver/fit/fit.ts';
import { rideTravel } from '../../../solver/model/defaults.ts';
import type { LengthUnit } from '../../state/view.ts';
import { fixed } from '../../words/format.ts';
import { Icon } from '../icons.tsx';
import { oftenWords, readName, verdictWords } from './fitWords.ts';

export const ICONS = { agree: 'clear', strained: 'warn', disagree: 'touch' } as const;
export const STATES = { agree: 'clear', strained: 'near', disagree: 'touch' } as const;

/** A point that has to move by more than this many of its ± is worth measuring again: common practice, no source. */
const FAR_MOVE = 3;

function suspectWords(fit: Fit, unit: LengthUnit): string | null {
  const { suspects, readings, model, degrees, verdict } = fit;
  if (verdict === 'agree') return null;
  const names = suspects.map((index) =>
    readName(readings[index]!.reading, unit, rideTravel(model.travel)),
  );
  const [first] = names;
  if (degrees === 1) return 'Read it again, or look for a point that was measured wrong.';
  if (first === undefined) {
    const most = fit.alone.reduce(
      (best, one, index) => ((one?.drop ?? 0) > (fit.alone[best]?.drop ?? 0) ? index : best),
      0,
    );
    const name = readName(readings[most]!.reading, unit, rideTravel(model.travel));
    return `No single reading is to blame: two or more are off, or a point is, or some ± are too small. Leaving out ${name} would help most.`;
  }
  if (names.length === 1) return `Without one of them the rest agrees: ${first}.`;
  const last = names.at(-1) ?? '';
  return `One of these is off, and which one cannot be told: ${names.slice(0, -1).join('; ')}; or ${last}.`;
}

export function Verdict({ fit, unit }: { readonly fit: Fit; readonly unit: LengthUnit }) {
  const { chiSquare, degrees, probability, verdict, moves } = fit;
  const suspects = suspectWords(fit, unit);
  const [first] = moves;
  return (
    <div className="fit-verdict" data-state={STATES[verdict]} data-verdict={verdict}>
      <p className="fit-verdict-head">
        <Icon name={ICONS[verdict]} />
        {verdictWords(fit)}
      </p>
      {suspects !== null && <p className="fit-blame">{suspects}</p>}
      <p className="fit-note">
        Chi-square {fixed(chiSquare, 1)} for {degrees} {degrees === 1 ? 'reading' : 'readings'}:
        were every ± true, chance alone would bring as much or more {oftenWords(probability)}
        {verdict === 'agree' ? '.' : ` (below ${STRAINED_BELOW * 100} of 100 is called bad).`}
      </p>
      {first !== undefined && Math.abs(first.moved) > FAR_MOVE && (
        <p className="fit-note">
          {first.input.label} had to move by {fixed(Math.abs(first.moved), 1)} times its ±: measure
          it again.
        </p>
      )}
      {!fit.isSettled && (
        <p className="fit-note">
          The search ended before it settled: this is the best that was found, and may not be the
          best there is.
        </p>
      )}
    </div>
  );
}
