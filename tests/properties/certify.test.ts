/** Certified minima: never above what a dense search finds, never looser than promised. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ProvablePair } from '../../solver/certify/bounder.ts';
import { createProofOf, finish } from '../../solver/certify/proof.ts';
import { certifiedRange } from '../../solver/certify/range.ts';
import type { PairResult } from '../../solver/certify/result.ts';
import {
  assemble,
  type Corner,
  certify,
  createPairGap,
  createPose,
  createProof,
  pairGapInto,
  placeParts,
  Slot,
  solve,
  stepProof,
  type WatchedPair,
  watchedPairs,
} from '../../solver/index.ts';
import { buildable } from '../support/arbitraries.ts';
import { shipped } from '../support/models.ts';
import { rodPair } from '../support/provable.ts';

function certified(corner: Corner, pairs: readonly ProvablePair[]): readonly PairResult[] {
  return finish(createProofOf(corner, pairs));
}

/** The gap at a place; undefined out of reach. */
function gapAt(corner: Corner, { measure }: ProvablePair, travel: number, rack: number) {
  const pose = createPose();
  if (solve(corner, pose, travel, rack) !== 'reached') return undefined;
  placeParts(corner, pose.data);
  measure.measure(pose);
  return measure.gap();
}

/** The least gap of a dense grid, then of ever finer ones about its best node. */
function densest(corner: Corner, pair: ProvablePair): number {
  const { travel, rack } = certifiedRange(corner.model);
  let [t0, t1, r0, r1] = [...travel, ...rack];
  let least = Number.POSITIVE_INFINITY;
  for (let zoom = 0; zoom < 5; zoom += 1) {
    const count = zoom === 0 ? 28 : 10;
    let at: [number, number] = [0, 0];
    for (let i = 0; i <= count; i += 1) {
      for (let j = 0; j <= (r1 > r0 ? count : 0); j += 1) {
        const t = t0 + ((t1 - t0) * i) / count;
        const r = r0 + ((r1 - r0) * j) / count;
        const gap = gapAt(corner, pair, t, r);
        if (gap !== undefined && gap < least) {
          least = gap;
          at = [t, r];
        }
      }
    }
    const [halfT, halfR] = [(t1 - t0) / count, (r1 - r0) / count];
    t0 = Math.max(travel[0], at[0] - halfT);
    t1 = Math.min(travel[1], at[0] + halfT);
    r0 = Math.max(rack[0], at[1] - halfR);
    r1 = Math.min(rack[1], at[1] + halfR);
  }
  return least;
}

/** True where every pose of the range is reached: near the end of the linkage's reach its parts move without bound. */
function isAllReached(corner: Corner): boolean {
  const { travel, rack } = certifiedRange(corner.model);
  const pose = createPose();
  for (let i = 0; i <= 40; i += 1) {
    for (let j = 0; j <= 40; j += 1) {
      const t = travel[0] + ((travel[1] - travel[0]) * i) / 40;
      const r = rack[0] + ((rack[1] - rack[0]) * j) / 40;
      if (solve(corner, pose, t, r) !== 'reached') return false;
    }
  }
  return true;
}

function expectCertified(corner: Corner, pair: ProvablePair, result: PairResult): void {
  const { least, provenAtLeast, travel, rack, required, verdict } = result;
  const range = certifiedRange(corner.model);
  const about = pair.names.join('/');
  expect(gapAt(corner, pair, travel, rack), about).toBeCloseTo(least, 6);
  expect(travel, about).toBeGreaterThanOrEqual(range.travel[0]);
  expect(travel, about).toBeLessThanOrEqual(range.travel[1]);
  expect(rack, about).toBeGreaterThanOrEqual(range.rack[0]);
  expect(rack, about).toBeLessThanOrEqual(range.rack[1]);
  expect(provenAtLeast, about).toBeLessThanOrEqual(least);
  expect(provenAtLeast, about).toBeLessThanOrEqual(densest(corner, pair));
  const promised = (least < 25 ? 0.05 : Math.min(2, 0.05 * least) + 0.01) + 1e-6;
  if (isAllReached(corner)) expect(least - provenAtLeast, about).toBeLessThanOrEqual(promised);
  const worded = provenAtLeast >= required ? 'clear' : 'tight';
  expect(verdict, about).toBe(least <= 0 ? 'touch' : worded);
}

describe('a certified minimum', () => {
  it('of the tie rod, straight or bent, against wheel and tyre holds against a dense search', () => {
    const bends = fc.option(
      fc.tuple(
        fc.double({ min: -25, max: 25, noNaN: true }),
        fc.double({ min: -25, max: 25, noNaN: true }),
      ),
    );
    fc.assert(
      fc.property(buildable, fc.constantFrom('wheel', 'tyre'), bends, (drawn, against, bend) => {
        const { inner, outer } = drawn.tieRod;
        const middle = inner.map((x, i) => (x + outer[i]!) / 2);
        const model =
          bend === null
            ? drawn
            : {
                ...drawn,
                tieRod: {
                  ...drawn.tieRod,
                  bends: [[middle[0]! + bend[0], middle[1]!, middle[2]! + bend[1]] as const],
                },
              };
        const corner = assemble(model);
        const pair = rodPair(corner, against as 'wheel', 6);
        expectCertified(corner, pair, certified(corner, [pair])[0]!);
      }),
      { numRuns: 12, seed: 20261202, endOnFailure: true },
    );
  });

  it('of the shipped models holds against a dense search', () => {
    for (const name of ['half-ton-factory', 'half-ton-long-travel', 'planar-equal-arms'] as const) {
      const corner = assemble(shipped(name));
      const pairs = [rodPair(corner, 'wheel', 8), rodPair(corner, 'tyre', 8)];
      certified(corner, pairs).forEach((result, i) => {
        expectCertified(corner, pairs[i]!, result);
      });
    }
  });

  it('is refined until the wanted gap is decided', () => {
    const corner = assemble(shipped('half-ton-long-travel'));
    const { least } = certified(corner, [rodPair(corner, 'tyre', 1)])[0]!;
    const decide = (required: number) => certified(corner, [rodPair(corner, 'tyre', required)])[0]!;
    expect(decide(least - 0.01).verdict).toBe('clear');
    expect(decide(least + 0.01).verdict).toBe('tight');
  });
});

describe('the watched pairs of a corner', () => {
  /** A dense grid; out of reach, the last reachable pose of the straight path counts. */
  function leastOf(corner: Corner, pairs: readonly WatchedPair[]): number[] {
    const { travel, rack } = certifiedRange(corner.model);
    const pose = createPose();
    const gaps = pairs.map(createPairGap);
    const least = pairs.map(() => Number.POSITIVE_INFINITY);
    for (let i = 0; i <= 24; i += 1) {
      for (let j = 0; j <= 18; j += 1) {
        const t = travel[0] + ((travel[1] - travel[0]) * i) / 24;
        const r = rack[0] + ((rack[1] - rack[0]) * j) / 18;
        solve(corner, pose, t, r);
        placeParts(corner, pose.data);
        gaps.forEach((gap, n) => {
          const isLink = pairs[n]!.names.includes('antiRollBarLink');
          if (isLink && !(pose.data[Slot.leverRoom]! > 0)) return;
          pairGapInto(gap, pose);
          least[n] = Math.min(least[n]!, gap.gap);
        });
      }
    }
    return least;
  }

  function expectAll(corner: Corner): readonly PairResult[] {
    const pairs = watchedPairs(corner);
    const results = certify(corner, pairs);
    const densest = leastOf(corner, pairs);
    expect(results.map(({ names }) => names)).toEqual(pairs.map(({ names }) => names));
    results.forEach(({ names, least, provenAtLeast }, n) => {
      expect(provenAtLeast, names.join('/')).toBeLessThanOrEqual(densest[n]! + 1e-6);
      expect(provenAtLeast, names.join('/')).toBeLessThanOrEqual(least);
    });
    return results;
  }

  const isLoose = ({ least, provenAtLeast }: PairResult) =>
    least - provenAtLeast > (Math.abs(least) < 25 ? 0.05 : 2.01);

  it('are certified on random corners, as tightly as promised', () => {
    fc.assert(
      fc.property(buildable, (model) => {
        const corner = assemble(model);
        const isReachable = seedsReach(corner);
        const results = expectAll(corner);
        if (isReachable) expect(results.filter(isLoose)).toEqual([]);
      }),
      { numRuns: 5, seed: 20261203, endOnFailure: true },
    );
  });

  it('are certified up to the poses that end the branch, where rates know no bound', () => {
    let beyond = 0;
    fc.assert(
      fc.property(buildable, (drawn) => {
        const { bump, droop } = drawn.travel;
        const [left, right] = drawn.steering!.limit!;
        const corner = assemble({
          ...drawn,
          travel: { ...drawn.travel, bump: 1.5 * bump, droop: 1.5 * droop },
          steering: { ...drawn.steering, limit: [1.3 * left, 1.3 * right] },
        });
        const results = expectAll(corner);
        if (seedsReach(corner)) return;
        beyond += 1;
        // What stays unproven is said so by a lower bound; it must be the exception.
        expect(results.filter(isLoose).length).toBeLessThan(0.1 * results.length);
      }),
      { numRuns: 2, seed: 11, endOnFailure: true },
    );
    expect(beyond).toBeGreaterThan(0);
  });

  /** True when every node of a coarse grid is reached. */
  function seedsReach(corner: Corner): boolean {
    const { travel, rack } = certifiedRange(corner.model);
    const pose = createPose();
    return travel.every((t) => rack.every((r) => solve(corner, pose, t, r) === 'reached'));
  }

  it('that never move against each other take one pose', () => {
    const corner = assemble(shipped('tall-knuckle-crossover'));
    const pairs = watchedPairs(corner).filter(({ isConstant }) => isConstant);
    expect(pairs.length).toBeGreaterThan(0);
    const proof = createProof(corner, pairs);
    expect(stepProof(proof, pairs.length)).toBe(true);
    expect(proof.tree.cells.size).toBe(0);
    const least = leastOf(corner, pairs);
    proof.results.forEach((result, n) => {
      expect(result.least).toBeCloseTo(least[n]!, 6);
      expect(result.least - result.provenAtLeast).toBeLessThan(1e-5);
    });
  });
});

describe('a proof', () => {
  it('goes in steps, tells how far it is, and comes to the same as at once', () => {
    const corner = assemble(shipped('half-ton-factory'));
    const pairs = [rodPair(corner, 'wheel', 8), rodPair(corner, 'tyre', 8)];
    const proof = createProofOf(corner, pairs);
    let before = -1;
    let steps = 0;
    while (!stepProof(proof, 10)) {
      steps += 1;
      expect(proof.progress).toBeGreaterThanOrEqual(before);
      expect(proof.progress).toBeLessThan(1);
      before = proof.progress;
    }
    expect(steps).toBeGreaterThan(5);
    expect(proof.progress).toBe(1);
    expect(proof.results).toEqual(certified(corner, pairs));
  });

  it('of settings that cannot be assembled proves nothing', () => {
    const model = shipped('half-ton-factory');
    const corner = assemble({ ...model, tieRod: { ...model.tieRod, turns: 400 } });
    expect(certified(corner, [rodPair(corner, 'wheel', 8)])).toEqual([]);
  });
});
