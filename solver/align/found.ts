/** The search as a whole: the nearest, of all that reach the least turn, and each confirmed by the linkage itself. */
import { degrees } from '../units.ts';
import { REACHED } from './aims.ts';
import { ALIGNED_KEYS, type AlignedAngles, type AskedTargets } from './alignment.ts';
import { type Settings, withSettings } from './hardware.ts';
import { leastTurns } from './least.ts';
import { type Nearest, nearestTo, type Stood } from './nearest.ts';
import type { Placed } from './placed.ts';
import { settingsAt } from './shares.ts';
import type { Stance } from './stance.ts';
import { standsAt } from './stands.ts';
import { totalTurn } from './turn.ts';

/** Halvings of the way to a toe that the tie rod cannot hold. */
const HALVINGS = 24;
/** Less turn than this, rad, is a gain where only the nearest can be reached: rounding at ±90 degrees is worth some 1e-4. */
const LESS = 1e-3;

/** Settings that were found, and the angles they really give. */
export interface Found {
  readonly stood: Stood;
  readonly settings: Settings;
  readonly angles: AlignedAngles;
}

function inDegrees({ camber, caster, toe }: Placed): AlignedAngles {
  return { camber: degrees(camber), caster: degrees(caster), toe: degrees(toe) };
}

/** The first of the settings sought that the linkage itself, from its design pose on, confirms. */
function firstConfirmed(stance: Stance, sought: readonly Stood[]): Found | null {
  for (const stood of sought) {
    const settings = settingsAt(stance, stood);
    const { angles } = standsAt(withSettings(stance.linkage.model, settings));
    const meant = inDegrees(stood.place);
    const isMeant =
      angles !== null && ALIGNED_KEYS.every((key) => Math.abs(angles[key] - meant[key]) <= REACHED);
    if (isMeant) return { stood, settings, angles };
  }
  return null;
}

function byTurn({ arms }: Stance, sought: readonly Stood[]): Stood[] {
  return [...sought].sort((a, b) => totalTurn(arms, a.shares) - totalTurn(arms, b.shares));
}

/** The least turn that reaches the targets, or else what comes nearest, with the least turn that does. */
function foundFrom(stance: Stance, targets: AskedTargets, nearest: Nearest): Found | null {
  const { camber, caster, toe } = targets;
  if (camber === undefined || caster === undefined || toe === undefined) {
    // As many adjusters as angles, or fewer: there is nothing to choose between.
    return firstConfirmed(stance, [nearest]);
  }
  if (degrees(nearest.miss) <= REACHED) {
    const all = leastTurns(stance, { camber, caster, toe }, nearest);
    return firstConfirmed(stance, byTurn(stance, all));
  }
  const turn = totalTurn(stance.arms, nearest.shares);
  const less = leastTurns(stance, inDegrees(nearest.place), nearest).filter(
    ({ shares }) => totalTurn(stance.arms, shares) < turn - LESS,
  );
  return firstConfirmed(stance, [...byTurn(stance, less), nearest]);
}

/**
 * The settings for targets in degrees, an angle left out following; a toe that the tie rod cannot hold is gone towards, from
 * `home`, as far as it can. null where the corner cannot stand.
 */
export function findSettings(
  stance: Stance,
  targets: AskedTargets,
  home: number | null,
): Found | null {
  const attempt = (there: AskedTargets, isLight: boolean): Found | null => {
    const nearest = nearestTo(stance, there, isLight);
    if (nearest === null) return null;
    return isLight ? firstConfirmed(stance, [nearest]) : foundFrom(stance, there, nearest);
  };
  const direct = attempt(targets, false);
  if (direct !== null || !stance.setsToe || home === null || targets.toe === undefined) {
    return direct;
  }
  let [inside, outside] = [home, targets.toe];
  for (let count = 0; count < HALVINGS; count += 1) {
    const middle = (inside + outside) / 2;
    if (attempt({ ...targets, toe: middle }, true) === null) outside = middle;
    else inside = middle;
  }
  const there = { ...targets, toe: inside };
  return attempt(there, false) ?? attempt(there, true);
}
