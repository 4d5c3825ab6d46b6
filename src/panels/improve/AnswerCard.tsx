/** One answer: what every wish makes of it, what moves, what holds, and the way to try and to keep it. */
import { useId, useState } from 'react';
import { useStore } from 'zustand';
import type { Answer, FloorAnswer } from '../../../solver/improve/answer.ts';
import { view } from '../../state/bench.ts';
import { designs } from '../../state/designs.ts';
import { improve } from '../../state/improved.ts';
import { fixed } from '../../words/format.ts';
import { Icon } from '../icons.tsx';
import { TrialButtons } from '../TrialButtons.tsx';
import { AnswerMoves, Besides } from './AnswerMoves.tsx';
import { AnswerWishes } from './AnswerWishes.tsx';
import type { Design } from './useDesign.ts';

function heldWords(floors: readonly FloorAnswer[], stays: number): string {
  const count = floors.length + stays;
  if (count === 0) return 'Bounds hold, and it can be built over its whole range.';
  const proven = floors.filter(({ holding }) => holding === 'proven').length;
  const rest = floors.length - proven;
  const how = rest === 0 ? 'proven' : `${proven} proven, ${rest} found and not proven`;
  return `All ${count} that must hold do${floors.length === 0 ? '' : `: ${how}`}.`;
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
      <TrialButtons
        title={title}
        isOn={isOn}
        onTry={() => improve.tryOn(answer)}
        onKeep={improve.keep}
        onTakeBack={improve.takeBack}
      />
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
      <AnswerWishes answer={answer} design={design} unit={unit} />
      <h5>What moves</h5>
      <AnswerMoves answer={answer} unit={unit} />
      <p className="answer-held">
        <Icon name="clear" />
        {heldWords(floors, stays.length)}
      </p>
      <Besides answer={answer} unit={unit} />
      <Buttons answer={answer} title={title} />
    </li>
  );
}
