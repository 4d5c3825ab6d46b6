/** Which targets are in force, and whether angles meet them. */
import type { Model } from '../model/model.ts';
import {
  type Aimed,
  ALIGNED_KEYS,
  type AlignedAngles,
  type AlignedKey,
  type AskedTargets,
} from './alignment.ts';
import { fittingsOf } from './hardware.ts';

/** Degrees within which a target counts as reached: the contract's. */
export const REACHED = 1e-6;

export type Aims = Readonly<Record<AlignedKey, Aimed>>;

/**
 * Angles that there is hardware to hold: those stated, and as many of the others as there are adjusters left. Toe is the tie rod's
 * where it has a pitch, and the last to be held where it has none.
 */
function heldKeys(model: Model, stated: ReadonlySet<AlignedKey>): ReadonlySet<AlignedKey> {
  const pivots = fittingsOf(model).filter(({ reach }) => reach > 0).length;
  const hasPitch = model.tieRod.pitch !== undefined;
  const held = new Set<AlignedKey>(hasPitch ? [...stated, 'toe'] : stated);
  for (const key of ALIGNED_KEYS) {
    if (held.size < pivots + (hasPitch ? 1 : 0)) held.add(key);
  }
  return held;
}

/**
 * The targets in force: asked for, else the model's, else as `now`; null where one would stay as it is and the corner does
 * not stand.
 */
export function aimsOf(model: Model, asked: AskedTargets, now: AlignedAngles | null): Aims | null {
  const stated = new Set(
    ALIGNED_KEYS.filter((key) => asked[key] !== undefined || model.targets?.[key] !== undefined),
  );
  const held = heldKeys(model, stated);
  if (now === null && stated.size < ALIGNED_KEYS.length) return null;
  const aimed = (key: AlignedKey): Aimed => {
    const file = model.targets?.[key];
    const plusMinus = file?.plusMinus ?? null;
    const isHeld = held.has(key);
    const value = asked[key];
    if (value !== undefined) return { value, from: 'asked', isHeld, plusMinus };
    if (file !== undefined) return { value: file.value, from: 'file', isHeld, plusMinus };
    return { value: now?.[key] ?? 0, from: 'asItIs', isHeld, plusMinus };
  };
  return { camber: aimed('camber'), caster: aimed('caster'), toe: aimed('toe') };
}

/** Targets of a corner that cannot stand: nothing is aimed at. */
export const NO_AIMS: Aims = (() => {
  const none: Aimed = { value: 0, from: 'asItIs', isHeld: false, plusMinus: null };
  return { camber: none, caster: none, toe: none };
})();

/** The values that settings are sought for; what follows is left out. */
export function soughtValues(aims: Aims): AskedTargets {
  return Object.fromEntries(
    ALIGNED_KEYS.flatMap((key) => (aims[key].isHeld ? [[key, aims[key].value]] : [])),
  );
}

/** The targets that angles miss by more than counts as reached. */
export function missedKeys(aims: Aims, angles: AlignedAngles): AlignedKey[] {
  return ALIGNED_KEYS.filter(
    (key) => aims[key].isHeld && !(Math.abs(angles[key] - aims[key].value) <= REACHED),
  );
}

/** Whether angles lie within the tolerances that there are; null where there is nothing to tell. */
export function isWithin(aims: Aims, angles: AlignedAngles | null): boolean | null {
  const stated = ALIGNED_KEYS.filter((key) => aims[key].plusMinus !== null);
  if (angles === null || stated.length === 0) return null;
  return stated.every((key) => {
    const { value, plusMinus } = aims[key];
    return Math.abs(angles[key] - value) <= plusMinus! + REACHED;
  });
}
