/** Alignment: the settings of cams, shims and tie rod that reach camber, caster and toe of the set pose with the least cam turn. */
import { assembleLinkage } from '../linkage/assemble.ts';
import { distance } from '../math/vec3.ts';
import type { Model } from '../model/model.ts';
import { degrees, radians } from '../units.ts';
import {
  type Aimed,
  ALIGNED_KEYS,
  type AlignedAngles,
  type AlignedKey,
  type Alignment,
  type AskedTargets,
  type Setting,
} from './alignment.ts';
import {
  fittingsOf,
  type PivotHardware,
  presentSettings,
  type Settings,
  withSettings,
} from './hardware.ts';
import { leastTurns } from './least.ts';
import { movable, type Nearest, nearestTo, type Stood, walkTo } from './nearest.ts';
import { createStance, hold, rodLength, type Stance } from './stance.ts';
import { type Stands, standsAt } from './stands.ts';
import { totalTurn } from './turn.ts';
import { inWholeCounts, inWholeFlats, isCounted, workBetween } from './work.ts';

/** Degrees within which a target counts as reached: the contract's. */
const REACHED = 1e-6;
/** Shares this close to 0 or to an end are there: rounding. */
const DUST = 1e-11;
/** Share of the end at which hardware counts as run out. */
const RUN_OUT = 1 - 1e-9;
/** Halvings of the way to a toe that the tie rod cannot hold. */
const HALVINGS = 24;
/** Less turn than this, rad, is a gain where only the nearest can be reached: rounding at ±90 degrees is worth some 1e-4. */
const LESS = 1e-3;

type Aims = Alignment['aims'];

function settingOf(
  fitting: { readonly kind: 'cam' | 'shim'; readonly reach: number },
  share: number,
): number {
  if (Math.abs(share) < DUST) return 0;
  return fitting.kind === 'shim' ? share * fitting.reach : degrees(Math.asin(share));
}

/** Shares of the links for settings, in the order of `Stance.arms`. */
function sharesOf({ arms }: Stance, settings: Settings): number[] {
  return arms.map(({ fitting, reach }) => {
    if (fitting === null) return 0;
    const setting = settings[fitting.name] ?? 0;
    return fitting.kind === 'shim' ? setting / reach : Math.sin(radians(setting));
  });
}

/** Turns that give the tie rod its length at a place; those of the model where it has no pitch. */
function turnsAt(stance: Stance, { place }: Stood): number {
  const { tieRod } = stance.linkage.model;
  const held = hold(stance, place.camber, place.caster, place.toe);
  if (tieRod.pitch === undefined || held === null) return tieRod.turns ?? 0;
  return (rodLength(stance, held, place.p) - distance(tieRod.inner, tieRod.outer)) / tieRod.pitch;
}

function settingsAt(stance: Stance, stood: Stood): Settings {
  const set = fittingsOf(stance.linkage.model).map(({ name }) => {
    const place = stance.arms.findIndex((link) => link.fitting?.name === name);
    const fitting = stance.arms[place]?.fitting;
    return [name, fitting ? settingOf(fitting, stood.shares[place]!) : 0] as const;
  });
  return { ...Object.fromEntries(set), tieRodTurns: turnsAt(stance, stood) };
}

function isClose(a: AlignedAngles, b: AlignedAngles): boolean {
  return ALIGNED_KEYS.every((key) => Math.abs(a[key] - b[key]) <= REACHED);
}

/** Targets in force. What is not stated stays as it is; where the corner cannot stand as it is, as with all settings at 0. */
function aimsOf(model: Model, asked: AskedTargets, now: AlignedAngles | null): Aims | null {
  const entries = ALIGNED_KEYS.map((key): readonly [AlignedKey, Aimed] | null => {
    const stated = model.targets?.[key];
    const plusMinus = stated?.plusMinus ?? null;
    const value = asked[key];
    if (value !== undefined) return [key, { value, from: 'asked', plusMinus }];
    if (stated !== undefined) return [key, { value: stated.value, from: 'file', plusMinus }];
    return now === null ? null : [key, { value: now[key], from: 'asItIs', plusMinus }];
  });
  if (entries.includes(null)) return null;
  return Object.fromEntries(entries as (readonly [AlignedKey, Aimed])[]) as unknown as Aims;
}

function valuesOf(aims: Aims): AlignedAngles {
  const { camber, caster, toe } = aims;
  return { camber: camber.value, caster: caster.value, toe: toe.value };
}

/** Whether angles lie within the tolerances that there are; null where there is nothing to tell. */
function isWithin(aims: Aims | null, angles: AlignedAngles | null): boolean | null {
  const stated = ALIGNED_KEYS.filter((key) => aims !== null && aims[key].plusMinus !== null);
  if (aims === null || angles === null || stated.length === 0) return null;
  return stated.every((key) => {
    const { value, plusMinus } = aims[key];
    return Math.abs(angles[key] - value) <= plusMinus! + REACHED;
  });
}

/** Settings that were found, and the angles they really give. */
interface Found {
  readonly stood: Stood;
  readonly settings: Settings;
  readonly angles: AlignedAngles;
}

/** The first of the settings sought that the linkage itself, from its design pose on, confirms. */
function firstConfirmed(stance: Stance, sought: readonly Stood[]): Found | null {
  for (const stood of sought) {
    const settings = settingsAt(stance, stood);
    const { angles } = standsAt(withSettings(stance.linkage.model, settings));
    const { camber, caster, toe } = stood.place;
    const meant = { camber: degrees(camber), caster: degrees(caster), toe: degrees(toe) };
    if (angles !== null && isClose(angles, meant)) return { stood, settings, angles };
  }
  return null;
}

function byTurn({ arms }: Stance, sought: readonly Stood[]): Stood[] {
  return [...sought].sort((a, b) => totalTurn(arms, a.shares) - totalTurn(arms, b.shares));
}

/** The least turn that reaches the targets, or else what comes nearest, with the least turn that does. */
function found(stance: Stance, targets: AlignedAngles, nearest: Nearest): Found | null {
  if (degrees(nearest.miss) <= REACHED) {
    return firstConfirmed(stance, byTurn(stance, leastTurns(stance, targets, nearest)));
  }
  const { place, shares } = nearest;
  const there = {
    camber: degrees(place.camber),
    caster: degrees(place.caster),
    toe: degrees(place.toe),
  };
  const turn = totalTurn(stance.arms, shares);
  const less = leastTurns(stance, there, nearest).filter(
    (each) => totalTurn(stance.arms, each.shares) < turn - LESS,
  );
  return firstConfirmed(stance, [...byTurn(stance, less), nearest]);
}

/** As `found`; a toe that the tie rod cannot hold is gone towards as far as it can. */
function soughtFor(
  stance: Stance,
  targets: AlignedAngles,
  home: AlignedAngles | null,
): Found | null {
  const attempt = (toe: number, isLight: boolean): Found | null => {
    const there = { ...targets, toe };
    const nearest = nearestTo(stance, there, isLight);
    if (nearest === null) return null;
    return isLight ? firstConfirmed(stance, [nearest]) : found(stance, there, nearest);
  };
  const direct = attempt(targets.toe, false);
  if (direct !== null || !stance.setsToe || home === null) return direct;
  let [inside, outside] = [home.toe, targets.toe];
  for (let count = 0; count < HALVINGS; count += 1) {
    const middle = (inside + outside) / 2;
    if (attempt(middle, true) === null) outside = middle;
    else inside = middle;
  }
  return attempt(inside, false) ?? attempt(inside, true);
}

function runOut(stance: Stance, { shares }: Stood): PivotHardware[] {
  return movable(stance).flatMap((link) => {
    const { fitting, range } = stance.arms[link]!;
    const share = shares[link]!;
    const isOut = Math.abs(share) > RUN_OUT || (fitting!.kind === 'shim' && share <= range[0]);
    return isOut ? [fitting!.name] : [];
  });
}

/** Targets missed for want of hardware: toe without a thread, camber and caster with fewer than two pivots to move. */
function lacking(stance: Stance, aims: Aims, angles: AlignedAngles): AlignedKey[] {
  const missed = ALIGNED_KEYS.filter((key) => Math.abs(angles[key] - aims[key].value) > REACHED);
  if (missed.length === 0) return [];
  return [
    ...missed.filter((key) => key !== 'toe' && movable(stance).length < 2),
    ...(stance.setsToe ? [] : (['toe'] as const)),
  ];
}

/** The settings in whole marks, shims and flats, toe set last for them. */
function roundedTo(
  stance: Stance,
  aims: Aims,
  now: Settings,
  { stood, settings }: Found,
): Setting | null {
  const { model } = stance.linkage;
  if (!isCounted(model)) return null;
  const whole = inWholeCounts(model, now, settings);
  const toe = stance.setsToe ? stood.place.toe : null;
  const shares = sharesOf(stance, whole);
  const place = walkTo(stance, toe, stood, shares);
  const turns = place === null ? settings.tieRodTurns : turnsAt(stance, { shares, place });
  const rounded = { ...whole, tieRodTurns: inWholeFlats(model, now.tieRodTurns, turns) };
  const { angles } = standsAt(withSettings(model, rounded));
  return { settings: rounded, angles, isWithin: isWithin(aims, angles) };
}

function refused(model: Model, aims: Aims | null, now: Settings, stands: Stands): Alignment {
  const before = { settings: now, angles: stands.angles, isWithin: isWithin(aims, stands.angles) };
  const none: Aimed = { value: 0, from: 'asItIs', plusMinus: null };
  return {
    aims: aims ?? { camber: none, caster: none, toe: none },
    reached: false,
    before,
    after: before,
    rounded: null,
    runsOut: [],
    lacks: [],
    fails: stands.fails ?? standsAt(withoutSettings(model)).fails ?? 'lowerArm',
    work: [],
  };
}

function withoutSettings(model: Model): Model {
  const none = fittingsOf(model).map(({ name }) => [name, 0] as const);
  return withSettings(model, { ...Object.fromEntries(none), tieRodTurns: 0 });
}

/**
 * Aligns a model at its set pose. A target left out is the model's own, or else stays as it is. Of all settings that reach the
 * targets to 1e-6 degrees, those with the least total turn of the cams from 0, each within ±90 degrees; turns of the tie rod
 * are free, and shims count only between settings of the same turn. When the targets are out of reach: the nearest by the
 * distance √(Δcamber² + Δcaster²) in degrees with toe held by the tie rod (with Δtoe² where no pitch is stated), and what runs
 * out or is lacking. Never throws; every number is finite.
 */
export function align(model: Model, asked: AskedTargets = {}): Alignment {
  const now = presentSettings(model);
  const stands = standsAt(model);
  const home = stands.angles ?? standsAt(withoutSettings(model)).angles;
  const aims = aimsOf(model, asked, home);
  if (aims === null) return refused(model, null, now, stands);
  const stance = createStance(assembleLinkage(model));
  const best = soughtFor(stance, valuesOf(aims), home);
  if (best === null) return refused(model, aims, now, stands);
  const { settings, angles } = best;
  const reached = isClose(angles, valuesOf(aims));
  const rounded = roundedTo(stance, aims, now, best);
  return {
    aims,
    reached,
    before: { settings: now, angles: stands.angles, isWithin: isWithin(aims, stands.angles) },
    after: { settings, angles, isWithin: isWithin(aims, angles) },
    rounded,
    runsOut: reached ? [] : runOut(stance, best.stood),
    lacks: lacking(stance, aims, angles),
    fails: null,
    work: workBetween(model, now, settings, rounded?.settings ?? settings),
  };
}
