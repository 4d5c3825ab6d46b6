/** What a cure is to bring about: a pair's wanted gap, or a limit that is not passed, over the whole range. */
import { findLeast } from '../certify/descend.ts';
import { createProof, stepProof } from '../certify/proof.ts';
import { type CertifiedRange, certifiedRange } from '../certify/range.ts';
import { pairKey } from '../clearance/gapField.ts';
import type { MeshSurfaces } from '../clearance/mesh.ts';
import { createPairGap, pairGapInto } from '../clearance/pairGap.ts';
import { type WatchedPair, watchedPairs } from '../clearance/pairs.ts';
import { assemble, type Corner, solve } from '../corner.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import type { Model } from '../model/model.ts';
import { readModel } from '../model/parse.ts';
import { extremesInSteps } from '../stops/extremes.ts';
import type { MarginUnit } from '../stops/margin.ts';
import { createMargins, type Held, marginInto } from '../stops/margins.ts';
import { measureQuantities } from '../stops/quantity.ts';
import type { Steps } from '../stops/steps.ts';

/** A pair's or a limit's key, and what is wanted of its gap or margin. */
export interface Aim {
  readonly key: string;
  readonly wanted: number;
  readonly unit: MarginUnit;
  readonly meshes: MeshSurfaces | undefined;
}

/** How a model does: the least gap or margin over its range, and where it is. */
export interface Standing {
  readonly corner: Corner;
  readonly least: number;
  readonly travel: number;
  readonly rack: number;
  /** Places of the range, of a coarse grid, that the linkage does not reach. */
  readonly unreached: number;
}

/** Keys of limits that are ends of the range themselves, or the linkage's own: no single part cures them. */
const ENDS: ReadonlySet<string> = new Set([
  'steering.least',
  'steering.most',
  'stops.bump',
  'stops.droop',
  'linkage',
]);

/** Whether cures are looked for where this limit is met, or this pair is tight. */
export function canBeCured(key: string): boolean {
  return !ENDS.has(key);
}

function pairOf(corner: Corner, { key, meshes }: Aim): WatchedPair | undefined {
  return watchedPairs(corner, meshes).find(({ names }) => pairKey(names) === key);
}

function limitOf(corner: Corner, key: string) {
  const margins = createMargins(corner, { withPairs: false });
  const index = margins.list.findIndex((margin) => margin.key === key);
  const margin = margins.list[index];
  return margin === undefined ? null : { margins, index, margin };
}

/** The aim of a key; null where the model has no such pair or limit, or no part cures it. */
export function aimOf(model: Model, key: string, meshes?: MeshSurfaces): Aim | null {
  if (!canBeCured(key)) return null;
  const corner = assemble(model);
  const bare = { key, wanted: 0, unit: 'mm', meshes } as const;
  const pair = pairOf(corner, bare);
  if (pair !== undefined) return { ...bare, wanted: pair.required };
  const limit = limitOf(corner, key);
  return limit === null ? null : { ...bare, unit: limit.margin.unit };
}

/** Reads the gap or margin of a pose whose parts are placed. */
function readerOf(corner: Corner, aim: Aim): ((pose: Pose) => number) | null {
  const pair = pairOf(corner, aim);
  if (pair !== undefined) {
    const gap = createPairGap(pair);
    return (pose) => {
      pairGapInto(gap, pose);
      return gap.gap;
    };
  }
  const limit = limitOf(corner, aim.key);
  if (limit === null) return null;
  const { margins, index } = limit;
  return (pose) => {
    measureQuantities(corner, pose.data, margins.measures);
    marginInto(margins, pose, index, pose.lastTravel, pose.lastRack);
    return margins.values[index]!;
  };
}

const GRID = [0, 0.25, 0.5, 0.75, 1];

const _pose = createPose();

/** Places of a coarse grid over the range that are out of the linkage's reach. */
export function unreachedIn(corner: Corner, { travel, rack }: CertifiedRange): number {
  const pose = _pose;
  let count = 0;
  for (const up of GRID) {
    for (const across of GRID) {
      const height = travel[0] + (travel[1] - travel[0]) * up;
      const lock = rack[0] + (rack[1] - rack[0]) * across;
      if (solve(corner, pose, height, lock) !== 'reached') count += 1;
    }
  }
  return count;
}

/** How a model does; null where it is unsound, cannot be assembled, or no longer has what is aimed at. */
export function standingOf(model: Model, aim: Aim): Standing | null {
  if (!readModel(model, '').ok) return null;
  const corner = assemble(model);
  if (corner.linkage.broken !== null) return null;
  const read = readerOf(corner, aim);
  if (read === null) return null;
  const range = certifiedRange(model);
  const pose = createPose();
  const { gap, travel, rack } = findLeast(corner, pose, read, range);
  return { corner, least: gap, travel, rack, unreached: unreachedIn(corner, range) };
}

/** Cells of a proof between two breaths. */
const BUDGET = 100;

function provenMargin(held: Held, low: number, high: number): number {
  if (held.by !== 'quantity') return Number.NEGATIVE_INFINITY;
  return held.sense > 0 ? held.bound - high : low - held.bound;
}

/** Proves how much is left over the whole range, whatever the pose: a lower bound, mm or degrees. */
export function* provenLeast({ corner }: Standing, aim: Aim): Steps<number> {
  const pair = pairOf(corner, aim);
  if (pair !== undefined) {
    const proof = createProof(corner, [pair]);
    while (!stepProof(proof, BUDGET)) yield 0;
    return proof.results[0]?.provenAtLeast ?? Number.NEGATIVE_INFINITY;
  }
  const limit = limitOf(corner, aim.key);
  const held = limit?.margins.held[limit.index];
  if (held?.by !== 'quantity') return Number.NEGATIVE_INFINITY;
  const [extreme] = yield* extremesInSteps(corner, certifiedRange(corner.model), [held.quantity]);
  if (extreme === undefined) return Number.NEGATIVE_INFINITY;
  return provenMargin(held, extreme.least.bound, extreme.greatest.bound);
}
