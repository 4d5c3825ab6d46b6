/** What the settings found do besides: track, bump steer, lock, gaps; before and after. */
import { useStore } from 'zustand';
import type { MarginUnit, Moved, Worsened } from '../../../solver/index.ts';
import { alignment } from '../../state/aligned.ts';
import { view } from '../../state/bench.ts';
import type { LengthUnit } from '../../state/view.ts';
import { angle, gapUnit, length } from '../../words/format.ts';

/** Worse gaps that are named; the others are counted. */
const MOST_WORSE = 6;
const TURNED = { touch: 'now touches', tight: 'now tight', met: 'now passed' } as const;
/** They are what the settings are for, and stand above. */
const AIMED = ['camber', 'caster', 'toe'];

function amount(value: number, of: MarginUnit, unit: LengthUnit): string {
  return of === 'mm' ? length(value, gapUnit(unit)) : angle(value);
}

function Row({ moved, note }: { readonly moved: Moved; readonly note?: string | undefined }) {
  const unit = useStore(view, (state) => state.unit);
  const { label, before, after, unit: of } = moved;
  return (
    <>
      <dt>
        {label}
        {note !== undefined && <strong>, {note}</strong>}
      </dt>
      <dd>
        {before !== null && `${amount(before, of, unit)} → `}
        {amount(after, of, unit)}
      </dd>
    </>
  );
}

function Closer({ worsened }: { readonly worsened: readonly Worsened[] }) {
  const more = worsened.length - MOST_WORSE;
  if (worsened.length === 0) return <p className="align-note">No gap or limit is worse for it.</p>;
  return (
    <>
      <h5>Closer for it</h5>
      <dl>
        {worsened.slice(0, MOST_WORSE).map(({ turned, ...moved }) => (
          <Row
            key={moved.label}
            moved={moved}
            note={turned === null ? undefined : TURNED[turned]}
          />
        ))}
      </dl>
      {more > 0 && <p className="align-note">And {more} more that stay farther apart.</p>}
    </>
  );
}

export function Effects() {
  const effects = useStore(alignment, (state) => state.effects);
  if (effects === null) return <p className="align-note">Looking at what else they move…</p>;
  const moves = effects.moves.filter(({ label }) => !AIMED.includes(label));
  return (
    <section className="align-effects" aria-label="What else the settings move">
      <h4>What else they move</h4>
      {moves.length === 0 ? (
        <p className="align-note">Nothing that could be measured.</p>
      ) : (
        <dl>
          {moves.map((moved) => (
            <Row key={moved.label} moved={moved} />
          ))}
        </dl>
      )}
      <Closer worsened={effects.worsened} />
    </section>
  );
}
