/** How a design does by a plan: a figure and a cost for every wish, and all that must hold. */
import { certifiedRange } from '../certify/range.ts';
import type { MeshSurfaces } from '../clearance/mesh.ts';
import { assemble, type Corner } from '../corner.ts';
import { unreachedIn } from '../cure/aim.ts';
import { type Survey, surveyInSteps } from '../cure/effects.ts';
import type { Model } from '../model/model.ts';
import type { Steps } from '../stops/steps.ts';
import type { Plan, Wish } from './plan.ts';
import { figureOf, missesOf, missOf, stayAt } from './read.ts';

/** A wish's figure and what it costs; NaN both where the design has no such thing. */
export interface Judged {
  readonly figure: number;
  readonly cost: number;
}

export interface Appraisal {
  readonly model: Model;
  readonly corner: Corner;
  /** In the order of the plan's wishes and stays. */
  readonly wishes: readonly Judged[];
  readonly stays: readonly number[];
  /** The sum of all costs that can be told. */
  readonly cost: number;
  readonly survey: Survey;
  /** Places of a coarse grid over the range that are out of the linkage's reach. */
  readonly unreached: number;
}

function squares(values: Float64Array): number {
  return values.reduce((sum, each) => sum + each * each, 0);
}

/** The cost of the least of a gap or margin: 0 from its value on. */
export function costOfLeast({ value, within, matters }: Wish, least: number): number {
  return matters * (missOf(least, value, 'atLeast') / within) ** 2;
}

function judged(corner: Corner, survey: Survey, wish: Wish): Judged {
  if (wish.of !== 'least') {
    return { figure: figureOf(corner, wish), cost: squares(missesOf(corner, wish)) };
  }
  const figure = survey.leasts.find(({ key }) => key === wish.key)?.value ?? Number.NaN;
  return { figure, cost: costOfLeast(wish, figure) };
}

/** Appraises a sound model; null where it cannot be assembled. */
export function* appraiseInSteps(
  model: Model,
  { wishes, holds }: Plan,
  meshes: MeshSurfaces | undefined,
): Steps<Appraisal | null> {
  const corner = assemble(model);
  if (corner.linkage.broken !== null) return null;
  const survey = yield* surveyInSteps(corner, meshes);
  const each = wishes.map((wish) => judged(corner, survey, wish));
  return {
    model,
    corner,
    wishes: each,
    stays: holds.stays.map((stay) => stayAt(corner, stay)),
    cost: each.reduce((sum, { cost }) => sum + (Number.isFinite(cost) ? cost : 0), 0),
    survey,
    unreached: unreachedIn(corner, certifiedRange(model)),
  };
}
