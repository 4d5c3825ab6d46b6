/** One cure: what it changes and by how much, what else it moves, and the way to try it. */
import { useId } from 'react';
import { useStore } from 'zustand';
import { type Cure, cureWords, type MarginUnit, type Moved } from '../../../solver/index.ts';
import { cures } from '../../state/cured.ts';
import type { LengthUnit } from '../../state/view.ts';
import { gapUnit, length } from '../../words/format.ts';
import { movedAmount, TURNED_WORDS } from '../../words/worsened.ts';
import { Icon } from '../icons.tsx';
import { TrialButtons } from '../TrialButtons.tsx';

/** Worse gaps that are named; the others are counted. */
const MOST_WORSE = 5;

/** Small changes keep their hundredths: 0.63 mm is not 0.6. */
function amountOf(mm: number, unit: LengthUnit): string {
  return length(mm, gapUnit(unit), mm < 4 ? 2 : 1);
}

function MovedRow({ moved, unit }: { readonly moved: Moved; readonly unit: LengthUnit }) {
  const { label, before, after, unit: of } = moved;
  return (
    <>
      <dt>{label}</dt>
      <dd>
        {before !== null && before !== after && `${movedAmount(before, of, unit)} → `}
        {movedAmount(after, of, unit)}
      </dd>
    </>
  );
}

function Worse({ cure, unit }: { readonly cure: Cure; readonly unit: LengthUnit }) {
  const { worsened } = cure;
  if (worsened.length === 0) return null;
  const more = worsened.length - MOST_WORSE;
  return (
    <>
      <h5>Closer for it</h5>
      <dl>
        {worsened.slice(0, MOST_WORSE).map(({ turned, ...moved }) => (
          <MovedRow
            key={moved.label}
            moved={
              turned === null
                ? moved
                : { ...moved, label: `${moved.label}, ${TURNED_WORDS[turned]}` }
            }
            unit={unit}
          />
        ))}
      </dl>
      {more > 0 && <p className="cure-note">And {more} more, with more room left than these.</p>}
    </>
  );
}

function Effects({ cure, unit }: { readonly cure: Cure; readonly unit: LengthUnit }) {
  const { settings, moves, worsened } = cure;
  return (
    <>
      <dl>
        {settings.map((moved) => (
          <MovedRow key={moved.label} moved={moved} unit={unit} />
        ))}
      </dl>
      {moves.length > 0 && (
        <>
          <h5>Moves with it</h5>
          <dl>
            {moves.map((moved) => (
              <MovedRow key={moved.label} moved={moved} unit={unit} />
            ))}
          </dl>
        </>
      )}
      <Worse cure={cure} unit={unit} />
      {moves.length + worsened.length === 0 && (
        <p className="cure-note">Nothing else moves, and nothing comes closer.</p>
      )}
    </>
  );
}

function Buttons({ cure, title }: { readonly cure: Cure; readonly title: string }) {
  const isOn = useStore(cures.trials, ({ trial }) => trial?.subject === cure);
  return (
    <div className="cure-buttons">
      <TrialButtons
        title={title}
        isOn={isOn}
        onTry={() => cures.tryOn(cure)}
        onKeep={cures.keep}
        onTakeBack={cures.takeBack}
      />
    </div>
  );
}

/** What is left with it: "gap 8.0 mm, proven". */
function leftWords(cure: Cure, isGap: boolean, of: MarginUnit, unit: LengthUnit): string {
  const what = isGap ? 'gap' : 'left';
  const size = movedAmount(cure.least, of, unit);
  if (!cure.reaches) return `not enough: at best ${what} ${size}`;
  return `${what} ${size}, ${cure.isProven ? 'proven' : 'found, not proven'}`;
}

export function CureCard({
  cure,
  isGap,
  of,
  unit,
}: {
  readonly cure: Cure;
  readonly isGap: boolean;
  readonly of: MarginUnit;
  readonly unit: LengthUnit;
}) {
  const id = useId();
  const title = cureWords(cure, (mm) => amountOf(mm, unit));
  const isOn = useStore(cures.trials, ({ trial }) => trial?.subject === cure);
  return (
    <li
      className="cure"
      data-cure={cure.kind}
      data-state={cure.reaches ? 'clear' : 'near'}
      data-on={isOn || undefined}
      aria-labelledby={id}
    >
      <h4 id={id}>{title.charAt(0).toUpperCase() + title.slice(1)}</h4>
      <p className="cure-left">
        <Icon name={cure.reaches ? 'clear' : 'warn'} />
        {leftWords(cure, isGap, of, unit)}
      </p>
      {cure.reaches && (
        <>
          <Effects cure={cure} unit={unit} />
          <Buttons cure={cure} title={title} />
        </>
      )}
    </li>
  );
}
