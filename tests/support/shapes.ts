/** Random shapes and poses for clearances, and plain, slow ways to measure them. */
import fc from 'fast-check';
import {
  type BoxShape,
  type ChainShape,
  type RevolvedShape,
  type Section,
  type Shape,
  Slot,
  type Vector3,
  type WatchedPair,
} from '../../solver/index.ts';
import { createPose, type Pose } from '../../solver/linkage/solve.ts';

/** Thousandths, evenly spread: numbers that are spread over all exponents are nearly all tiny. */
function even(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: 1000 * min, max: 1000 * max }).map((value) => value / 1000);
}

const coordinate = even(-320, 320);
export const point: fc.Arbitrary<Vector3> = fc.tuple(coordinate, coordinate, coordinate);

export const chain: fc.Arbitrary<ChainShape> = fc
  .array(
    fc
      .array(fc.tuple(point, even(3, 40)), {
        minLength: 2,
        maxLength: 4,
      })
      .map((broken) => ({
        points: Float64Array.from(broken.flatMap(([at]) => at)),
        radii: Float64Array.from(broken.slice(1).map(([, radius]) => radius)),
      })),
    { minLength: 1, maxLength: 2 },
  )
  .map((strands) => ({ kind: 'chain', name: 'chain', body: 'vehicle', strands }));

export const box: fc.Arbitrary<BoxShape> = fc
  .tuple(point, fc.tuple(...[0, 1, 2].map(() => even(5, 500))))
  .map(([min, size]) => ({
    kind: 'box',
    name: 'box',
    body: 'vehicle',
    min,
    max: min.map((low, i) => low + size[i]!) as unknown as Vector3,
  }));

function revolved(sections: readonly Section[]): RevolvedShape {
  const at = sections.flatMap(({ line }) => [...line]);
  const along = at.filter((_, i) => i % 2 === 0);
  const radii = at.filter((_, i) => i % 2 === 1);
  return {
    kind: 'revolved',
    name: 'wheel',
    body: 'knuckle',
    sections,
    extent: {
      sLow: Math.min(...along),
      sHigh: Math.max(...along),
      radiusLow: Math.min(...radii),
      radiusHigh: Math.max(...radii),
    },
  };
}

/** Thin metal: a barrel and a disc, some of it level, upright or down to the axis. */
export const shell: fc.Arbitrary<RevolvedShape> = fc
  .tuple(
    fc.array(fc.tuple(fc.integer({ min: -130, max: 130 }), fc.integer({ min: 120, max: 300 })), {
      minLength: 2,
      maxLength: 5,
    }),
    fc.tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: 0, max: 80 })),
    even(0, 6),
  )
  .map(([barrel, disc, half]) =>
    revolved([
      { name: 'barrel', line: Float64Array.from(barrel.flat()), half, solid: false },
      {
        name: 'disc',
        line: Float64Array.from([...disc, disc[0], 210]),
        half,
        solid: false,
      },
    ]),
  );

/** A solid like a tyre's or a brake's: convex, or with a notch in its tread. */
export const solid: fc.Arbitrary<RevolvedShape> = fc
  .record({
    width: fc.integer({ min: 40, max: 160 }),
    low: fc.integer({ min: 60, max: 220 }),
    high: fc.integer({ min: 30, max: 140 }),
    notch: fc.constantFrom(0, 0, 0, 25),
  })
  .map(({ width, low, high, notch }) => {
    const top = low + high;
    const line = [
      [-width * 0.7, low],
      [-width, low + high / 2],
      [-width * 0.6, top],
      ...(notch === 0 ? [] : [[0, top - notch]]),
      [width * 0.6, top],
      [width, low + high / 2],
      [width * 0.7, low],
      [-width * 0.7, low],
    ];
    return revolved([{ name: 'tyre', line: Float64Array.from(line.flat()), half: 0, solid: true }]);
  });

/** A pose in which only the wheel stands somewhere: any way round, at times exactly along an axis of the vehicle. */
export const wheelPose: fc.Arbitrary<Pose> = fc
  .tuple(
    point,
    fc.oneof(
      fc.tuple(coordinate, coordinate, coordinate),
      fc.constantFrom<[number, number, number]>([0, 1, 0], [1, 0, 0], [0, 0, -1], [0, 3, 4]),
    ),
  )
  .filter(([, axis]) => Math.hypot(...axis) > 0.5)
  .map(([centre, axis]) => {
    const pose = createPose();
    const size = Math.hypot(...axis);
    pose.data.set(centre, Slot.centre);
    pose.data.set(
      axis.map((part) => part / size),
      Slot.hubAxis,
    );
    return pose;
  });

export function pairOf(first: Shape, second: Shape): WatchedPair {
  return { names: [first.name, second.name], first, second, required: 0, isConstant: false };
}

/** Pieces of a chain that stands still: both ends, and the radius. */
export function piecesOf({ strands }: ChainShape): { a: Vector3; b: Vector3; radius: number }[] {
  return strands.flatMap(({ points, radii }) =>
    [...radii].map((radius, i) => ({
      a: [...points.slice(3 * i, 3 * i + 3)] as unknown as Vector3,
      b: [...points.slice(3 * i + 3, 3 * i + 6)] as unknown as Vector3,
      radius,
    })),
  );
}

export function between(a: Vector3, b: Vector3, share: number): Vector3 {
  return [0, 1, 2].map((i) => a[i]! + share * (b[i]! - a[i]!)) as unknown as Vector3;
}

export function apart(a: ArrayLike<number>, b: ArrayLike<number>): number {
  return Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);
}

/** Distance of a point to a segment. */
export function toSegment(p: Vector3, a: Vector3, b: Vector3): number {
  const along = [0, 1, 2].map((i) => b[i]! - a[i]!);
  const squared = along.reduce((sum, v) => sum + v * v, 0);
  const dot = along.reduce((sum, v, i) => sum + v * (p[i]! - a[i]!), 0);
  return apart(p, between(a, b, Math.min(1, Math.max(0, squared > 0 ? dot / squared : 0))));
}

/** Signed distance of a point to a solid box: negative inside. It is a convex function. */
export function toBox(p: Vector3, { min, max }: BoxShape): number {
  const off = [0, 1, 2].map((i) => Math.max(min[i]! - p[i]!, p[i]! - max[i]!));
  const deepest = Math.max(...off);
  return deepest <= 0 ? deepest : Math.hypot(...off.map((v) => Math.max(0, v)));
}

/** Signed distance of a point to sections about the wheel's axis, less their half thickness; negative inside a solid. */
export function toSections(p: Vector3, { sections }: RevolvedShape, { data }: Pose): number {
  let s = 0;
  for (let i = 0; i < 3; i += 1) {
    s += (p[i]! - data[Slot.centre + i]!) * data[Slot.hubAxis + i]!;
  }
  let far = 0;
  for (let i = 0; i < 3; i += 1) {
    const off = p[i]! - data[Slot.centre + i]! - s * data[Slot.hubAxis + i]!;
    far += off * off;
  }
  let least = Number.POSITIVE_INFINITY;
  for (const section of sections) {
    least = Math.min(least, inPlane(section, s, Math.sqrt(far)) - section.half);
  }
  return least;
}

/** Signed distance in the plane; inside is where the line winds about the point. */
function inPlane({ line, solid: isSolid }: Section, s: number, radius: number): number {
  let squared = Number.POSITIVE_INFINITY;
  let winding = 0;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const [x, y] = [line[at]! - s, line[at + 1]! - radius];
    const [u, v] = [line[at + 2]! - s, line[at + 3]! - radius];
    const [ex, ey] = [u - x, v - y];
    const size = ex * ex + ey * ey;
    const share = size > 0 ? Math.min(1, Math.max(0, -(x * ex + y * ey) / size)) : 0;
    squared = Math.min(squared, (x + share * ex) ** 2 + (y + share * ey) ** 2);
    if (isSolid) winding += Math.atan2(x * v - u * y, x * u + y * v);
  }
  return isSolid && Math.abs(winding) > Math.PI ? -Math.sqrt(squared) : Math.sqrt(squared);
}

/** The least of a function between 0 and 1, which falls and then rises: thirds, to the last digit. */
export function valley(of: (x: number) => number, from = 0, to = 1): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 90; i += 1) {
    const third = (high - low) / 3;
    if (of(low + third) <= of(high - third)) high -= third;
    else low += third;
  }
  return Math.min(of(from), of(to), of((low + high) / 2));
}
