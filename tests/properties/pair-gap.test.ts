import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BoxShape,
  createMeshGap,
  createPairGap,
  type MeshSurface,
  pairGapInto,
  type RevolvedShape,
  type Shape,
  Slot,
  type Vector3,
} from '../../solver/index.ts';
import { createPose, type Pose } from '../../solver/linkage/solve.ts';
import {
  apart,
  between,
  box,
  chain,
  pairOf,
  piecesOf,
  point,
  shell,
  solid,
  toBox,
  toSections,
  toSegment,
  valley,
  wheelPose,
} from '../support/shapes.ts';

/** Rounding of a closed form, mm. */
const ROUNDING = 1e-6;
/** What is promised, mm. */
const PROMISED = 0.01;

function measured(first: Shape, second: Shape, pose: Pose = createPose()) {
  const out = createPairGap(pairOf(first, second));
  pairGapInto(out, pose);
  return out;
}

/** The nearest points of an answer are as far apart as it says, where the surfaces are apart. */
function expectPointsToAgree({ gap, pointA, pointB, halfA, halfB }: ReturnType<typeof measured>) {
  const thick = halfA + halfB;
  if (gap > -thick + ROUNDING) {
    expect(Math.abs(apart(pointA, pointB) - thick - gap)).toBeLessThan(ROUNDING);
  }
}

function shifted<S extends Shape>(shape: S, by: Vector3): S {
  const move = (at: Vector3): Vector3 => [at[0] + by[0], at[1] + by[1], at[2] + by[2]];
  if (shape.kind === 'box') return { ...shape, min: move(shape.min), max: move(shape.max) };
  if (shape.kind !== 'chain') return shape;
  const strands = shape.strands.map(({ points, radii }) => ({
    points: points.map((v, i) => v + by[i % 3]!),
    radii,
  }));
  return { ...shape, strands };
}

/** The answer is the same when all is moved, and the same the other way round, points with it. */
function expectLaws(first: Shape, second: Shape, pose: Pose, by: Vector3) {
  const plain = measured(first, second, pose);
  const turned = measured(second, first, pose);
  expect(Math.abs(turned.gap - plain.gap)).toBeLessThan(ROUNDING);
  if (first.kind !== second.kind) {
    expect([...turned.pointA]).toEqual([...plain.pointB]);
    expect([turned.halfA, turned.halfB]).toEqual([plain.halfB, plain.halfA]);
  }
  const moved = createPose();
  moved.data.set(pose.data);
  for (let i = 0; i < 3; i += 1) moved.data[Slot.centre + i]! += by[i]!;
  const there = measured(shifted(first, by), shifted(second, by), moved);
  expect(Math.abs(there.gap - plain.gap)).toBeLessThan(2 * PROMISED);
}

describe('chain and chain', () => {
  it('agrees with the valley of a convex function, in both directions', () => {
    let crossing = 0;
    fc.assert(
      fc.property(chain, chain, (first, second) => {
        const out = measured(first, second);
        const slow = piecesOf(first).flatMap((p) =>
          piecesOf(second).map((q) => {
            const along = (share: number) => toSegment(between(p.a, p.b, share), q.a, q.b);
            return valley(along) - p.radius - q.radius;
          }),
        );
        expect(Math.abs(out.gap - Math.min(...slow))).toBeLessThan(ROUNDING);
        if (out.gap < 0) crossing += 1;
        expectPointsToAgree(out);
      }),
      { numRuns: 300, seed: 1 },
    );
    expect(crossing).toBeGreaterThan(30);
  });

  it('knows parallel, crossing and pointlike pieces', () => {
    const strand = (points: number[], radius: number) =>
      ({
        kind: 'chain',
        name: 'chain',
        body: 'vehicle',
        strands: [
          {
            points: Float64Array.from(points),
            radii: new Float64Array(points.length / 3 - 1).fill(radius),
          },
        ],
      }) as const;
    const level = strand([0, 0, 0, 100, 0, 0], 5);
    expect(measured(level, strand([20, 30, 0, 60, 30, 0], 5)).gap).toBe(20);
    expect(measured(level, strand([130, 0, 0, 180, 0, 0], 5)).gap).toBe(20);
    expect(measured(level, strand([50, -40, 0, 50, 40, 0], 7)).gap).toBe(-12);
    expect(measured(level, strand([50, 12, 0, 50, 12, 0], 1)).gap).toBe(6);
  });
});

describe('chain and box', () => {
  it('agrees with the valley of the signed distance, outside and inside', () => {
    let inside = 0;
    fc.assert(
      fc.property(chain, box, (first, second) => {
        const out = measured(first, second);
        const slow = piecesOf(first).map(
          ({ a, b, radius }) => valley((share) => toBox(between(a, b, share), second)) - radius,
        );
        expect(Math.abs(out.gap - Math.min(...slow))).toBeLessThan(ROUNDING);
        if (out.gap < -out.halfA - 1) inside += 1;
        expectPointsToAgree(out);
        expect(Math.abs(toBox([...out.pointB] as unknown as Vector3, second))).toBeLessThan(
          ROUNDING,
        );
      }),
      { numRuns: 400, seed: 2 },
    );
    expect(inside).toBeGreaterThan(30);
  });
});

const SAMPLES = 400;

describe.each([
  ['thin', shell],
  ['solid', solid],
] as const)('chain and %s sections', (_, sections) => {
  it('agrees with dense sampling, depths too', () => {
    let inside = 0;
    fc.assert(
      fc.property(chain, sections, wheelPose, (first, second, pose) => {
        const out = measured(first, second, pose);
        const slow = piecesOf(first).map(({ a, b, radius }) => {
          const along = (share: number) => toSections(between(a, b, share), second, pose) - radius;
          const rough = Array.from({ length: SAMPLES + 1 }, (__, i) => along(i / SAMPLES));
          // The lowest samples are looked into: there may be several valleys.
          const lowest = rough.map((_value, i) => i).sort((p, q) => rough[p]! - rough[q]!);
          return Math.min(
            ...lowest
              .slice(0, 4)
              .map((i) =>
                valley(along, Math.max(0, i - 1) / SAMPLES, Math.min(SAMPLES, i + 1) / SAMPLES),
              ),
          );
        });
        const least = Math.min(...slow);
        expect(out.gap - least).toBeLessThan(0.003);
        // Where a centreline runs through thin metal more than once the samples may miss by how.
        expect(least - out.gap).toBeLessThan(sections === solid ? PROMISED : 0.2);
        if (out.gap < -out.halfA - out.halfB - 1) inside += 1;
        expectPointsToAgree(out);
      }),
      { numRuns: 60, seed: 3, endOnFailure: true },
    );
    expect(inside > 5).toBe(sections === solid);
  });

  it('and a chain that runs through the axis', () => {
    fc.assert(
      fc.property(sections, point, point, wheelPose, (second, a, b, pose) => {
        const centre = [...pose.data.slice(Slot.centre, Slot.centre + 3)] as unknown as Vector3;
        const first = {
          kind: 'chain',
          name: 'chain',
          body: 'vehicle',
          strands: [
            {
              points: Float64Array.from([...a, ...centre, ...centre, ...b]),
              radii: Float64Array.of(4, 4, 4),
            },
          ],
        } as const;
        const out = measured(first, second, pose);
        const slow = piecesOf(first).map((piece) => {
          const values = Array.from({ length: 1501 }, (__, i) =>
            toSections(between(piece.a, piece.b, i / 1500), second, pose),
          );
          return Math.min(...values) - 4;
        });
        const least = Math.min(...slow);
        expect(out.gap - least).toBeLessThan(0.003);
        expect(least - out.gap).toBeLessThan(0.3);
      }),
      { numRuns: 20, seed: 4, endOnFailure: true },
    );
  });
});

/** Samples a box and descends from its lowest point at random, ever nearer. */
function bySampling(second: RevolvedShape, { min, max }: BoxShape, pose: Pose): number {
  const count = 12;
  const at = (i: number, share: number) => min[i]! + share * (max[i]! - min[i]!);
  let least = Number.POSITIVE_INFINITY;
  let best: Vector3 = min;
  const look = (p: Vector3) => {
    const value = toSections(p, second, pose);
    if (value >= least) return;
    least = value;
    best = p;
  };
  for (let i = 0; i <= count; i += 1) {
    for (let j = 0; j <= count; j += 1) {
      for (let k = 0; k <= count; k += 1) {
        look([at(0, i / count), at(1, j / count), at(2, k / count)]);
      }
    }
  }
  let seed = 12345;
  const random = () => {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    return (2 * seed) / 2147483648 - 1;
  };
  for (let reach = 60; reach > 0.004; reach *= 0.97) {
    for (let n = 0; n < 4; n += 1) {
      const from = best;
      look(
        [0, 1, 2].map((i) =>
          Math.min(max[i]!, Math.max(min[i]!, from[i]! + reach * random())),
        ) as unknown as Vector3,
      );
    }
  }
  return least;
}

describe.each([
  ['thin', shell],
  ['solid', solid],
] as const)('%s sections and box', (_, sections) => {
  it('agrees with dense sampling of the box, and has points that prove it', () => {
    let overlapping = 0;
    let clear = 0;
    fc.assert(
      fc.property(sections, box, wheelPose, (first, second, pose) => {
        const out = measured(first, second, pose);
        const slow = bySampling(first, second, pose);
        // No point of the box may be nearer …
        expect(out.gap - slow).toBeLessThan(0.003);
        // … and the point of the box that is named is as near.
        const named = toSections([...out.pointB] as unknown as Vector3, first, pose);
        expect(Math.abs(named - out.gap)).toBeLessThan(1e-4);
        expect(toBox([...out.pointB] as unknown as Vector3, second)).toBeLessThan(ROUNDING);
        expectPointsToAgree(out);
        if (out.gap < -out.halfA + ROUNDING) overlapping += 1;
        if (out.gap > 0) clear += 1;
      }),
      { numRuns: 70, seed: 5, endOnFailure: true },
    );
    expect(overlapping).toBeGreaterThan(8);
    expect(clear).toBeGreaterThan(8);
  });
});

describe('sections and sections about the same axis', () => {
  it('agrees with sampling the thin one’s lines', () => {
    fc.assert(
      fc.property(shell, solid, wheelPose, (first, second, pose) => {
        const u = across(pose);
        pose.data.set(u, Slot.wheelUp);
        const out = measured(first, second, pose);
        const slow = first.sections.flatMap(({ line, half }) =>
          Array.from({ length: line.length / 2 - 1 }, (_, edge) => {
            const values = Array.from({ length: 1001 }, (__, i) => {
              const share = i / 1000;
              const at = 2 * edge;
              const s = line[at]! + share * (line[at + 2]! - line[at]!);
              const radius = line[at + 1]! + share * (line[at + 3]! - line[at + 1]!);
              const p = [0, 1, 2].map(
                (k) =>
                  pose.data[Slot.centre + k]! + s * pose.data[Slot.hubAxis + k]! + radius * u[k]!,
              ) as unknown as Vector3;
              return toSections(p, second, pose);
            });
            return Math.min(...values) - half;
          }),
        );
        const least = Math.min(...slow);
        expect(out.gap - least).toBeLessThan(0.003);
        expect(least - out.gap).toBeLessThan(0.15);
        expectPointsToAgree(out);
      }),
      { numRuns: 40, seed: 6, endOnFailure: true },
    );
  });
});

/** A unit vector across the hub axis. */
function across({ data }: Pose): Vector3 {
  const [x, y, z] = [data[Slot.hubAxis]!, data[Slot.hubAxis + 1]!, data[Slot.hubAxis + 2]!];
  const u: Vector3 = Math.abs(z) < 0.8 ? [-y, x, 0] : [0, -z, y];
  const size = Math.hypot(...u);
  return [u[0] / size, u[1] / size, u[2] / size];
}

describe('a mesh', () => {
  /** A mesh of one point, which answers as the contract of `MeshSurface` says. */
  function pointMesh(at: Vector3): MeshSurface {
    return {
      bounds: { min: at, max: at },
      triangles: 1,
      gapToChain: (points, radii, out, beyond = Number.POSITIVE_INFINITY) => {
        out.gap = beyond;
        radii.forEach((radius, i) => {
          const a = [...points.slice(3 * i, 3 * i + 3)] as unknown as Vector3;
          const b = [...points.slice(3 * i + 3, 3 * i + 6)] as unknown as Vector3;
          const gap = toSegment(at, a, b) - radius;
          if (gap >= out.gap) return;
          out.gap = gap;
          out.piece = i;
          out.meshPoint.set(at);
        });
      },
      gapToRevolved: (sections, axle, out) => {
        const pose = createPose();
        pose.data.set(axle.slice(0, 3), Slot.centre);
        pose.data.set(axle.slice(3), Slot.hubAxis);
        const gaps = sections.map((section) =>
          toSections(at, { sections: [section] } as unknown as RevolvedShape, pose),
        );
        out.gap = Math.min(...gaps);
        out.piece = gaps.indexOf(out.gap);
        out.meshPoint.set(at);
      },
      leastNearSection: () => Number.NEGATIVE_INFINITY,
      leastNearSegment: () => Number.NEGATIVE_INFINITY,
    };
  }

  it('is asked strand by strand and about the wheel’s own axis', () => {
    expect(createMeshGap().gap).toBe(Number.POSITIVE_INFINITY);
    fc.assert(
      fc.property(chain, shell, point, wheelPose, (first, wheel, at, pose) => {
        const mesh = {
          kind: 'mesh',
          name: 'mesh',
          body: 'vehicle',
          surface: pointMesh(at),
        } as const;
        const out = measured(first, mesh, pose);
        const slow = piecesOf(first).map(({ a, b, radius }) => toSegment(at, a, b) - radius);
        expect(out.gap).toBeCloseTo(Math.min(...slow), 9);
        expect([...out.pointB]).toEqual([...at]);
        const turned = measured(mesh, wheel, pose);
        expect(turned.gap).toBeCloseTo(toSections(at, wheel, pose), 9);
        expect([...turned.pointA]).toEqual([...at]);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});

describe('every pair of shapes', () => {
  it('does not care which is named first, nor where all of it stands', () => {
    fc.assert(
      fc.property(
        fc.tuple(chain, chain, box, shell, solid),
        wheelPose,
        point,
        ([a, b, block, wheel, tyre], pose, by) => {
          pose.data.set(across(pose), Slot.wheelUp);
          const pairs: readonly (readonly [Shape, Shape])[] = [
            [a, b],
            [a, block],
            [a, wheel],
            [a, tyre],
            [wheel, block],
            [tyre, block],
          ];
          for (const [first, second] of pairs) expectLaws(first, second, pose, by);
        },
      ),
      { numRuns: 40, seed: 8, endOnFailure: true },
    );
  });
});
