/** A plan put to a design: its numbers, its present appraisal, and what every answer has to keep. Made once for a search. */
import type { MeshSurfaces } from '../clearance/mesh.ts';
import { assemble } from '../corner.ts';
import type { Model } from '../model/model.ts';
import type { Steps } from '../stops/steps.ts';
import { type Appraisal, appraiseInSteps } from './appraisal.ts';
import { type Moving, movedModel, movingOf } from './moving.ts';
import type { Plan, Wish } from './plan.ts';
import { figureOf } from './read.ts';
import { type Spot, valuesAt } from './spots.ts';

/** The least that a gap or margin must have, mm or degrees. */
export interface Floor {
  readonly key: string;
  readonly label: string;
  readonly unit: 'mm' | 'degree';
  readonly wanted: number;
  readonly isPair: boolean;
  /** What the present design has, and whether that is less than it should be. */
  readonly before: number;
  readonly isBroken: boolean;
}

export interface Question {
  readonly model: Model;
  readonly plan: Plan;
  readonly meshes: MeshSurfaces | undefined;
  readonly moving: Moving;
  readonly before: Appraisal;
  readonly floors: readonly Floor[];
  /** By wish: whether the design has such a thing, and whether anything that may move changes it. */
  readonly readable: readonly boolean[];
  readonly isMoved: readonly boolean[];
  /** Where gaps and margins are known to be low. */
  readonly spots: readonly Spot[];
}

/** Share of its bounds by which a number is moved to see what it changes, and the change that counts. */
const NUDGE = 0.02;
const CHANGED = 1e-9;
/** Gaps and margins this far above what they need are not looked at until a search brings them near, mm or degrees. */
const NEAR = 12;

function floorsOf({ survey }: Appraisal, { holds }: Plan): readonly Floor[] {
  return survey.leasts.flatMap(({ key, label, unit, value, required, isPair }): Floor[] => {
    const isBroken = value < required;
    if (!(isPair ? holds.gaps : holds.limits) || (isBroken && !holds.broken)) return [];
    const wanted = isBroken ? value : required;
    return [{ key, label, unit, wanted, isPair, before: value, isBroken }];
  });
}

/** Gaps and limits asked to hold that the present design breaks, where what is broken is not held: their labels. */
export function setAsideOf({ survey }: Appraisal, { holds }: Plan): readonly string[] {
  if (holds.broken) return [];
  return survey.leasts
    .filter(({ value, required, isPair }) => {
      return value < required && (isPair ? holds.gaps : holds.limits);
    })
    .map(({ label }) => label);
}

/** The gap or margin of a wish for one at its present worst place, or else the wish's own figure. */
function told(
  model: Model,
  wish: Wish,
  spots: readonly Spot[],
  meshes: MeshSurfaces | undefined,
): number {
  const corner = assemble(model);
  if (wish.of !== 'least') return figureOf(corner, wish);
  return (
    valuesAt(
      corner,
      spots.filter(({ key }) => key === wish.key),
      meshes,
    )[0] ?? Number.NaN
  );
}

function movedBy(
  model: Model,
  moving: Moving,
  wish: Wish,
  spots: readonly Spot[],
  meshes: MeshSurfaces | undefined,
): boolean {
  const here = told(model, wish, spots, meshes);
  return moving.present.some((_, at) => {
    const by = NUDGE * (moving.high[at]! - moving.low[at]!);
    const x = moving.present.map((each, i) => (i === at ? each + by : each));
    const there = told(movedModel(model, moving, x), wish, spots, meshes);
    return Math.abs(there - here) > CHANGED * Math.max(1, Math.abs(here));
  });
}

/** Puts a plan to a sound model; null where the model cannot be assembled. */
export function* questionInSteps(
  model: Model,
  plan: Plan,
  meshes: MeshSurfaces | undefined,
): Steps<Question | null> {
  const before = yield* appraiseInSteps(model, plan, meshes);
  if (before === null) return null;
  const moving = movingOf(model, plan.movers);
  const floors = floorsOf(before, plan);
  const wished = new Set(plan.wishes.map((wish) => (wish.of === 'least' ? wish.key : '')));
  const low = new Map(floors.map(({ key, wanted }) => [key, wanted + NEAR]));
  const spots = before.survey.leasts
    .filter(
      ({ key, value }) => wished.has(key) || value < (low.get(key) ?? Number.NEGATIVE_INFINITY),
    )
    .map(({ key, travel, rack }) => ({ key, travel, rack }));
  const readable = before.wishes.map(({ cost }) => Number.isFinite(cost));
  const isMoved = plan.wishes.map(
    (wish, i) => readable[i]! && movedBy(model, moving, wish, spots, meshes),
  );
  return { model, plan, meshes, moving, before, floors, readable, isMoved, spots };
}
