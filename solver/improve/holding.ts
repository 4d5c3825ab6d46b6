/** Proof that what must hold does, over the whole range of travel and rack. */
import { createProof, stepProof } from '../certify/proof.ts';
import { certifiedRange } from '../certify/range.ts';
import { pairKey } from '../clearance/gapField.ts';
import type { MeshSurfaces } from '../clearance/mesh.ts';
import { watchedPairs } from '../clearance/pairs.ts';
import type { Corner } from '../corner.ts';
import { extremesInSteps } from '../stops/extremes.ts';
import { createMargins } from '../stops/margins.ts';
import { type Steps, within } from '../stops/steps.ts';
import type { FloorAnswer } from './answer.ts';
import type { Appraisal } from './appraisal.ts';
import type { Floor } from './question.ts';

/** Cells of a proof between two breaths. */
const BUDGET = 100;
/** Rounding of what was found, mm or degrees. */
const DUST = 1e-6;

/** Proven lower bounds of the pairs of these keys. */
function* provenGaps(
  corner: Corner,
  keys: ReadonlySet<string>,
  meshes: MeshSurfaces | undefined,
): Steps<Map<string, number>> {
  const pairs = watchedPairs(corner, meshes).filter(({ names }) => keys.has(pairKey(names)));
  const proof = createProof(corner, pairs);
  while (!stepProof(proof, BUDGET)) yield proof.progress;
  return new Map(proof.results.map(({ names, provenAtLeast }) => [pairKey(names), provenAtLeast]));
}

/** Proven lower bounds of the margins of these limits. */
function* provenMargins(corner: Corner, keys: ReadonlySet<string>): Steps<Map<string, number>> {
  const { list, held } = createMargins(corner, { withPairs: false });
  const wanted = list.flatMap(({ key }, i) => {
    const by = held[i]!;
    return keys.has(key) && by.by === 'quantity' ? [{ key, by }] : [];
  });
  const quantities = [...new Set(wanted.map(({ by }) => by.quantity))];
  const extremes = yield* extremesInSteps(corner, certifiedRange(corner.model), quantities);
  return new Map(
    wanted.flatMap(({ key, by: { quantity, bound, sense } }): [string, number][] => {
      const found = extremes.find((each) => each.key === quantity);
      if (found === undefined) return [];
      const { least, greatest } = found;
      return [[key, sense > 0 ? bound - greatest.bound : least.bound - bound]];
    }),
  );
}

/** Proven lower bounds of gaps and margins, by key; those of which nothing can be proven are left out. */
export function* provenInSteps(
  corner: Corner,
  keys: readonly string[],
  meshes: MeshSurfaces | undefined,
): Steps<ReadonlyMap<string, number>> {
  const all = new Set(keys);
  const gaps = yield* within(provenGaps(corner, all, meshes), 0, 0.5);
  const margins = yield* within(provenMargins(corner, all), 0.5, 0.5);
  return new Map([...gaps, ...margins]);
}

/** How each floor stands in a design; the values are the least that were found. */
export function floorAnswers(
  floors: readonly Floor[],
  { survey }: Appraisal,
  bounds: ReadonlyMap<string, number>,
): readonly FloorAnswer[] {
  return floors.map(({ key, label, unit, wanted, before, isBroken }) => {
    const after = survey.leasts.find((each) => each.key === key)?.value ?? Number.NaN;
    const proven = bounds.get(key) ?? Number.NEGATIVE_INFINITY;
    const found = after >= wanted - DUST ? 'found' : 'broken';
    const holding = proven >= wanted ? 'proven' : found;
    return { key, label, unit, wanted, before, after, wasBroken: isBroken, holding };
  });
}
