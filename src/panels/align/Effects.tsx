/** What the settings found do besides: track, bump steer, lock, gaps; before and after. */
import { Fragment, useMemo } from 'react';
import { useStore } from 'zustand';
import {
  type MeasureKey,
  type Moved,
  type MovedMeasure,
  measureRow,
  movedBySettings,
  type Worsened,
} from '../../../solver/index.ts';
import { alignment } from '../../state/aligned.ts';
import { view } from '../../state/bench.ts';
import { figureNumber, figureSteps, figureStyle } from '../../words/figures.ts';
import { movedAmount, TURNED_WORDS } from '../../words/worsened.ts';

/** Worse gaps that are named; the others are counted. */
const MOST_WORSE = 6;

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
        {before !== null && `${movedAmount(before, of, unit)} → `}
        {movedAmount(after, of, unit)}
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
            note={turned === null ? undefined : TURNED_WORDS[turned]}
          />
        ))}
      </dl>
      {more > 0 && <p className="align-note">And {more} more, with more room left than these.</p>}
    </>
  );
}

/** Measures that are listed first; the others are a click away. */
const FIRST: readonly MeasureKey[] = [
  'halfTrack',
  'bumpSteer',
  'bumpCamber',
  'kingpinInclination',
  'scrubRadius',
  'casterTrail',
  'rollCentreHeight',
];
/** What they are set for stands above, and steer is 0 straight ahead. */
const AIMED: readonly MeasureKey[] = ['camber', 'caster', 'toe', 'steerAngle'];

/** The measures that read otherwise with the settings, as they are shown. */
function useMoved(): readonly MovedMeasure[] {
  const of = useStore(alignment, (state) => state.of);
  const settings = useStore(alignment, alignment.chosenOf);
  const unit = useStore(view, (state) => state.unit);
  return useMemo(() => {
    if (of === null || settings === null) return [];
    return movedBySettings(of, settings).filter(({ key, before, after }) => {
      const style = figureStyle(measureRow(key).kind, unit);
      return !AIMED.includes(key) && figureSteps(before, style) !== figureSteps(after, style);
    });
  }, [of, settings, unit]);
}

function Measures({ moved }: { readonly moved: readonly MovedMeasure[] }) {
  const unit = useStore(view, (state) => state.unit);
  return (
    <dl>
      {moved.map(({ key, before, after }) => {
        const row = measureRow(key);
        const style = figureStyle(row.kind, unit);
        const text = (value: number) => figureNumber(figureSteps(value, style), style);
        return (
          <Fragment key={key}>
            <dt>{row.label}</dt>
            <dd>
              {text(before)} → {text(after)}
              {style.unit}
            </dd>
          </Fragment>
        );
      })}
    </dl>
  );
}

function Moves({ extra }: { readonly extra: readonly Moved[] }) {
  const moved = useMoved();
  const first = FIRST.flatMap((key) => moved.filter((each) => each.key === key));
  const others = moved.filter(({ key }) => !FIRST.includes(key));
  if (moved.length + extra.length === 0)
    return <p className="align-note">Nothing that can be read.</p>;
  return (
    <>
      <Measures moved={first} />
      <dl>
        {extra.map((each) => (
          <Row key={each.label} moved={each} />
        ))}
      </dl>
      {others.length > 0 && (
        <details>
          <summary>
            {others.length} more {others.length === 1 ? 'measure' : 'measures'}
          </summary>
          <Measures moved={others} />
        </details>
      )}
    </>
  );
}

/** Of what the survey of the whole range tells, what is no measure of one pose. */
const OF_RANGE = [
  'toe change over travel',
  'steer angle at left lock',
  'steer angle at right lock',
];

export function Effects() {
  const effects = useStore(alignment, (state) => state.effects);
  return (
    <section className="align-effects" aria-label="What else the settings move">
      <h4>What else they move</h4>
      <Moves extra={effects?.moves.filter(({ label }) => OF_RANGE.includes(label)) ?? []} />
      {effects === null ? (
        <p className="align-note">Looking through all travel and lock for gaps…</p>
      ) : (
        <Closer worsened={effects.worsened} />
      )}
    </section>
  );
}
