/** What every wish makes of an answer: figures and costs before and after, and how it stands. */
import { useStore } from 'zustand';
import type { Answer, WishAnswer } from '../../../solver/improve/answer.ts';
import { missOf } from '../../../solver/improve/read.ts';
import { improve } from '../../state/improved.ts';
import type { LengthUnit } from '../../state/view.ts';
import { fixed } from '../../words/format.ts';
import { quantityOf } from '../../words/quantity.ts';
import { Icon } from '../icons.tsx';
import type { Design } from './useDesign.ts';
import { knownWords, wishKind, wishSense, wishWords } from './words.ts';

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
  known,
  design,
  unit,
}: {
  answer: WishAnswer;
  known: number | null;
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
      <th scope="row">
        {wishWords(wish, design.margins, unit)}
        {known !== null && <small> known to {knownWords(wish, known, design, unit)}</small>}
      </th>
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

export function AnswerWishes({
  answer,
  design,
  unit,
}: {
  answer: Answer;
  design: Design;
  unit: LengthUnit;
}) {
  const known = useStore(improve, ({ found }) => found?.wishes);
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
          <WishLine
            // biome-ignore lint/suspicious/noArrayIndexKey: wishes have no other name, and an answer's never change.
            key={i}
            answer={each}
            known={known?.[i]?.knownTo ?? null}
            design={design}
            unit={unit}
          />
        ))}
      </tbody>
    </table>
  );
}
