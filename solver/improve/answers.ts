/** From the places that searches came to, the few answers that are shown: rounded, appraised, proven, never worse than the start. */

import type { Moved } from '../cure/cure.ts';
import { movesBetween, TOE_CHANGE, worsenedBetween } from '../cure/effects.ts';
import type { Model } from '../model/model.ts';
import { readModel } from '../model/parse.ts';
import { type Steps, within } from '../stops/steps.ts';
import type { Answer, Answers } from './answer.ts';
import { type Appraisal, appraiseInSteps } from './appraisal.ts';
import { dimensionValue, isStill, withoutDust } from './dimension.ts';
import { ALIKE, distinctOf } from './distinct.ts';
import { floorAnswers, provenInSteps } from './holding.ts';
import { knownTo } from './known.ts';
import { movedModel } from './moving.ts';
import { type Question, setAsideOf } from './question.ts';
import { type Candidate, newSpots, refineInSteps, searchInSteps, startsOf } from './search.ts';

/** Answers that are shown at most. */
const MOST_ANSWERS = 4;
/** Numbers are rounded to what can be marked out, mm or degrees. */
const MARK = 0.01;
/** How often a place is mended where a gap or margin turns out low between the places looked at. */
const MENDS = 3;
/** A better answer saves at least this share of the cost. */
const BETTER = 0.999;
/** Rounding of what is to stay. */
const DUST = 1e-6;

/** A number that can be marked out, inside its bounds. */
function marked(value: number, low: number, high: number): number {
  const rounded = Number((Math.round(value / MARK) * MARK).toFixed(2));
  return rounded < low || rounded > high ? value : rounded;
}

/** A place rounded to what can be marked out, and appraised; null where it is no sound design, or none that can be built. */
function* roundedInSteps(
  { model, plan, meshes, moving }: Question,
  { x }: Candidate,
): Steps<{ readonly x: readonly number[]; readonly after: Appraisal } | null> {
  const rounded = x.map((each, i) => marked(each, moving.low[i]!, moving.high[i]!));
  const read = readModel(withoutDust(movedModel(model, moving, rounded), model), '');
  if (!read.ok) return null;
  const after = yield* appraiseInSteps(read.model, plan, meshes);
  return after === null ? null : { x: rounded, after };
}

/** The design of a place, mended where its survey finds a gap or margin low that the search did not see. */
function* mendedInSteps(question: Question, from: Candidate) {
  let now = from;
  let found = yield* roundedInSteps(question, now);
  for (let mend = 0; mend < MENDS && found !== null; mend += 1) {
    const added = newSpots(question, now.spots, found.after.survey.leasts);
    if (added.length === 0) break;
    const next: Candidate | null = yield* refineInSteps(question, {
      ...now,
      spots: [...now.spots, ...added],
    });
    if (next === null) break;
    now = next;
    found = yield* roundedInSteps(question, now);
  }
  return found;
}

function movesOf({ model, moving }: Question, after: Model): readonly Moved[] {
  return moving.dimensions.flat().flatMap((dimension): Moved[] => {
    const [was, is] = [dimensionValue(model, dimension), dimensionValue(after, dimension)];
    const { label, unit } = dimension;
    return isStill(was, is) ? [] : [{ label, before: was, after: is, unit }];
  });
}

function* answerInSteps(question: Question, x: readonly number[], after: Appraisal): Steps<Answer> {
  const { before, plan, meshes, floors } = question;
  const wished = plan.wishes.flatMap((wish) => (wish.of === 'least' ? [wish.key] : []));
  const keys = [...floors.map(({ key }) => key), ...wished];
  const bounds = yield* provenInSteps(after.corner, keys, meshes);
  const held = floorAnswers(floors, after, bounds);
  const stays = plan.holds.stays.map(({ within }, i) => {
    const [was, is] = [before.stays[i]!, after.stays[i]!];
    const isKept = Number.isNaN(was) || Math.abs(is - was) <= within * (1 + DUST) + DUST;
    return { before: was, after: is, isKept };
  });
  const labels = new Set(held.map(({ label }) => label));
  return {
    model: after.model,
    values: x,
    moves: movesOf(question, after.model),
    wishes: plan.wishes.map((wish, i) => ({
      wish,
      before: before.wishes[i]!,
      after: after.wishes[i]!,
      provenAtLeast:
        wish.of === 'least' ? (bounds.get(wish.key) ?? Number.NEGATIVE_INFINITY) : null,
    })),
    cost: { before: before.cost, after: after.cost },
    floors: held,
    stays,
    holds:
      held.every(({ holding }) => holding !== 'broken') &&
      stays.every(({ isKept }) => isKept) &&
      after.unreached <= before.unreached,
    effects: movesBetween(before.survey, after.survey).filter(
      // The same word for another count of it, greatest less least, would only confuse.
      ({ label }) => label !== TOE_CHANGE || !plan.wishes.some(({ of }) => of === 'toeChange'),
    ),
    worsened: worsenedBetween(before.survey, after.survey, '').filter(
      ({ label }) => !labels.has(label),
    ),
  };
}

/** By cost; those that cost alike stay in the order of how far they move. */
function inOrder(answers: readonly Answer[]): readonly Answer[] {
  const least = Math.min(...answers.map(({ cost }) => cost.after));
  const step = Math.max(1e-9, ALIKE * ((answers[0]?.cost.before ?? 0) - least));
  const rank = ({ cost }: Answer): number => Math.round((cost.after - least) / step);
  return [...answers].sort((a, b) => rank(a) - rank(b));
}

/** The answers among the candidates of all starts. None is worse than the present design, and none breaks what must hold. */
export function* answersInSteps(
  question: Question,
  candidates: readonly (Candidate | null)[],
): Steps<Answers> {
  const { before, moving, isMoved } = question;
  const found = candidates.filter((each) => each !== null);
  const distinct = distinctOf(found, moving, before.cost / 2);
  const answers: Answer[] = [];
  const known = knownTo(before.corner, question.plan.wishes);
  let dropped = 0;
  for (const [i, candidate] of distinct.entries()) {
    if (answers.length >= MOST_ANSWERS) break;
    const [from, share] = [i / distinct.length, 0.5 / distinct.length];
    const mended = yield* within(mendedInSteps(question, candidate), from, share);
    if (mended === null) dropped += 1;
    if (mended === null || !(mended.after.cost < BETTER * before.cost)) continue;
    const answer = yield* within(
      answerInSteps(question, mended.x, mended.after),
      from + share,
      share,
    );
    if (answer.holds) answers.push(answer);
    else dropped += 1;
  }
  return {
    answers: inOrder(answers),
    cost: before.cost,
    wishes: before.wishes.map((each, i) => ({
      ...each,
      isMoved: isMoved[i]!,
      knownTo: known[i]!,
    })),
    starts: candidates.length,
    unbuilt: candidates.length - found.length,
    setAside: setAsideOf(before, question.plan),
    dropped,
  };
}

/** Searches from every start and answers. Workers share the starts out instead. */
export function* improveInSteps(question: Question): Steps<Answers> {
  const count = startsOf(question);
  const candidates: (Candidate | null)[] = [];
  for (let start = 0; start < count; start += 1) {
    yield start / count;
    candidates.push(yield* searchInSteps(question, start));
  }
  return yield* answersInSteps(question, candidates);
}
