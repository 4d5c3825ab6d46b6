// Certified least gaps to meshes: against the same obstacle as a box, and against a grid of poses.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bounderOf } from '../../solver/certify/bounder.ts';
import { type Cell, cellAt, createCellTree } from '../../solver/certify/cells.ts';
import { provable } from '../../solver/certify/provable.ts';
import {
  assemble,
  certify,
  createPairGap,
  createPose,
  type MeshSurface,
  type Model,
  type Obstacle,
  type PairResult,
  pairGapInto,
  placeParts,
  solve,
  type WatchedPair,
  watchedPairs,
} from '../../solver/index.ts';
import type { MeshTriangles } from '../../src/mesh/data.ts';
import { type MeshObstacle, placingOf } from '../../src/mesh/placing.ts';
import { createMeshSurface } from '../../src/mesh/surface.ts';
import { buildTree } from '../../src/mesh/tree.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { boxMesh, sheetMesh } from '../support/meshShapes.ts';

type Point = readonly [number, number, number];

const NAME = 'obstacle';
const MESH: MeshObstacle = { name: NAME, shape: 'mesh', file: 'a.stl', unit: 'mm' };

/** A range small enough for a dense grid. */
function modelWith(obstacle: Obstacle): Model {
  const { tolerance: _, ...rest } = FULL_MODEL;
  return {
    ...rest,
    steering: { ...rest.steering, limit: [-30, 30] },
    travel: { bump: 40, droop: 40 },
    obstacles: [obstacle],
    required: { default: 6 },
  };
}

function surfaceOf(mesh: MeshTriangles, obstacle = MESH): MeshSurface {
  return createMeshSurface(buildTree(mesh, 1), placingOf(obstacle));
}

function pairsOf(model: Model, surface?: MeshSurface): readonly WatchedPair[] {
  const meshes = new Map(surface === undefined ? [] : [[NAME, surface]]);
  return watchedPairs(assemble(model), meshes).filter(({ names }) => names.includes(NAME));
}

function proofs(model: Model, surface?: MeshSurface): ReadonlyMap<string, PairResult> {
  const results = certify(assemble(model), pairsOf(model, surface));
  return new Map(results.map((result) => [result.names.join('/'), result]));
}

/** The least gap of a pair on a grid of poses. */
function sampled(model: Model, pair: WatchedPair, steps: number): number {
  const corner = assemble(model);
  const [gap, pose] = [createPairGap(pair), createPose()];
  const [right, left] = model.steering!.limit!;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= steps; i += 1) {
    for (let j = 0; j <= steps; j += 1) {
      const travel = -model.travel.droop + ((model.travel.bump + model.travel.droop) * i) / steps;
      solve(corner, pose, travel, right + ((left - right) * j) / steps);
      placeParts(corner, pose.data);
      pairGapInto(gap, pose);
      least = Math.min(least, gap.gap);
    }
  }
  return least;
}

/** How near least and provenAtLeast come where a pair decides anything, mm. */
const DECIDED = 0.05;

function expectProven(model: Model, surface: MeshSurface): void {
  const results = proofs(model, surface);
  expect(results.size).toBeGreaterThan(5);
  for (const pair of pairsOf(model, surface)) {
    const name = pair.names.join('/');
    const { least, provenAtLeast } = results.get(name)!;
    const brute = sampled(model, pair, 16);
    // Distances are exact to a hundredth.
    expect(provenAtLeast, name).toBeLessThan(brute + 0.01);
    expect(least, name).toBeLessThan(brute + 0.01);
    if (Math.abs(least) < 25) expect(least - provenAtLeast, name).toBeLessThan(DECIDED);
    else expect(least - provenAtLeast, name).toBeLessThan(2 + 0.01);
  }
}

/** The least of all elements' bounds over a cell, and the least gap of poses sampled in it. */
function overCell(model: Model, pair: WatchedPair, cell: Cell): { bound: number; least: number } {
  const corner = assemble(model);
  const [pose, made] = [createPose(), provable(pair)];
  const bounder = bounderOf(corner, { next: 0 }, pose, made.shapes, made.measure);
  const bounds = bounder.elements.map((element) => bounder.bound(cell, element, Infinity));
  const gap = createPairGap(pair);
  let least = Infinity;
  const steps = 4;
  for (let i = -steps; i <= steps; i += 1) {
    for (let j = -steps; j <= steps; j += 1) {
      const travel = cell.travel + (cell.half.travel * i) / steps;
      solve(corner, pose, travel, cell.rack + (cell.half.rack * j) / steps);
      placeParts(corner, pose.data);
      pairGapInto(gap, pose);
      least = Math.min(least, gap.gap);
    }
  }
  return { bound: Math.min(...bounds), least };
}

describe('a bound over a cell', () => {
  const sheet = surfaceOf(
    sheetMesh([500, 300], [40, 24], (x, y) => 470 + 6 * Math.sin(x / 40) * Math.cos(y / 30)),
    { ...MESH, position: [0, 680, 0], rotation: [4, -3, 10] },
  );
  const model = modelWith(MESH);
  const range = { travel: [-40, 40], rack: [-30, 30] } as const;
  const place = fc.integer({ min: 2, max: 7 }).chain((level) =>
    fc.record({
      travelLevel: fc.constant(level),
      travelIndex: fc.nat(2 ** level - 1),
      rackLevel: fc.constant(level),
      rackIndex: fc.nat(2 ** level - 1),
    }),
  );

  it.each(['tyre', 'wheel', 'upperArm', 'coilover'])(
    'of %s lies under every gap in it, and near the least when the cell is small',
    (name) => {
      const pair = pairsOf(model, sheet).find(({ names }) => names.includes(name))!;
      fc.assert(
        fc.property(place, (at) => {
          const cell = cellAt(createCellTree(assemble(model), range), at);
          const { bound, least } = overCell(model, pair, cell);
          expect(bound).toBeLessThan(least + 0.011);
          // The shortfall goes with the square of the cell's size: of a cell of half a millimetre it is a hair.
          if (at.travelLevel >= 6) expect(bound).toBeGreaterThan(least - 0.05);
        }),
        { seed: 21, numRuns: 25 },
      );
    },
  );
});

describe('certified gaps to a mesh', () => {
  it.each<[string, Point, Point]>([
    ['a plate above the tyre', [-150, 560, 440], [150, 800, 452]],
    ['a block before the wheel', [400, 500, -80], [470, 760, 120]],
    ['a rail beside the arms', [-300, 300, 150], [300, 350, 200]],
  ])('of a box are those of the box itself: %s', (_, min, max) => {
    const box: Obstacle = { name: NAME, shape: 'box', min, max };
    const wanted = proofs(modelWith(box));
    const found = proofs(modelWith(MESH), surfaceOf(boxMesh(min, max)));
    expect([...found.keys()].sort()).toEqual([...wanted.keys()].sort());
    for (const [name, result] of wanted) {
      // A mesh has no inside: where the box is entered, the two mean different depths.
      if (result.least <= 0) continue;
      const room = result.least < 25 ? DECIDED + 0.02 : 2.1;
      expect(Math.abs(found.get(name)!.least - result.least), name).toBeLessThan(room);
      expect(Math.abs(found.get(name)!.provenAtLeast - result.provenAtLeast), name).toBeLessThan(
        room,
      );
    }
  });

  it('of a wavy sheet over the tyre lie under every sampled gap, and near the least', () => {
    const sheet = sheetMesh(
      [500, 300],
      [40, 24],
      (x, y) => 430 + 6 * Math.sin(x / 40) * Math.cos(y / 30),
    );
    const placed = { ...MESH, position: [0, 680, 0], rotation: [4, -3, 10] } as const;
    expectProven(modelWith(placed), surfaceOf(sheet, placed));
  });

  it('of a plate that the tyre cuts into too', () => {
    const plate = boxMesh([-200, 620, 425], [200, 760, 431]);
    expectProven(modelWith(MESH), surfaceOf(plate));
  });
});
