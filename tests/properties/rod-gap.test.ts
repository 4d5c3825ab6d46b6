import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  assemble,
  createPose,
  createRodGap,
  type Model,
  type Pose,
  placeParts,
  type RodGap,
  rodGapInto,
  Slot,
  solve,
  type Vector3,
} from '../../solver/index.ts';
import { buildable, inRange, place } from '../support/arbitraries.ts';
import { shipped } from '../support/models.ts';

const SAMPLES = 3000;

/** Planar distance from (s, ρ) to a polyline, and whether a closed one holds the point. */
function toSection(
  line: Float64Array,
  s: number,
  radius: number,
): { distance: number; inside: boolean } {
  let distance = Number.POSITIVE_INFINITY;
  let winding = 0;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const [s0, r0, s1, r1] = line.slice(at, at + 4) as unknown as [number, number, number, number];
    const es = s1 - s0;
    const er = r1 - r0;
    const t = Math.min(1, Math.max(0, ((s - s0) * es + (radius - r0) * er) / (es * es + er * er)));
    distance = Math.min(distance, Math.hypot(s - s0 - t * es, radius - r0 - t * er));
    winding += Math.atan2(
      (s0 - s) * (r1 - radius) - (s1 - s) * (r0 - radius),
      (s0 - s) * (s1 - s) + (r0 - radius) * (r1 - radius),
    );
  }
  return { distance, inside: Math.abs(winding) > Math.PI };
}

/** The least gap by dense sampling along the rod, in vehicle axes, with its own projection. */
function bySampling(rod: RodGap, { data }: Pose): number {
  const { points, radii } = rod.pieces;
  const f = Slot.rodFrame;
  const at = (i: number): Vector3 =>
    [0, 1, 2].map(
      (k) =>
        data[Slot.outer + k]! +
        points[3 * i]! * data[f + k]! +
        points[3 * i + 1]! * data[f + 3 + k]! +
        points[3 * i + 2]! * data[f + 6 + k]!,
    ) as unknown as Vector3;
  const axis = [0, 1, 2].map((k) => data[Slot.hubAxis + k]!);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < radii.length; i += 1) {
    const [a, b] = [at(i), at(i + 1)];
    for (let j = 0; j <= SAMPLES; j += 1) {
      const p = a.map((v, k) => v + ((b[k]! - v) * j) / SAMPLES - data[Slot.centre + k]!);
      const s = p.reduce((sum, v, k) => sum + v * axis[k]!, 0);
      const radius = Math.hypot(...p.map((v, k) => v - s * axis[k]!));
      for (const section of rod.sections) {
        const { distance, inside } = toSection(section.line, s, radius);
        const signed = section.solid && inside ? -distance : distance - section.half;
        least = Math.min(least, signed - radii[i]!);
      }
    }
  }
  return least;
}

const withRod = fc
  .record({
    model: buildable,
    bend: fc.option(
      fc.tuple(
        fc.integer({ min: -40, max: 40 }),
        fc.double({ min: 0.2, max: 0.9, noNaN: true }),
        fc.integer({ min: -40, max: 40 }),
      ),
    ),
    profile: fc.boolean(),
    offset: fc.integer({ min: -20, max: 75 }),
  })
  .map(({ model, bend, profile, offset }): Model => {
    const { inner, outer } = model.tieRod;
    const { bends: _, profile: __, ...plain } = model.tieRod;
    const bent: Vector3 | null =
      bend === null
        ? null
        : [
            inner[0] + (outer[0] - inner[0]) * bend[1] + bend[0],
            inner[1] + (outer[1] - inner[1]) * bend[1],
            inner[2] + (outer[2] - inner[2]) * bend[1] + bend[2],
          ];
    return {
      ...model,
      wheel: { ...model.wheel, offset },
      tieRod: {
        ...plain,
        ...(bent === null ? {} : { bends: [bent] }),
        ...(profile
          ? {
              profile: [
                [0, 30],
                [40, 38],
                [58, 22],
              ] as const,
            }
          : {}),
      },
    };
  });

describe('tie rod against its wheel and tyre', () => {
  it.each(['wheel', 'tyre'] as const)('agrees with dense sampling to 0.01 mm: %s', (against) => {
    const pose = createPose();
    let compared = 0;
    fc.assert(
      fc.property(withRod, place, (model, where) => {
        const corner = assemble(model);
        if (solve(corner, pose, ...inRange(model, where)) !== 'reached') return;
        placeParts(corner, pose.data);
        const rod = createRodGap(corner, against);
        rodGapInto(rod, pose);
        const sampled = bySampling(rod, pose);
        compared += 1;
        // Samples can only miss the least, by little: the rod is cut into pieces of at most 0.2 mm.
        expect(rod.gap).toBeLessThanOrEqual(sampled + 1e-6);
        expect(sampled - rod.gap).toBeLessThan(0.01);
      }),
      { numRuns: 120, seed: 20261125 },
    );
    expect(compared).toBeGreaterThan(90);
  });

  it('gives two nearest points that are that far apart, one on the rod, one on the section', () => {
    const pose = createPose();
    fc.assert(
      fc.property(withRod, place, (model, where) => {
        const corner = assemble(model);
        if (solve(corner, pose, ...inRange(model, where)) !== 'reached') return;
        placeParts(corner, pose.data);
        const rod = createRodGap(corner, 'wheel');
        rodGapInto(rod, pose);
        const { pieces, rodPoint, wheelPoint } = rod;
        const apart = Math.hypot(...[0, 1, 2].map((i) => rodPoint[i]! - wheelPoint[i]!));
        const piece = Math.max(
          0,
          pieces.lengths.findIndex((length) => length > rod.fromOuter + 1e-9) - 1,
        );
        const { half } = rod.sections.find(({ name }) => name === rod.place)!;
        const radii = [
          pieces.radii[piece]!,
          pieces.radii[piece - 1] ?? Number.NaN,
          pieces.radii.at(-1)!,
        ];
        expect(radii.some((radius) => Math.abs(apart - radius - half - rod.gap) < 1e-6)).toBe(true);
        const [s, radius] = rod.sectionPoint;
        const off = [0, 1, 2].map((i) => wheelPoint[i]! - pose.data[Slot.centre + i]!);
        const along = off.reduce((sum, v, i) => sum + v * pose.data[Slot.hubAxis + i]!, 0);
        expect(Math.abs(along - s)).toBeLessThan(1e-6);
        expect(Math.abs(Math.hypot(...off) ** 2 - s * s - radius * radius)).toBeLessThan(1e-3);
      }),
      { numRuns: 150, seed: 11 },
    );
  });

  it('does not depend on what was measured before', () => {
    const corner = assemble(shipped('half-ton-long-travel'));
    const pose = createPose();
    const used = createRodGap(corner, 'wheel');
    for (let i = 0; i < 200; i += 1) {
      solve(corner, pose, -170 + ((i * 37) % 330), -80 + ((i * 53) % 160));
      placeParts(corner, pose.data);
      const fresh = createRodGap(corner, 'wheel');
      rodGapInto(used, pose);
      rodGapInto(fresh, pose);
      expect(Math.abs(used.gap - fresh.gap)).toBeLessThan(1e-12);
    }
  });
});

/** Least gap of a model over a grid of its travel and the given part of its lock. */
function leastGap(model: Model, fromLock: number): number {
  const corner = assemble(model);
  const pose = createPose();
  const rod = createRodGap(corner, 'wheel');
  const [left] = model.steering!.limit!;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= 40; i += 1) {
    for (let j = 0; j <= 20; j += 1) {
      const travel = -model.travel.droop + ((model.travel.droop + model.travel.bump) * i) / 40;
      const rack = left * (fromLock + ((1 - fromLock) * j) / 20);
      expect(solve(corner, pose, travel, rack)).toBe('reached');
      placeParts(corner, pose.data);
      rodGapInto(rod, pose);
      least = Math.min(least, rod.gap);
    }
  }
  return least;
}

describe('the long-travel corner', () => {
  const straight = shipped('half-ton-long-travel');

  it('meets the wheel’s inner lip near full right lock with its straight rod, and nowhere else', () => {
    expect(straight.tieRod.bends).toBeUndefined();
    expect(leastGap(straight, 0.9)).toBeLessThan(0);
    expect(leastGap({ ...straight, steering: { limit: [-70, 92] } }, 0)).toBeGreaterThan(0);
  });

  it('clears it by the wanted gap with the two bends its notes name', () => {
    const named = [...straight.notes!.matchAll(/\[(-?\d+), (-?\d+), (-?\d+)\]/g)].map(
      ([, x, y, z]) => [Number(x), Number(y), Number(z)] as const,
    );
    expect(named).toHaveLength(2);
    const bent = { ...straight, tieRod: { ...straight.tieRod, bends: named } };
    expect(leastGap(bent, 0)).toBeGreaterThan(straight.required!['tieRod/wheel']!);
  });
});
