/** What a change moves beside what it cures: alignment, lock, track, other pairs' gaps, other limits. */
import { findLeast } from '../certify/descend.ts';
import { certifiedRange } from '../certify/range.ts';
import { pairKey } from '../clearance/gapField.ts';
import type { MeshSurfaces } from '../clearance/mesh.ts';
import { createPairGap, pairGapInto } from '../clearance/pairGap.ts';
import { watchedPairs } from '../clearance/pairs.ts';
import { type Corner, solve } from '../corner.ts';
import { createPose } from '../linkage/solve.ts';
import { createMeasures, Measure } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import { rackRange, rideTravel } from '../model/defaults.ts';
import { partWords } from '../stops/limitWords.ts';
import type { MarginUnit } from '../stops/margin.ts';
import { createMargins, marginInto } from '../stops/margins.ts';
import { measureQuantities } from '../stops/quantity.ts';
import type { Steps } from '../stops/steps.ts';
import { canBeCured } from './aim.ts';
import type { Moved, Worsened } from './cure.ts';

interface Told {
  readonly label: string;
  readonly unit: MarginUnit;
  readonly value: number;
}

export interface Least extends Told {
  readonly key: string;
  /** Where it is. */
  readonly travel: number;
  readonly rack: number;
  /** Below this it is tight; 0 for limits. */
  readonly required: number;
  readonly isPair: boolean;
}

/** The numbers of a corner that changes are compared by. */
export interface Survey {
  readonly numbers: readonly Told[];
  readonly leasts: readonly Least[];
}

/** Heights at which toe is read for its change over travel. */
const HEIGHTS = 33;
/** Differences below these are not told: degrees, mm; and of other gaps, mm. */
const SMALL = { degree: 0.005, mm: 0.05 } as const;
const WORSE = 0.5;

/** Greatest less least toe over the travel at rack 0, degrees. */
function toeChange(corner: Corner): number {
  const [pose, measures] = [createPose(), createMeasures()];
  const [low, high] = certifiedRange(corner.model).travel;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < HEIGHTS; i += 1) {
    if (solve(corner, pose, low + ((high - low) * i) / (HEIGHTS - 1), 0) !== 'reached') continue;
    measureInto(corner, pose, measures);
    least = Math.min(least, measures[Measure.toe]!);
    most = Math.max(most, measures[Measure.toe]!);
  }
  return most - least;
}

/** Road-wheel angle with the rack at one end, degrees, at ride. */
function lockOf(corner: Corner, rack: number): number {
  const [pose, measures] = [createPose(), createMeasures()];
  solve(corner, pose, rideTravel(corner.model.travel), rack);
  measureInto(corner, pose, measures);
  return measures[Measure.steerAngle]!;
}

/** The greatest less the least toe over the travel at rack 0, as it is called. */
export const TOE_CHANGE = 'toe change over travel';

const SHOWN = [
  ['camber', 'camber', 'degree'],
  ['caster', 'caster', 'degree'],
  ['toe', 'toe', 'degree'],
  ['scrubRadius', 'scrub radius', 'mm'],
  ['casterTrail', 'caster trail', 'mm'],
  ['halfTrack', 'half track', 'mm'],
] as const;

function numbersOf(corner: Corner): Told[] {
  const [pose, measures] = [createPose(), createMeasures()];
  if (solve(corner, pose, rideTravel(corner.model.travel), 0) !== 'reached') return [];
  measureInto(corner, pose, measures);
  const locks = rackRange(corner.model.steering).map((rack) => lockOf(corner, rack));
  return [
    ...SHOWN.map(([key, label, unit]) => ({ label, unit, value: measures[Measure[key]]! })),
    { label: TOE_CHANGE, unit: 'degree', value: toeChange(corner) },
    { label: 'steer angle at left lock', unit: 'degree', value: Math.max(...locks) },
    { label: 'steer angle at right lock', unit: 'degree', value: Math.min(...locks) },
  ];
}

function* gapsOf(corner: Corner, meshes: MeshSurfaces | undefined): Steps<Least[]> {
  const pose = createPose();
  const range = certifiedRange(corner.model);
  const leasts: Least[] = [];
  for (const pair of watchedPairs(corner, meshes)) {
    const gap = createPairGap(pair);
    const {
      gap: value,
      travel,
      rack,
    } = findLeast(
      corner,
      pose,
      (placed) => {
        pairGapInto(gap, placed);
        return gap.gap;
      },
      range,
    );
    const [a, b] = pair.names;
    const label = `${partWords(a)} to ${partWords(b)}`;
    const { required } = pair;
    const key = pairKey(pair.names);
    leasts.push({ key, label, unit: 'mm', value, travel, rack, required, isPair: true });
    yield 0;
  }
  return leasts;
}

function* limitsOf(corner: Corner): Steps<Least[]> {
  const margins = createMargins(corner, { withPairs: false });
  const pose = createPose();
  const range = certifiedRange(corner.model);
  const leasts: Least[] = [];
  for (const [index, { key, label, unit }] of margins.list.entries()) {
    if (!canBeCured(key)) continue;
    const {
      gap: value,
      travel,
      rack,
    } = findLeast(
      corner,
      pose,
      (placed) => {
        measureQuantities(corner, placed.data, margins.measures);
        marginInto(margins, placed, index, placed.lastTravel, placed.lastRack);
        return margins.values[index]!;
      },
      range,
    );
    leasts.push({ key, label, unit, value, travel, rack, required: 0, isPair: false });
    yield 0;
  }
  return leasts;
}

/** Surveys a corner that can be assembled. The gaps are the least that are found. */
export function* surveyInSteps(corner: Corner, meshes?: MeshSurfaces): Steps<Survey> {
  const gaps = yield* gapsOf(corner, meshes);
  const limits = yield* limitsOf(corner);
  return { numbers: numbersOf(corner), leasts: [...gaps, ...limits] };
}

/** The numbers that differ. */
export function movesBetween(before: Survey, after: Survey): Moved[] {
  return after.numbers.flatMap(({ label, unit, value }) => {
    const was = before.numbers.find((each) => each.label === label)?.value;
    if (was === undefined || !(Math.abs(value - was) >= SMALL[unit])) return [];
    return [{ label, before: was, after: value, unit }];
  });
}

function turnedTo({ value, required, isPair }: Least, was: number): Worsened['turned'] {
  if (value < 0 && was >= 0) return isPair ? 'touch' : 'met';
  return value < required && was >= required ? 'tight' : null;
}

/** Other pairs' gaps and other limits' margins that are worse; what has least to spare first. */
export function worsenedBetween(before: Survey, after: Survey, but: string): Worsened[] {
  const spare = new Map<Worsened, number>();
  for (const least of after.leasts) {
    const { key, label, unit, value, required, isPair } = least;
    const was = before.leasts.find((each) => each.key === key)?.value;
    if (key === but || was === undefined) continue;
    const turned = turnedTo(least, was);
    const isWorse = isPair && was - value > WORSE;
    if (turned === null && !isWorse) continue;
    spare.set({ label, before: was, after: value, unit, turned }, value - required);
  }
  return [...spare].sort(([, a], [, b]) => a - b).map(([worsened]) => worsened);
}
