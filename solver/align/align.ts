/** Alignment: the settings of cams, shims and tie rod that reach camber, caster and toe of the set pose with the least cam turn. */
import { assembleLinkage } from '../linkage/assemble.ts';
import type { Model } from '../model/model.ts';
import { type Aims, aimsOf, isWithin, missedKeys, NO_AIMS, soughtValues } from './aims.ts';
import type { AlignedAngles, AlignedKey, Alignment, AskedTargets, Setting } from './alignment.ts';
import { type Found, findSettings } from './found.ts';
import {
  fittingsOf,
  type PivotHardware,
  presentSettings,
  type Settings,
  withSettings,
} from './hardware.ts';
import { movable, type Stood } from './nearest.ts';
import { roundedSettings } from './rounded.ts';
import { createStance, type Stance } from './stance.ts';
import { standsAt } from './stands.ts';
import { workBetween } from './work.ts';

/** Share of the end at which hardware counts as run out. */
const RUN_OUT = 1 - 1e-9;

/** The model with every cam, shim and turn at 0. */
function centred(model: Model): Model {
  const none = fittingsOf(model).map(({ name }) => [name, 0] as const);
  return withSettings(model, { ...Object.fromEntries(none), tieRodTurns: 0 });
}

function settingOf(aims: Aims, settings: Settings, angles: AlignedAngles | null): Setting {
  return { settings, angles, isWithin: isWithin(aims, angles) };
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
function lacking(stance: Stance, aims: Aims, missed: readonly AlignedKey[]): AlignedKey[] {
  if (missed.length === 0) return [];
  const isShort = movable(stance).length < 2;
  return [
    ...missed.filter((key) => key !== 'toe' && isShort),
    ...(aims.toe.isHeld && !stance.setsToe ? (['toe'] as const) : []),
  ];
}

function refused(model: Model, aims: Aims, before: Setting): Alignment {
  const fails = standsAt(model).fails ?? standsAt(centred(model)).fails ?? 'lowerArm';
  const nothing = { reached: false, rounded: null, runsOut: [], lacks: [], work: [] };
  return { ...nothing, aims, before, after: before, fails };
}

function answered(stance: Stance, aims: Aims, before: Setting, found: Found): Alignment {
  const { model } = stance.linkage;
  const { settings, angles, stood } = found;
  const missed = missedKeys(aims, angles);
  const rounded = roundedSettings(stance, soughtValues(aims), before.settings, found);
  return {
    aims,
    reached: missed.length === 0,
    before,
    after: settingOf(aims, settings, angles),
    rounded: rounded && settingOf(aims, rounded, standsAt(withSettings(model, rounded)).angles),
    runsOut: missed.length === 0 ? [] : runOut(stance, stood),
    lacks: lacking(stance, aims, missed),
    fails: null,
    work: workBetween(model, before.settings, settings, rounded ?? settings),
  };
}

/**
 * Aligns a model at its set pose. A target left out is the model's own, or else stays as it is as far as there is hardware to
 * hold it. Of all settings that reach the targets to 1e-6 degrees, those with the least total turn of the cams from 0, each
 * within ±90 degrees; turns of the tie rod are free, and shims count only between settings of the same turn. When the targets
 * are out of reach: the nearest by the distance √(Δcamber² + Δcaster²) in degrees with toe held by the tie rod (with Δtoe² in
 * it where no pitch is stated), and what runs out or is lacking. Never throws; every number is finite.
 */
export function align(model: Model, asked: AskedTargets = {}): Alignment {
  const settings = presentSettings(model);
  const { angles } = standsAt(model);
  const home = angles ?? standsAt(centred(model)).angles;
  const aims = aimsOf(model, asked, home);
  if (aims === null) return refused(model, NO_AIMS, settingOf(NO_AIMS, settings, angles));
  const before = settingOf(aims, settings, angles);
  const stance = createStance(assembleLinkage(model));
  const found = findSettings(stance, soughtValues(aims), home?.toe ?? null);
  return found === null ? refused(model, aims, before) : answered(stance, aims, before, found);
}
