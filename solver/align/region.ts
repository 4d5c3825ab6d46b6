/** Camber and caster that the hardware can reach at the set pose: its outline, and the path of each cam or shim alone. */
import { assembleLinkage } from '../linkage/assemble.ts';
import type { Model } from '../model/model.ts';
import { allSteps, type Steps } from '../stops/steps.ts';
import { degrees, radians } from '../units.ts';
import { aimsOf } from './aims.ts';
import type { AskedTargets } from './alignment.ts';
import { type PivotHardware, presentSettings } from './hardware.ts';
import { movable, type Stood, standCentred, walkTo } from './nearest.ts';
import { type AnglePoint, outlineInSteps } from './outline.ts';
import { sharesAlong, sharesOf } from './shares.ts';
import { createStance, type Stance } from './stance.ts';
import { standsAt } from './stands.ts';

/** What can be reached, in degrees. */
export interface ReachableRegion {
  /** Toe that the tie rod holds all over it; null where it has no pitch and toe follows. */
  readonly toe: number | null;
  /**
   * Round the region once, the first point not repeated. With one piece of hardware it is a line from end to end, with none a
   * single point.
   */
  readonly outline: readonly AnglePoint[];
  readonly isArea: boolean;
  /** Where the corner stands now; null where it cannot. */
  readonly present: AnglePoint | null;
  /** Camber and caster while one cam turns from −90 to 90 degrees, or shims go from none to the most, the others as they are. */
  readonly paths: readonly {
    readonly name: PivotHardware;
    readonly points: readonly AnglePoint[];
  }[];
}

/** Stretches of a path. */
const STRETCHES = 36;

function pointOf({ place }: Stood): AnglePoint {
  return { camber: degrees(place.camber), caster: degrees(place.caster) };
}

/** Places while one link goes through its range, the others at the shares of a place; those that can be stood in. */
function pathOf(stance: Stance, toe: number | null, from: Stood, link: number): Stood[] {
  const path: Stood[] = [];
  let at = from;
  for (const share of sharesAlong(stance.arms[link]!, STRETCHES)) {
    const shares = from.shares.map((each, i) => (i === link ? share : each));
    const place = walkTo(stance, toe, at, shares);
    if (place === null) continue;
    at = { shares, place };
    path.push(at);
  }
  return path;
}

/**
 * The region of camber and caster that a model reaches at its set pose with every cam within ±90 degrees and shims from none
 * to the most, toe held to its target by the tie rod where that has a pitch. null where the corner cannot stand there.
 */
export function* reachableRegionInSteps(
  model: Model,
  asked: AskedTargets = {},
): Steps<ReachableRegion | null> {
  const stance = createStance(assembleLinkage(model));
  const { angles } = standsAt(model);
  const aims = aimsOf(model, asked, angles);
  const held = stance.setsToe ? (aims?.toe.value ?? angles?.toe ?? null) : null;
  if (stance.setsToe && held === null) return null;
  const toe = held === null ? null : radians(held);
  const centred = standCentred(stance, toe);
  if (centred === null) return null;
  const shares = sharesOf(stance, presentSettings(model));
  const place = walkTo(stance, toe, centred, shares);
  const now = place === null ? centred : { shares, place };
  const links = movable(stance);
  const paths = links.map((link) => ({
    name: stance.arms[link]!.fitting!.name,
    points: pathOf(stance, toe, now, link).map(pointOf),
  }));
  const [only] = paths;
  const single = only === undefined ? [pointOf(centred)] : only.points;
  return {
    toe: held,
    outline: links.length < 2 ? single : yield* outlineInSteps(stance, toe, centred),
    isArea: links.length >= 2,
    present: angles === null ? null : { camber: angles.camber, caster: angles.caster },
    paths,
  };
}

/** All steps of `reachableRegionInSteps` at once: tens of milliseconds with two pieces of hardware, half a second with four. */
export function reachableRegion(model: Model, asked: AskedTargets = {}): ReachableRegion | null {
  return allSteps(reachableRegionInSteps(model, asked));
}
