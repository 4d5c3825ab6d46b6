import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createMeshGap, type MeshGap, type MeshSurface, type Section } from '../../solver/index.ts';
import type { MeshTriangles } from '../../src/mesh/data.ts';
import { type MeshObstacle, placingOf } from '../../src/mesh/placing.ts';
import { createMeshSurface } from '../../src/mesh/surface.ts';
import { buildTree } from '../../src/mesh/tree.ts';
import { boxMesh, tubeMesh } from '../support/meshShapes.ts';

/** What is promised of every distance, mm. */
const EXACT = 0.01;
/** Coordinates are kept in single precision: their rounding at a few hundred mm. */
const ROUNDING = 1e-4;

type Point = readonly [number, number, number];
type Place = Pick<MeshObstacle, 'position' | 'rotation'>;

function surfaceOf(mesh: MeshTriangles, place: Place = {}, scale = 1): MeshSurface {
  const obstacle: MeshObstacle = { name: 'part', shape: 'mesh', file: 'part.stl', ...place };
  return createMeshSurface(buildTree(mesh, scale), placingOf(obstacle));
}

function toChain(surface: MeshSurface, points: readonly Point[], radii: readonly number[]) {
  const gap = createMeshGap();
  surface.gapToChain(Float64Array.from(points.flat()), Float64Array.from(radii), gap);
  return gap;
}

function toSections(surface: MeshSurface, sections: readonly Section[], axle: readonly number[]) {
  const gap = createMeshGap();
  surface.gapToRevolved(sections, Float64Array.from(axle), gap);
  return gap;
}

const apart = ({ meshPoint, partPoint }: MeshGap): number =>
  Math.hypot(...[0, 1, 2].map((i) => meshPoint[i]! - partPoint[i]!));

/** Every point of a mesh on a grid of `steps` a side of each triangle. */
function samples({ positions, index }: MeshTriangles, steps: number): Point[] {
  const points: Point[] = [];
  for (let at = 0; at < index.length; at += 3) {
    const corners = [0, 1, 2].map((i) => positions.subarray(3 * index[at + i]!));
    for (let i = 0; i <= steps; i += 1) {
      for (let j = 0; i + j <= steps; j += 1) {
        const parts = [i / steps, j / steps, (steps - i - j) / steps];
        const at3 = (k: number) =>
          parts.reduce((sum, part, corner) => sum + part * corners[corner]![k]!, 0);
        points.push([at3(0), at3(1), at3(2)]);
      }
    }
  }
  return points;
}

const coordinate = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
const point = (most: number) => fc.tuple(coordinate(most), coordinate(most), coordinate(most));

/** Distance of a point from a segment. */
function fromSegment(p: Point, a: Point, b: Point): number {
  const d = [0, 1, 2].map((i) => b[i]! - a[i]!);
  const w = [0, 1, 2].map((i) => p[i]! - a[i]!);
  const square = d.reduce((sum, value) => sum + value * value, 0);
  const along = d.reduce((sum, value, i) => sum + value * w[i]!, 0) / (square || 1);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(...w.map((value, i) => value - t * d[i]!));
}

describe('a mesh and a thick polyline', () => {
  const box = boxMesh([-10, -20, -30], [10, 20, 30]);

  it.each<[string, readonly Point[], number]>([
    [
      'beside a face',
      [
        [40, -5, -5],
        [40, 5, 5],
      ],
      30 - 3,
    ],
    [
      'across an edge',
      [
        [13, 24, -50],
        [13, 24, 50],
      ],
      5 - 3,
    ],
    [
      'before a corner',
      [
        [12, 23, 36],
        [80, 90, 100],
      ],
      7 - 3,
    ],
    [
      'through a face',
      [
        [0, 0, 0],
        [50, 0, 0],
      ],
      -3,
    ],
    [
      'wholly inside',
      [
        [0, 0, -1],
        [0, 0, 1],
      ],
      10 - 3,
    ],
    [
      'of no length',
      [
        [10, 25, 42],
        [10, 25, 42],
      ],
      13 - 3,
    ],
    [
      'in a face',
      [
        [10, 0, 0],
        [10, 5, 0],
      ],
      -3,
    ],
  ])('%s', (_, points, wanted) => {
    const gap = toChain(surfaceOf(box), points, [3]);
    expect(gap.gap).toBeCloseTo(wanted, 9);
    expect(apart(gap) - 3).toBeCloseTo(gap.gap, 6);
  });

  it('is as far as the same box in closed form', () => {
    // A point is as far from a box as its coordinates' excess over the half sides.
    const surface = surfaceOf(box);
    fc.assert(
      fc.property(point(80), (place) => {
        const excess = place.map((value, i) => Math.abs(value) - [10, 20, 30][i]!);
        const outside = Math.hypot(...excess.map((value) => Math.max(0, value)));
        const wanted = Math.max(...excess) > 0 ? outside : -Math.max(...excess);
        expect(toChain(surface, [place, place], [0]).gap).toBeCloseTo(wanted, 6);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it('is as far as a tube in closed form, to the flatness of its strips', () => {
    // 720 strips of a 40 mm tube lie 40·(1 − cos 0.25°) = 0.0004 mm inside of it.
    const surface = surfaceOf(tubeMesh(600, 40, 720));
    fc.assert(
      fc.property(point(200), point(200), (a, b) => {
        // Beside the tube, not past its ends, and not through it: two axes at right angles or skew.
        const [from, to]: [Point, Point] = [
          [a[0], 60 + Math.abs(a[1]), a[2]],
          [b[0], 60 + Math.abs(b[1]), b[2]],
        ];
        const wanted = Math.min(
          ...Array.from({ length: 2001 }, (_, i) => {
            const at = (k: number) => from[k]! + (i / 2000) * (to[k]! - from[k]!);
            return Math.hypot(at(1), at(2)) - 40 - 5;
          }),
        );
        const { gap } = toChain(surface, [from, to], [5]);
        // Sampling every 0.3 mm at a distance of 60 mm misses the least by 0.3²/8/60.
        expect(gap).toBeLessThan(wanted + 0.001);
        expect(gap).toBeGreaterThan(wanted - 0.001);
      }),
      { seed: 12, numRuns: 60 },
    );
  });

  it('nothing sampled comes nearer, and the two points are as far apart as it says', () => {
    const grid = samples(box, 24);
    const surface = surfaceOf(box);
    fc.assert(
      fc.property(fc.array(point(70), { minLength: 2, maxLength: 4 }), (points) => {
        const radii = points.slice(1).map((_, i) => 2 + 3 * i);
        const gap = toChain(surface, points, radii);
        const sampled = Math.min(
          ...radii.flatMap((radius, i) =>
            grid.map((p) => fromSegment(p, points[i]!, points[i + 1]!) - radius),
          ),
        );
        expect(gap.gap).toBeLessThan(sampled + ROUNDING);
        // The grid is 2.5 mm wide: nothing can be nearer than its best by more.
        expect(gap.gap).toBeGreaterThan(sampled - 2.5);
        expect(apart(gap) - radii[gap.piece]!).toBeCloseTo(gap.gap, 4);
        const [a, b] = [points[gap.piece]!, points[gap.piece + 1]!];
        expect(fromSegment([...gap.partPoint] as unknown as Point, a, b)).toBeLessThan(ROUNDING);
      }),
      { seed: 13, numRuns: 100 },
    );
  });
});

const TYRE: Section = {
  name: 'tyre',
  line: Float64Array.of(
    ...[
      -110, 225, -125, 290, -105, 360, -75, 368, 75, 368, 105, 360, 125, 290, 110, 225, -110, 225,
    ],
  ),
  half: 0,
  solid: true,
};
const BARREL: Section = {
  name: 'barrel',
  line: Float64Array.of(-110, 235, -95, 215, -60, 180, 60, 190, 95, 215, 110, 235),
  half: 3,
  solid: false,
};
const DISC: Section = {
  name: 'disc',
  line: Float64Array.of(20, 60, 60, 190),
  half: 3,
  solid: false,
};

/** Signed distance of a point to a section about an axle, written plainly. */
function fromSection(section: Section, axle: readonly number[], p: Point): number {
  const w = [0, 1, 2].map((i) => p[i]! - axle[i]!);
  const s = w.reduce((sum, value, i) => sum + value * axle[3 + i]!, 0);
  const radius = Math.sqrt(Math.max(0, w.reduce((sum, value) => sum + value * value, 0) - s * s));
  const { line, solid, half } = section;
  let least = Number.POSITIVE_INFINITY;
  let crossings = 0;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const [s0, r0, s1, r1] = [line[at]!, line[at + 1]!, line[at + 2]!, line[at + 3]!];
    least = Math.min(least, fromSegment([s, radius, 0], [s0, r0, 0], [s1, r1, 0]));
    const isAcross = r0 > radius !== r1 > radius;
    if (isAcross && s < s0 + ((radius - r0) / (r1 - r0)) * (s1 - s0)) crossings += 1;
  }
  return (solid && crossings % 2 === 1 ? -least : least) - half;
}

const AXLE = [30, 700, -20, ...unit([0.12, 0.98, -0.05])];

function unit(vector: readonly number[]): number[] {
  const size = Math.hypot(...vector);
  return vector.map((value) => value / size);
}

describe('a mesh and sections of revolution', () => {
  it.each<[string, number, Point, Point, number]>([
    // The tread's radius is 368 mm, the flange's outer end at s = 125.
    ['a plate above the tread', 1, [-50, -50, 380], [50, 50, 384], 12],
    ['a wide plate above the tread', 1, [-900, -900, 380], [900, 900, 384], 12],
    ['a plate beside the side wall', 1, [-300, 130, 200], [300, 140, 400], 5],
    ['a plate that cuts the tread by 6 mm', 1, [-400, -200, 362], [400, 200, 480], -6],
  ])('%s', (_, which, min, max, wanted) => {
    const sections = which === 1 ? [TYRE] : [BARREL, DISC];
    const gap = toSections(surfaceOf(boxMesh(min, max)), sections, [0, 0, 0, 0, 1, 0]);
    expect(Math.abs(gap.gap - wanted)).toBeLessThan(EXACT);
  });

  it('a sheet through the barrel is minus half its thickness away', () => {
    const sheet = boxMesh([-500, -5, -500], [500, 500, 500]);
    const gap = toSections(surfaceOf(sheet), [BARREL, DISC], [0, 0, 0, 0, 1, 0]);
    expect(gap.gap).toBeLessThan(-3 + EXACT);
    expect(gap.gap).toBeGreaterThanOrEqual(-3);
  });

  it('a small part swallowed by the tyre is as deep as its deepest point', () => {
    const part = boxMesh([-10, -10, 300], [10, 10, 320]);
    const gap = toSections(surfaceOf(part), [TYRE], [0, 0, 0, 0, 1, 0]);
    const grid = samples(boxMesh([-10, -10, 300], [10, 10, 320]), 80);
    const deepest = Math.min(...grid.map((p) => fromSection(TYRE, [0, 0, 0, 0, 1, 0], p)));
    expect(gap.gap).toBeLessThan(deepest + EXACT);
    expect(gap.gap).toBeGreaterThan(deepest - 0.3);
  });

  const bodies: readonly (readonly Section[])[] = [[TYRE], [BARREL, DISC]];
  it.each([0, 1])('nothing sampled comes nearer (%s)', (which) => {
    const sections = bodies[which]!;
    const size = fc.double({ min: 2, max: 120, noNaN: true });
    fc.assert(
      fc.property(point(420), size, size, size, (at, x, y, z) => {
        const min: Point = [at[0] + 30, at[1] + 700, at[2] - 20];
        const max: Point = [min[0] + x, min[1] + y, min[2] + z];
        const mesh = boxMesh(min, max);
        const gap = toSections(surfaceOf(mesh), sections, AXLE);
        const steps = 30;
        const grid = samples(mesh, steps);
        const sampled = Math.min(
          ...sections.flatMap((section) => grid.map((p) => fromSection(section, AXLE, p))),
        );
        expect(gap.gap).toBeLessThan(sampled + EXACT);
        // A grid point lies within a step of every point, and distances change no faster.
        expect(gap.gap).toBeGreaterThan(sampled - Math.hypot(x, y, z) / steps);
        const { half, solid } = sections[gap.piece]!;
        const between = apart(gap) * (solid && gap.gap < 0 ? -1 : 1) - half;
        expect(between).toBeCloseTo(gap.gap, 3);
        const where = [...gap.meshPoint] as unknown as Point;
        expect(fromSection(sections[gap.piece]!, AXLE, where)).toBeCloseTo(gap.gap, 3);
      }),
      { seed: 14, numRuns: 60 },
    );
  });

  it('is as far as one ring in closed form', () => {
    // A ring of no thickness, 368 mm about the y axis, and a small triangle's corner: the distance of a point and a circle.
    const ring: Section = {
      name: 'disc',
      line: Float64Array.of(0, 368, 0, 368),
      half: 0,
      solid: false,
    };
    fc.assert(
      fc.property(point(600), ([x, y, z]) => {
        const mesh = boxMesh([x, y, z], [x + 1e-3, y + 1e-3, z + 1e-3]);
        const wanted = Math.hypot(y, Math.hypot(x, z) - 368);
        expect(
          Math.abs(toSections(surfaceOf(mesh), [ring], [0, 0, 0, 0, 1, 0]).gap - wanted),
        ).toBeLessThan(EXACT);
      }),
      { seed: 15, numRuns: 100 },
    );
  });
});

describe('a placed mesh', () => {
  const box = boxMesh([0, 0, 0], [10, 20, 30]);
  const turned = { position: [100, 200, 300], rotation: [90, 0, 90] } as const;

  it('stands where its turns and its place put it: about x, then y, then z', () => {
    // x to y to z: [10, 20, 30] goes to [10, −30, 20] and then to [30, 10, 20].
    const { min, max } = surfaceOf(box, turned).bounds;
    expect([...min, ...max]).toEqual([100, 200, 300, 130, 210, 320]);
  });

  it('is in the unit that was stated', () => {
    expect(surfaceOf(box, {}, 25.4).bounds.max.map((value) => Math.round(value * 10))).toEqual([
      2540, 5080, 7620,
    ]);
  });

  it('is as near as if the part had been moved the other way', () => {
    const placed = surfaceOf(box, turned);
    const plain = surfaceOf(boxMesh([100, 200, 300], [130, 210, 320]));
    fc.assert(
      fc.property(point(500), point(500), (a, b) => {
        const [one, other] = [placed, plain].map((surface) => toChain(surface, [a, b], [4]));
        expect(one!.gap).toBeCloseTo(other!.gap, 6);
        expect(apart(one!)).toBeCloseTo(apart(other!), 6);
        const axle = [...a, ...unit([b[0], b[1], b[2] + 1000])];
        const [first, second] = [placed, plain].map((surface) => toSections(surface, [TYRE], axle));
        expect(Math.abs(first!.gap - second!.gap)).toBeLessThan(EXACT);
      }),
      { seed: 16, numRuns: 60 },
    );
  });
});

describe('a question', () => {
  const surface = surfaceOf(boxMesh([-10, -10, -10], [10, 10, 10]));
  const far = Float64Array.of(100, 0, 0, 100, 50, 0);

  it('that needs no answer beyond a gap gets none', () => {
    const gap = createMeshGap();
    surface.gapToChain(far, Float64Array.of(5), gap, 40);
    expect(gap.gap).toBe(40);
    expect(gap.hint).toBe(-1);
    surface.gapToChain(far, Float64Array.of(5), gap, 90);
    expect(gap.gap).toBe(85);
    surface.gapToRevolved([TYRE], Float64Array.of(0, 900, 0, 0, 1, 0), gap, 100);
    expect(gap.gap).toBe(100);
  });

  it('is answered the same whatever was answered before', () => {
    const gap = createMeshGap();
    for (const x of [100, 30, -60, 12, 0, 100]) {
      const points = Float64Array.of(x, 0, 0, x, 50, 0);
      surface.gapToChain(points, Float64Array.of(5), gap);
      expect(gap.gap).toBe(
        toChain(
          surface,
          [
            [x, 0, 0],
            [x, 50, 0],
          ],
          [5],
        ).gap,
      );
    }
    for (const y of [400, 0, -300, 500]) {
      surface.gapToRevolved([TYRE], Float64Array.of(0, y, 0, 0, 1, 0), gap);
      const fresh = toSections(surface, [TYRE], [0, y, 0, 0, 1, 0]);
      expect(Math.abs(gap.gap - fresh.gap)).toBeLessThan(EXACT);
    }
  });
});
