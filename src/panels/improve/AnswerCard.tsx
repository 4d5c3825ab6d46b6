/** One answer: what every wish makes of it, what moves, what holds, and the way to try and to keep it. */
import { useId, useState } from 'react';
import { useStore } from 'zustand';
import type { Answer, FloorAnswer, WishAnswer } from '../../../solver/improve/answer.ts';
import { movingOf } from '../../../solver/improve/moving.ts';
import { missOf } from '../../../solver/improve/read.ts';
import type { MarginUnit, Moved } from '../../../solver/index.ts';
import { inputOf } from '../../../solver/inputs/list.ts';
import { inputValue } from '../../../solver/inputs/value.ts';
import { view } from '../../state/bench.ts';
import { designs } from '../../state/designs.ts';
import { improve } from '../../state/improved.ts';
import type { LengthUnit } from '../../state/view.ts';
import { fixed } from '../../words/format.ts';
import { quantityOf } from '../../words/quantity.ts';
import { Icon } from '../icons.tsx';
import type { Design } from './useDesign.ts';
import { moverKind, moveWords, wishKind, wishSense, wishWords } from './words.ts';

/** Worse gaps that are named; the others are counted. */
const MOST_WORSE = 4;
const TURNED = { touch: 'now touches', tight: 'now tight', met: 'now passed' } as const;
/** Costs nearer than this are the same. */
const SAME_COST = 0.005;

type Standing = 'met' | 'nearer' | 'same' | 'worse';
const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  met: 'as wanted',
  nearer: 'nearer',
  same: 'as before',
  worse: 'worse than before',
};

function missed({ wish, after }: WishAnswer): number {
  const aiming = wish.of === 'toeChange' ? 'atMost' : wish.of === 'least' ? 'atLeast' : wish.aiming;
  return Math.abs(missOf(after.figure, wish.value, aiming));
}

/** What is found and what is proven of a gap come this near, mm or degrees. */
const PROOF = 0.1;

/** Whether a least gap or margin is proven to be no less than it reads. */
function isProven({ after, provenAtLeast }: WishAnswer): boolean {
  return provenAtLeast !== null && provenAtLeast > after.figure - PROOF;
}

/** How a wish stands: near enough to what is wanted, or how it compares with before. */
function standingOf(answer: WishAnswer): Standing {
  const { wish, before, after } = answer;
  if (missed(answer) <= wish.within) return 'met';
  if (Math.abs(after.cost - before.cost) < SAME_COST) return 'same';
  return after.cost < before.cost ? 'nearer' : 'worse';
}

function WishLine({
  answer,
  design,
  unit,
}: {
  answer: WishAnswer;
  design: Design;
  unit: LengthUnit;
}) {
  const { wish, before, after } = answer;
  if (Number.isNaN(before.figure)) return null;
  const { figure } = quantityOf(wishKind(wish, design.margins), unit);
  const standing = standingOf(answer);
  const sense = wishSense(wish, after.figure);
  return (
    <tr data-standing={standing}>
      <th scope="row">{wishWords(wish, design.margins, unit)}</th>
      <td>
        {figure(before.figure)} → <strong>{figure(after.figure)}</strong>
        {sense !== undefined && <small> {sense}</small>}
        {isProven(answer) && <small> proven</small>}
        <span className="answer-standing">
          <Icon name={standing === 'met' ? 'clear' : standing === 'worse' ? 'warn' : 'down'} />
          {STANDING_WORDS[standing]}
        </span>
      </td>
      <td>
        {fixed(before.cost, 2)} → {fixed(after.cost, 2)}
      </td>
    </tr>
  );
}

function Wishes({ answer, design, unit }: { answer: Answer; design: Design; unit: LengthUnit }) {
  return (
    <table className="answer-wishes">
      <thead>
        <tr>
          <th scope="col">Wanted</th>
          <th scope="col">Before → after</th>
          <th scope="col">Cost</th>
        </tr>
      </thead>
      <tbody>
        {answer.wishes.map((each, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: wishes have no other name, and an answer's never change.
          <WishLine key={i} answer={each} design={design} unit={unit} />
        ))}
      </tbody>
    </table>
  );
}

/** The points that move: where to, and by how much which way. */
function Moves({ answer, unit }: { readonly answer: Answer; readonly unit: LengthUnit }) {
  const { plan, model } = useStore(improve);
  if (plan === null || model === null) return null;
  const moving = movingOf(model, plan.movers);
  const atBound = (place: number): boolean => {
    const value = answer.values[place] ?? Number.NaN;
    return value === moving.low[place] || value === moving.high[place];
  };
  const keys = moving.inputs.flatMap((group, place) =>
    group.map(({ key }) => [key, atBound(place)] as const),
  );
  return (
    <dl>
      {keys.map(([key, isAtBound]) => {
        const input = inputOf(model, key);
        if (input === undefined) return null;
        const kind = moverKind(model, { inputs: [key], from: 0, to: 0 });
        const [was, is] = [inputValue(model, input), inputValue(answer.model, input)];
        const { figure } = quantityOf(kind, unit);
        return (
          <div key={key} className="answer-row">
            <dt>{input.label}</dt>
            <dd>
              {was === is
                ? 'stays'
                : `${figure(is)}: ${moveWords(input.component, kind, is - was, unit)}`}
              {isAtBound && ', at its bound'}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}

function amount(value: number, of: MarginUnit, unit: LengthUnit): string {
  return quantityOf(of === 'mm' ? 'millimetre' : 'degree', unit).figure(value);
}

function MovedRows({ rows, unit }: { readonly rows: readonly Moved[]; readonly unit: LengthUnit }) {
  return (
    <dl>
      {rows.map(({ label, before, after, unit: of }) => (
        <div key={label} className="answer-row">
          <dt>{label}</dt>
          <dd>
            {before !== null && `${amount(before, of, unit)} → `}
            {amount(after, of, unit)}
          </dd>
        </div>
      ))}
    </dl>
  );
}

function heldWords(floors: readonly FloorAnswer[], stays: number): string {
  const count = floors.length + stays;
  if (count === 0) return 'Bounds hold, and it can be built over its whole range.';
  const proven = floors.filter(({ holding }) => holding === 'proven').length;
  const rest = floors.length - proven;
  const how = rest === 0 ? 'proven' : `${proven} proven, ${rest} found and not proven`;
  return `All ${count} that must hold do${floors.length === 0 ? '' : `: ${how}`}.`;
}

function Besides({ answer, unit }: { readonly answer: Answer; readonly unit: LengthUnit }) {
  const { effects, worsened } = answer;
  const more = worsened.length - MOST_WORSE;
  const closer = worsened.slice(0, MOST_WORSE).map(({ turned, ...moved }) => ({
    ...moved,
    label: turned === null ? moved.label : `${moved.label}, ${TURNED[turned]}`,
  }));
  return (
    <details className="answer-besides">
      <summary>What else moves{worsened.length > 0 && ', and what comes closer'}</summary>
      {effects.length === 0 && <p>Nothing else of alignment, lock and track moves.</p>}
      <MovedRows rows={effects} unit={unit} />
      {closer.length > 0 && <h5>Closer for it, and not among what must hold</h5>}
      <MovedRows rows={closer} unit={unit} />
      {more > 0 && <p>And {more} more that stay farther apart.</p>}
    </details>
  );
}

function KeepBeside({ answer, title }: { readonly answer: Answer; readonly title: string }) {
  const [said, setSaid] = useState<string | null>(null);
  const keep = (): void => {
    const name = `${answer.model.name}, ${title.toLowerCase()}`;
    const isKept = designs.getState().add(name, answer.model);
    setSaid(
      isKept
        ? 'Kept beside the present design: see Compare.'
        : 'All places are taken: remove a design in Compare first.',
    );
  };
  return (
    <>
      <button
        type="button"
        className="bar-button"
        aria-label={`Keep as a second design: ${title}`}
        onClick={keep}
      >
        Keep as a second design
      </button>
      <span role="status" className="plan-note">
        {said}
      </span>
    </>
  );
}

function Buttons({ answer, title }: { readonly answer: Answer; readonly title: string }) {
  const isOn = useStore(improve.trials, ({ trial }) => trial?.subject === answer);
  return (
    <div className="answer-buttons">
      {isOn ? (
        <>
          <button
            type="button"
            className="bar-button"
            aria-label={`Keep: ${title}`}
            onClick={improve.keep}
          >
            Keep
          </button>
          <button
            type="button"
            className="bar-button"
            aria-label={`Take back: ${title}`}
            onClick={improve.takeBack}
          >
            Take back
          </button>
        </>
      ) : (
        <button
          type="button"
          className="bar-button"
          aria-label={`Try as ghost: ${title}`}
          title="Put it on the bench and hold the present design as the ghost"
          onClick={() => improve.tryOn(answer)}
        >
          Try as ghost
        </button>
      )}
      <KeepBeside answer={answer} title={title} />
    </div>
  );
}

export function AnswerCard({
  answer,
  place,
  design,
}: {
  readonly answer: Answer;
  /** Its place among the answers, from 1. */
  readonly place: number;
  readonly design: Design;
}) {
  const id = useId();
  const unit = useStore(view, (state) => state.unit);
  const isOn = useStore(improve.trials, ({ trial }) => trial?.subject === answer);
  const title = `Answer ${place}`;
  const { cost, floors, stays } = answer;
  return (
    <li className="answer" data-answer={place} data-on={isOn || undefined} aria-labelledby={id}>
      <h4 id={id}>
        {title}{' '}
        <small>
          cost {fixed(cost.before, 2)} → {fixed(cost.after, 2)}
        </small>
      </h4>
      <Wishes answer={answer} design={design} unit={unit} />
      <h5>What moves</h5>
      <Moves answer={answer} unit={unit} />
      <p className="answer-held">
        <Icon name="clear" />
        {heldWords(floors, stays.length)}
      </p>
      <Besides answer={answer} unit={unit} />
      <Buttons answer={answer} title={title} />
    </li>
  );
}
