/**
 * The proof of all pairs' least gaps over travel × rack, in small steps, so that a worker can tell how far it is and can be
 * stopped between them.
 */
import type { WatchedPair } from '../clearance/pairs.ts';
import type { Corner } from '../corner.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import { bounderOf, type Keys, type ProvablePair } from './bounder.ts';
import { type CellTree, createCellTree } from './cells.ts';
import { findGap } from './descend.ts';
import { provable } from './provable.ts';
import { type CertifiedRange, certifiedRange } from './range.ts';
import { type PairResult, verdictOf } from './result.ts';
import {
  createSearch,
  floorOf,
  isProven,
  provenAtLeast,
  SAFETY,
  type Search,
  stepSearch,
} from './search.ts';

export interface Proof {
  readonly corner: Corner;
  readonly pairs: readonly ProvablePair[];
  readonly range: CertifiedRange;
  readonly tree: CellTree;
  readonly keys: Keys;
  readonly pose: Pose;
  /** Results of the pairs proven so far, in the pairs' order. */
  readonly results: PairResult[];
  /** The pair being proven; null between pairs. */
  search: Search | null;
  /** 0 at the start, 1 when all pairs are proven. */
  progress: number;
}

/**
 * Makes ready to prove pairs of the corner (`watchedPairs`); nothing is worked out yet. A corner whose settings cannot be
 * assembled has nothing to prove.
 */
export function createProof(corner: Corner, pairs: readonly WatchedPair[]): Proof {
  return createProofOf(corner, pairs.map(provable));
}

/** The same for pairs of any shapes. */
export function createProofOf(corner: Corner, pairs: readonly ProvablePair[]): Proof {
  const range = certifiedRange(corner.model);
  return {
    corner,
    pairs: corner.linkage.broken === null ? pairs : [],
    range,
    tree: createCellTree(corner, range),
    keys: { next: 0 },
    pose: createPose(),
    results: [],
    search: null,
    progress: 0,
  };
}

function begin(proof: Proof, { required, shapes, measure }: ProvablePair): Search {
  const { corner, keys, tree } = proof;
  return createSearch(corner, tree, {
    bounder: bounderOf(corner, keys, createPose(), shapes, measure),
    gapIn: (pose) => {
      measure.measure(pose);
      return measure.gap();
    },
    required,
    floor: floorOf(shapes),
  });
}

function resultOf({ names, required }: ProvablePair, search: Search): PairResult {
  const { gap, travel, rack } = search.found;
  const proven = Math.min(gap, provenAtLeast(search));
  return {
    names,
    least: gap,
    provenAtLeast: proven,
    travel,
    rack,
    required,
    verdict: verdictOf(gap, proven, required),
  };
}

/** A gap that is the same in every pose is proven by any pose. */
function constantResult(
  { corner, pose }: Proof,
  { names, required, measure }: ProvablePair,
): PairResult {
  const { gap, travel, rack } = findGap(
    corner,
    pose,
    (placed) => {
      measure.measure(placed);
      return measure.gap();
    },
    0,
    0,
  );
  const provenAtLeast = gap - SAFETY;
  const verdict = verdictOf(gap, provenAtLeast, required);
  return { names, least: gap, provenAtLeast, travel, rack, required, verdict };
}

/** Share of a pair's work that so many nodes are taken for: half at about as many as most pairs need. */
function shareOf(nodes: number): number {
  return nodes / (nodes + 300);
}

/**
 * Goes on for about `budget` cells (some 10 to 100 µs each); true when all is proven. Between steps the proof can be
 * dropped without ceremony.
 */
export function stepProof(proof: Proof, budget: number): boolean {
  const { pairs, results } = proof;
  for (let spent = 0; spent < budget && results.length < pairs.length; spent += 1) {
    const pair = pairs[results.length]!;
    if (pair.isConstant) {
      results.push(constantResult(proof, pair));
      continue;
    }
    proof.search ??= begin(proof, pair);
    if (isProven(proof.search)) {
      results.push(resultOf(pair, proof.search));
      proof.search = null;
    } else stepSearch(proof.search);
  }
  const isDone = results.length >= pairs.length;
  const part = proof.search === null ? 0 : shareOf(proof.search.nodes);
  proof.progress = isDone ? 1 : (results.length + part) / pairs.length;
  return isDone;
}

/** Proves pairs of the corner (`watchedPairs`) at once. */
export function certify(corner: Corner, pairs: readonly WatchedPair[]): readonly PairResult[] {
  return finish(createProof(corner, pairs));
}

/** Goes on to the end. */
export function finish(proof: Proof): readonly PairResult[] {
  while (!stepProof(proof, 1000));
  return proof.results;
}
