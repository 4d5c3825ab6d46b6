/** The search: started and stopped by hand, how far it is, and what it found. */
import { useStore } from 'zustand';
import type { Answers } from '../../../solver/improve/answer.ts';
import { movingOf } from '../../../solver/improve/moving.ts';
import { view } from '../../state/bench.ts';
import { sameModel } from '../../state/document.ts';
import { improve, improvePlan } from '../../state/improved.ts';
import { planOf } from '../../state/improvePlan.ts';
import { AnswerCard } from './AnswerCard.tsx';
import type { Design } from './useDesign.ts';
import { knownWords, wishWords } from './words.ts';

function Running() {
  const progress = useStore(improve, (state) => state.progress);
  return (
    <div className="improve-progress">
      <progress value={progress} max={1} aria-label="Progress of the search for better points" />
      <button type="button" className="bar-button" onClick={improve.stop}>
        Stop
      </button>
    </div>
  );
}

/** Why a search cannot begin; null where it can. */
function lackOf(movers: number, wishes: number, canMove: boolean): string | null {
  if (movers === 0) return 'Say first what may move, or take a ready-made start.';
  if (!canMove) return 'Nothing on the list can move in this design.';
  return wishes === 0 ? 'Say what is wanted.' : null;
}

function Start({ design }: { readonly design: Design }) {
  const rows = useStore(improvePlan);
  const plan = planOf(rows);
  const moving = movingOf(design.model, plan.movers);
  const canMove = moving.low.some((low, i) => low < moving.high[i]!);
  const lack = lackOf(plan.movers.length, plan.wishes.length, canMove);
  const isTyping = Object.keys(rows.drafts).length > 0;
  return (
    <div className="improve-start">
      <button
        type="button"
        className="bar-button improve-go"
        disabled={lack !== null}
        onClick={() => improve.look(plan)}
      >
        Look for better points
      </button>
      {lack !== null && <p className="plan-note">{lack}</p>}
      {lack === null && isTyping && (
        <p className="plan-note">
          A number that is typed but not taken is left out: the one before it stands.
        </p>
      )}
    </div>
  );
}

function Unmoved({ found, design }: { readonly found: Answers; readonly design: Design }) {
  const plan = useStore(improve, (state) => state.plan);
  const unit = useStore(view, (state) => state.unit);
  const still = (plan?.wishes ?? []).filter((_, i) => {
    const told = found.wishes[i];
    return told?.isMoved === false && !Number.isNaN(told.figure);
  });
  if (still.length === 0) return null;
  const names = still.map((wish) => wishWords(wish, design.margins, unit)).join('; ');
  return <p className="plan-doubt">Nothing that may move changes this: {names}.</p>;
}

/** Wishes that are wanted closer than the points, as measured, let them be known. */
function Unknown({ found, design }: { readonly found: Answers; readonly design: Design }) {
  const plan = useStore(improve, (state) => state.plan);
  const unit = useStore(view, (state) => state.unit);
  const names = (plan?.wishes ?? []).flatMap((wish, i) => {
    const known = found.wishes[i]?.knownTo ?? null;
    if (known === null || known <= wish.within) return [];
    return [`${wishWords(wish, design.margins, unit)}, ${knownWords(wish, known, design, unit)}`];
  });
  if (names.length === 0) return null;
  return (
    <p className="plan-doubt">
      From points as measured this is not known as closely as it is wanted: {names.join('; ')}.
      Trust tells what to measure again.
    </p>
  );
}

/** What is asked to hold and is broken already: it is said, lest it be taken for held. */
function SetAside({ found: { setAside } }: { readonly found: Answers }) {
  if (setAside.length === 0) return null;
  return (
    <p className="plan-doubt">
      Broken already in this design, so not held: {setAside.join('; ')}. To hold them as they are,
      ask that what is broken already gets no worse.
    </p>
  );
}

function noneWords({ cost, dropped }: Answers): string {
  if (cost < 1e-9) return 'All that is wanted is so already.';
  if (dropped > 0) {
    return 'Better places were found, but each of them breaks what must hold, or is no sound design. Widen the bounds, or hold less.';
  }
  return 'Nothing inside these bounds does better than the points as they are.';
}

function countWords(count: number): string {
  return count === 1 ? 'One answer.' : `${count} answers, the best first.`;
}

function Found({ found, design }: { readonly found: Answers | null; readonly design: Design }) {
  if (found === null) return <p>This design cannot be assembled as it is set.</p>;
  const { answers, starts, unbuilt } = found;
  return (
    <>
      <Unmoved found={found} design={design} />
      <Unknown found={found} design={design} />
      <SetAside found={found} />
      <p role="status">{answers.length === 0 ? noneWords(found) : countWords(answers.length)}</p>
      <ol className="answers">
        {answers.map((answer, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: their order is their name.
          <AnswerCard key={i} answer={answer} place={i + 1} design={design} />
        ))}
      </ol>
      <p className="plan-note">
        Looked from {starts} starts inside the bounds
        {unbuilt > 0 && `, ${unbuilt} of which cannot be built`}: the best that was found, and no
        proof that there is no better one. A cost is 0 where all is as wanted, and 1 where one wish
        misses by its give or take.
      </p>
    </>
  );
}

export function AnswerList({ design }: { readonly design: Design }) {
  const { stage, model, found } = useStore(improve);
  const isOnTrial = useStore(improve.trials, ({ trial }) => trial !== null);
  const isOfThis = isOnTrial || sameModel(model, design.model);
  return (
    <section className="plan-part" aria-labelledby="plan-answers">
      <h3 id="plan-answers">Answers</h3>
      {stage === 'running' ? <Running /> : <Start design={design} />}
      {stage === 'done' && isOfThis && <Found found={found} design={design} />}
      {stage === 'done' && !isOfThis && (
        <p className="plan-doubt">The design has changed since: look again.</p>
      )}
    </section>
  );
}
