/** Answers to where a point may go: what a place comes to, how well the present one is known, and the best places. */
import { tidy } from '../cure/change.ts';
import type { Model, Vector3 } from '../model/model.ts';
import type { Steps } from '../stops/steps.ts';
import { bestIn } from './best.ts';
import { type Box, boxOf, type Room } from './box.ts';
import { type Fact, factsOf } from './facts.ts';
import { createJudge, type Judge, judgeAt, placeIn } from './judge.ts';
import type { Picture } from './picture.ts';
import { PLANE_AXES, type Question } from './question.ts';
import { uncertaintyOf, withPlace } from './subject.ts';

/** A place and all that is told of it. */
export interface Told {
  /** Coordinates along the plane's two axes, mm. */
  readonly at: readonly [number, number];
  readonly place: Vector3;
  /** What it is judged by (see `AIMS`), degrees; null where the corner cannot follow the whole stretch. */
  readonly value: number | null;
  /** Empty where it cannot be assembled. */
  readonly facts: readonly Fact[];
}

/** A best place, and what kept it from going farther. */
export interface Best extends Told {
  readonly room: Room;
  /** True where it stands on an edge of its box that has length: there may be better ones beyond. */
  readonly isAtEdge: boolean;
}

/** How well the present place is known, and what that is worth. */
export interface Known {
  /** One standard uncertainty of each coordinate, mm. */
  readonly sigma: number;
  /** [least, greatest] that the place is judged by within two of them, degrees; looked at around two circles. */
  readonly within: readonly [number, number];
}

function told(judge: Judge, [first, second]: readonly [number, number]): Told {
  const { model, question } = judge;
  const place = placeIn(judge, first, second);
  const value = judgeAt(judge, first, second);
  if (Number.isNaN(value)) return { at: [first, second], place, value: null, facts: [] };
  const facts = factsOf(withPlace(model, question.subject, place), question);
  return { at: [first, second], place, value, facts };
}

/** What the design comes to with the point at these coordinates of the plane. */
export function placeTold(model: Model, question: Question, at: readonly [number, number]): Told {
  return told(createJudge(model, question), at);
}

/** What the present place comes to. */
export function presentTold(model: Model, question: Question): Told {
  const judge = createJudge(model, question);
  const [i, j] = PLANE_AXES[question.plane];
  return told(judge, [judge.place[i]!, judge.place[j]!]);
}

const AROUND = 16;

/** How well the present place is known; null where the model states no tolerance. */
export function knownOf(model: Model, question: Question): Known | null {
  const sigma = uncertaintyOf(model, question.subject);
  if (sigma === null) return null;
  const judge = createJudge(model, question);
  const [i, j] = PLANE_AXES[question.plane];
  const [x, y] = [judge.place[i]!, judge.place[j]!];
  const values = [judgeAt(judge, x, y)];
  for (const radius of [sigma, 2 * sigma]) {
    for (let n = 0; n < AROUND; n += 1) {
      const angle = (2 * Math.PI * n) / AROUND;
      values.push(judgeAt(judge, x + radius * Math.cos(angle), y + radius * Math.sin(angle)));
    }
  }
  const reached = values.filter((value) => !Number.isNaN(value));
  return { sigma, within: [Math.min(...reached), Math.max(...reached)] };
}

const EDGE = 1e-3;

function isAtEdge({ first, second }: Box, [x, y]: readonly [number, number]): boolean {
  return [
    { side: first, at: x },
    { side: second, at: y },
  ].some(({ side, at }) => side[1] > side[0] && (at - side[0] < EDGE || side[1] - at < EDGE));
}

const ROOMS: readonly Room[] = ['picture', 'reach', 'first', 'second'];

/**
 * The best place in the whole picture, within reach, and within reach along either axis alone, with the model's numbers
 * to 0.0001 mm. Each is never worse than the present place by more than that rounding. The picture serves as a start.
 */
export function* bestsInSteps(
  model: Model,
  question: Question,
  picture: Picture | null,
): Steps<readonly Best[]> {
  const judge = createJudge(model, question);
  const bests: Best[] = [];
  for (const room of ROOMS) {
    const box = boxOf(judge, room);
    const { at } = bestIn(judge, box, picture);
    const isEdge = isAtEdge(box, at);
    bests.push({ ...told(judge, [tidy(at[0]), tidy(at[1])]), room, isAtEdge: isEdge });
    yield bests.length / ROOMS.length;
  }
  return bests;
}
