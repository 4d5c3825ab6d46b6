/** Every kind of smallest single change for a pair or limit that fails, worked out in steps and proven. */
import type { MeshSurfaces } from '../clearance/mesh.ts';
import type { Model } from '../model/model.ts';
import type { Steps } from '../stops/steps.ts';
import { type Aim, aimOf, provenLeast, type Standing, standingOf } from './aim.ts';
import type { Change } from './change.ts';
import { CURE_KINDS, type Cure, type CureKind, type Cures } from './cure.ts';
import { movesBetween, type Survey, surveyInSteps, worsenedBetween } from './effects.ts';
import { PART_CHANGES } from './partChanges.ts';
import { rackChanges, stopChanges } from './rangeChanges.ts';
import { bendChanges } from './rodBend.ts';
import { type Smallest, smallestOf, type Tried, tried } from './smallest.ts';

/** How often a change is enlarged until its proof holds, and by how much at the least, mm. */
const NUDGES = 6;
const NUDGE = 0.01;
/** Amounts are rounded up to so much, mm: the finer where they are small. */
const FINE = 0.01;
const COARSE = 0.1;
const COARSE_FROM = 4;
/** Another way of the same kind must do with this share: both locks stopped are no better than one. */
const BETTER = 0.98;
/** Rounding of sums of tenths. */
const DUST = 1e-9;

/**
 * Parts that must be one of the pair for a kind to be a cure of it. Travel is the wheel centre's, which a spacer moves a little:
 * it would pass for a cure of a coilover, whose length it cannot change.
 */
const OF_PART: Readonly<Partial<Record<CureKind, readonly string[]>>> = {
  spacer: ['wheel', 'tyre'],
  wheelOffset: ['wheel', 'tyre'],
  rodBend: ['tieRod'],
  rodDiameter: ['tieRod'],
  coiloverTop: ['coilover', 'coilover.minLength', 'coilover.maxLength'],
  coiloverBottom: ['coilover', 'coilover.minLength', 'coilover.maxLength'],
};

function applies(kind: CureKind, { key }: Aim): boolean {
  const parts = OF_PART[kind];
  return parts === undefined || key.split('/').some((name) => parts.includes(name));
}

function changesOf(kind: CureKind, start: Standing, aim: Aim): Change[] {
  if (!applies(kind, aim)) return [];
  if (kind === 'rackLimit') return rackChanges(start.corner);
  if (kind === 'bumpStop') return stopChanges(start.corner, 'bump');
  if (kind === 'droopStop') return stopChanges(start.corner, 'droop');
  if (kind === 'rodBend') return bendChanges(start, aim);
  return PART_CHANGES[kind]?.(start.corner) ?? [];
}

/** An amount that can be marked out, rounded up. */
function markable(amount: number): number {
  const step = amount >= COARSE_FROM ? COARSE : FINE;
  return Number((Math.ceil(amount / step - DUST) * step).toFixed(2));
}

/** The smallest of the changes of one kind. */
function* smallestOfKind(changes: readonly Change[], aim: Aim, start: Standing): Steps<Smallest> {
  let reached: Tried | null = null;
  let best: Tried | null = null;
  for (const change of changes) {
    const better = reached === null ? Number.POSITIVE_INFINITY : BETTER * reached.amount;
    const most = Math.min(change.most, better);
    const found: Smallest = yield* smallestOf(change, most, aim, start);
    if (found.reached !== null) reached = found.reached;
    else if (found.best !== null && found.best.standing.least > (best?.standing.least ?? -Infinity))
      best = found.best;
  }
  return { reached, best };
}

/** Rounded up, and enlarged until the proof holds. */
function* provenFrom(
  found: Tried,
  aim: Aim,
  start: Standing,
): Steps<{ tried: Tried; isProven: boolean }> {
  const { change } = found;
  let amount = Math.min(change.most, markable(found.amount));
  let now = tried(change, amount, aim, start) ?? found;
  for (let nudge = 0; nudge < NUDGES; nudge += 1) {
    const proven = yield* provenLeast(now.standing, aim);
    if (proven >= aim.wanted) return { tried: now, isProven: true };
    if (!Number.isFinite(proven)) break;
    const slope = (now.standing.least - start.least) / Math.max(now.amount, FINE);
    const deficit = slope > 0 ? (aim.wanted - proven) / slope : 0;
    amount = markable(now.amount + Math.max(NUDGE, Math.min(deficit, 1)));
    const next = amount > change.most ? null : tried(change, amount, aim, start);
    if (next === null) break;
    now = next;
  }
  return { tried: now, isProven: false };
}

function cureFrom({ change, amount, standing }: Tried): Omit<Cure, 'reaches' | 'isProven'> {
  return {
    kind: change.kind,
    says: change.says(amount),
    amount,
    settings: change.settings(amount),
    model: change.at(amount),
    least: standing.least,
    moves: [],
    worsened: [],
  };
}

function* cureOfKind(
  kind: CureKind,
  aim: Aim,
  start: Standing,
  before: Survey,
): Steps<Cure | null> {
  const { reached, best } = yield* smallestOfKind(changesOf(kind, start, aim), aim, start);
  if (reached === null) {
    return best === null ? null : { ...cureFrom(best), reaches: false, isProven: false };
  }
  const { tried: now, isProven } = yield* provenFrom(reached, aim, start);
  const after = yield* surveyInSteps(now.standing.corner, aim.meshes);
  return {
    ...cureFrom(now),
    reaches: true,
    isProven,
    moves: movesBetween(before, after),
    worsened: worsenedBetween(before, after, aim.key),
  };
}

/** Tells the same progress at every step of a part. */
function* telling<T>(steps: Steps<T>, progress: number): Steps<T> {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield progress;
  }
}

/**
 * Solves for the smallest change of each kind that brings a pair to its wanted gap, or a limit to a margin of no less than 0,
 * over the whole range of travel and rack that the model states. Kinds that do nothing for it are left out. null where
 * the model has no such pair or limit, cannot be assembled, or has nothing to cure.
 */
export function* curesInSteps(
  model: Model,
  key: string,
  meshes?: MeshSurfaces,
  kinds: readonly CureKind[] = CURE_KINDS,
): Steps<Cures | null> {
  const aim = aimOf(model, key, meshes);
  const start = aim === null ? null : standingOf(model, aim);
  if (aim === null || start === null || start.least >= aim.wanted) return null;
  const before = yield* telling(surveyInSteps(start.corner, meshes), 0);
  const cures: Cure[] = [];
  for (const [index, kind] of kinds.entries()) {
    const progress = (index + 1) / (kinds.length + 1);
    const cure = yield* telling(cureOfKind(kind, aim, start, before), progress);
    if (cure !== null) cures.push(cure);
  }
  const { wanted, unit } = aim;
  const sorted = [...cures].sort((a, b) => Number(b.reaches) - Number(a.reaches));
  return { key, least: start.least, wanted, unit, cures: sorted };
}
