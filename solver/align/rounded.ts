/** Settings in whole marks, shims and flats: of the whole counts on either side those that come nearest, toe set last for them. */
import type { Model } from '../model/model.ts';
import { radians } from '../units.ts';
import type { AskedTargets } from './alignment.ts';
import type { Found } from './found.ts';
import { type Fitting, fittingsOf, type Settings } from './hardware.ts';
import { type Stood, walkTo } from './nearest.ts';
import { sharesOf, turnsAt } from './shares.ts';
import type { Stance } from './stance.ts';

/** A count this close to a whole one is whole. */
const WHOLE = 1e-6;

/** True when the model says of any of its hardware what is counted at it. */
export function isCounted({ tieRod, ...model }: Model): boolean {
  const hasFlats = tieRod.flats !== undefined && tieRod.pitch !== undefined;
  return hasFlats || fittingsOf({ tieRod, ...model }).some(({ step }) => step !== null);
}

/** The settings a whole count from now, within the range, on either side of the one wanted. */
function wholeSettings({ name, step, range }: Fitting, now: Settings, wanted: Settings): number[] {
  const [from, to] = [now[name] ?? 0, wanted[name] ?? 0];
  if (step === null) return [to];
  const exact = (to - from) / step;
  const counts = [...new Set([Math.floor(exact + WHOLE), Math.ceil(exact - WHOLE)])];
  const settings = counts
    .map((count) => from + count * step)
    .filter((setting) => setting >= range[0] - WHOLE && setting <= range[1] + WHOLE);
  return settings.length === 0 ? [to] : settings;
}

function combinations(model: Model, now: Settings, wanted: Settings): Settings[] {
  return fittingsOf(model).reduce<Settings[]>(
    (all, fitting) =>
      wholeSettings(fitting, now, wanted).flatMap((setting) =>
        all.map((rest) => ({ ...rest, [fitting.name]: setting })),
      ),
    [{ tieRodTurns: wanted.tieRodTurns }],
  );
}

function missOf({ place }: Stood, targets: AskedTargets): number {
  return (['camber', 'caster'] as const).reduce((sum, key) => {
    const target = targets[key];
    return target === undefined ? sum : Math.hypot(sum, place[key] - radians(target));
  }, 0);
}

/** Turns of the tie rod in whole flats from where it is now. */
function inWholeFlats({ tieRod }: Model, now: number, wanted: number): number {
  if (tieRod.flats === undefined) return wanted;
  return now + Math.round((wanted - now) * tieRod.flats) / tieRod.flats;
}

/** The settings found in whole counts from those now; null where nothing is counted. */
export function roundedSettings(
  stance: Stance,
  targets: AskedTargets,
  now: Settings,
  { stood, settings }: Found,
): Settings | null {
  const { model } = stance.linkage;
  if (!isCounted(model)) return null;
  const toe = stance.setsToe ? stood.place.toe : null;
  const tried = combinations(model, now, settings).flatMap((whole) => {
    const shares = sharesOf(stance, whole);
    const place = walkTo(stance, toe, stood, shares);
    return place === null ? [] : [{ whole, at: { shares, place } }];
  });
  const best = tried.reduce<(typeof tried)[number] | null>(
    (kept, each) =>
      kept === null || missOf(each.at, targets) < missOf(kept.at, targets) ? each : kept,
    null,
  );
  if (best === null) return null;
  const turns = inWholeFlats(model, now.tieRodTurns, turnsAt(stance, best.at));
  return { ...best.whole, tieRodTurns: turns };
}
