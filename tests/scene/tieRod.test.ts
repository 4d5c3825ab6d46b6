import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { rodPieces } from '../../solver/clearance/rodPieces.ts';
import { assemble } from '../../solver/index.ts';
import { createSolid } from '../../src/scene/geometry/solid.ts';
import { addTube, roundedPath } from '../../src/scene/geometry/sweep.ts';
import { buildTieRod, rodPath, rodStretches } from '../../src/scene/geometry/tieRod.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { SHIPPED, shipped } from '../support/models.ts';
import { openEdges, volume } from '../support/surface.ts';

const MODELS = [
  ...SHIPPED.map((name) => ({ name, model: shipped(name) })),
  { name: 'full', model: FULL_MODEL },
];

describe.each(MODELS)('the tie rod of $name', ({ model }) => {
  const corner = assemble(model);
  const pieces = rodPieces(corner);
  const hasProfile = model.tieRod.profile !== undefined;
  const stretches = rodStretches(pieces, hasProfile);

  it('is cut into stretches that follow each other from joint to joint', () => {
    expect(stretches[0]!.from).toBe(0);
    expect(stretches.at(-1)!.to).toBeCloseTo(pieces.lengths.at(-1)!, 9);
    const joints = stretches.slice(1).map(({ from }) => from);
    expect(joints).toEqual(stretches.slice(0, -1).map(({ to }) => to));
  });

  it("lies inside the solver's rod everywhere between its joints", () => {
    const assembly = buildTieRod(corner, new Vector3(0, 1, 0));
    const at = (i: number): Vector3 =>
      new Vector3(
        ...(pieces.points.slice(3 * i, 3 * i + 3) as unknown as [number, number, number]),
      );
    const length = pieces.lengths.at(-1)!;
    let looked = 0;
    for (const solid of [assembly.rod, assembly.steel]) {
      for (let v = 0; v < solid!.positions.length; v += 3) {
        const vertex = new Vector3(
          ...(solid!.positions.slice(v, v + 3) as [number, number, number]),
        );
        // The housing at the outer joint and the ball at the inner one are bodies of their own.
        if (vertex.length() < 30 || vertex.distanceTo(at(pieces.radii.length)) < 30) continue;
        let outside = Number.POSITIVE_INFINITY;
        pieces.radii.forEach((radius, i) => {
          const from = at(i);
          const along = at(i + 1).sub(from);
          const share = Math.min(
            1,
            Math.max(0, vertex.clone().sub(from).dot(along) / along.lengthSq()),
          );
          outside = Math.min(
            outside,
            from.addScaledVector(along, share).distanceTo(vertex) - radius,
          );
        });
        expect(outside).toBeLessThan(1e-6);
        looked += 1;
      }
    }
    expect(looked).toBeGreaterThan(60);
    expect(length).toBeGreaterThan(60);
  });

  it('has one jam nut, hexagonal, where the model does not state otherwise', () => {
    const nuts = stretches.filter(({ form }) => form === 'hex');
    if (!hasProfile) expect(nuts).toHaveLength(1);
    for (const { from, to } of nuts) expect(rodPath(pieces, from, to)).toHaveLength(2);
  });
});

describe('a tube', () => {
  const points = [new Vector3(0, 0, 0), new Vector3(100, 0, 20), new Vector3(180, 60, 20)];

  it('ends at its points and keeps its radius', () => {
    const solid = createSolid();
    addTube(solid, points, 12, { segments: 16, capped: false });
    const ring = (start: number): Vector3[] =>
      Array.from({ length: 16 }, (_, j) =>
        new Vector3().fromArray(solid.positions, 3 * (start + j)),
      );
    for (const [start, end] of [
      [0, points[0]!],
      [solid.positions.length / 3 - 17, points[2]!],
    ] as const) {
      const corners = ring(start);
      const middle = corners
        .reduce((sum, corner) => sum.add(corner), new Vector3())
        .divideScalar(16);
      expect(middle.distanceTo(end)).toBeLessThan(1e-9);
      for (const corner of corners) expect(corner.distanceTo(end)).toBeCloseTo(12, 9);
    }
  });

  it('is closed by its caps and faces outwards', () => {
    const solid = createSolid();
    addTube(solid, points, 12, { segments: 64 });
    expect(openEdges(solid)).toBe(0);
    const length = roundedPath(points, 24).reduce(
      (sum, point, i, path) => (i === 0 ? 0 : sum + point.distanceTo(path[i - 1]!)),
      0,
    );
    expect(volume(solid) / (Math.PI * 144 * length)).toBeCloseTo(1, 2);
  });

  it('rounds a bend within its corner, by the radius asked for', () => {
    const path = roundedPath(
      [new Vector3(), new Vector3(100, 0, 0), new Vector3(100, 100, 0)],
      30,
      8,
    );
    const centre = new Vector3(70, 30, 0);
    for (const point of path.slice(1, -1)) expect(point.distanceTo(centre)).toBeCloseTo(30, 9);
  });
});
