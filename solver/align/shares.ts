/** Between settings, as people make them, and the shares that the search works with. */
import { distance } from '../math/vec3.ts';
import { degrees, radians } from '../units.ts';
import { fittingsOf, type Settings } from './hardware.ts';
import type { Stood } from './nearest.ts';
import { hold, type Link, rodLength, type Stance } from './stance.ts';

/** Shares this close to 0 are 0: rounding. */
const DUST = 1e-11;

function settingOf({ fitting, reach }: Link, share: number): number {
  if (fitting === null || Math.abs(share) < DUST) return 0;
  return fitting.kind === 'shim' ? share * reach : degrees(Math.asin(share));
}

/** Shares of the links for settings, in the order of `Stance.arms`. */
export function sharesOf({ arms }: Stance, settings: Settings): number[] {
  return arms.map(({ fitting, reach }) => {
    if (fitting === null) return 0;
    const setting = settings[fitting.name] ?? 0;
    return fitting.kind === 'shim' ? setting / reach : Math.sin(radians(setting));
  });
}

/** Shares from one end of a link's range to the other: those of a cam in equal turns. */
export function sharesAlong({ range, fitting }: Link, stretches: number): number[] {
  const [least, most] = range;
  return Array.from({ length: stretches + 1 }, (_, i) => {
    const part = i / stretches;
    if (fitting?.kind === 'shim') return least + part * (most - least);
    return Math.sin(radians(180 * part - 90));
  });
}

/** Turns that give the tie rod its length at a place; those of the model where it has no pitch. */
export function turnsAt(stance: Stance, { place }: Stood): number {
  const { tieRod } = stance.linkage.model;
  const held = hold(stance, place.camber, place.caster, place.toe);
  if (tieRod.pitch === undefined || held === null) return tieRod.turns ?? 0;
  return (rodLength(stance, held, place.p) - distance(tieRod.inner, tieRod.outer)) / tieRod.pitch;
}

/** The settings of a place. Hardware that moves nothing is at 0. */
export function settingsAt(stance: Stance, stood: Stood): Settings {
  const set = fittingsOf(stance.linkage.model).map(({ name }) => {
    const place = stance.arms.findIndex(({ fitting }) => fitting?.name === name);
    const link = stance.arms[place];
    return [name, link === undefined ? 0 : settingOf(link, stood.shares[place]!)] as const;
  });
  return { ...Object.fromEntries(set), tieRodTurns: turnsAt(stance, stood) };
}
