import { describe, expect, it } from 'vitest';
import { tyreSections } from '../../solver/clearance/section.ts';
import { openEdges, volumeOf } from '../../solver/envelope/closed.ts';
import { sweptGaps } from '../../solver/envelope/cuts.ts';
import { createSweptField, isSwept, sweptDistance } from '../../solver/envelope/field.ts';
import { createNearest, createProfile, profileDistance } from '../../solver/envelope/profile.ts';
import { stopsShorten, sweptRange } from '../../solver/envelope/range.ts';
import { meshSwept, type SweptSurface } from '../../solver/envelope/surface.ts';
import { assemble, type Corner, createPose, type Model, Slot, solve } from '../../solver/index.ts';
import { placeFrames } from '../../solver/linkage/bodies.ts';
import { tyreDimensions } from '../../solver/model/tyre.ts';
import { shipped } from '../support/models.ts';
import { distanceToLine } from '../support/surface.ts';

/** mm: what a leaf may stray, plus the tolerance of a search. */
const STRAY = 0.05;
const TOLERANCE = 0.25;
const STEP = 16;

/** Small fixed chances, so that a failure can be had again. */
function chances(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

type Triple = [number, number, number];

/** Signed distance from a point to the tyre posed by the plain solver, or null where the pose is out of reach. */
function posedDistance(corner: Corner, travel: number, rack: number) {
  const pose = createPose();
  if (solve(corner, pose, travel, rack) !== 'reached') return null;
  placeFrames(corner.linkage.fixed, pose.data);
  const { data } = pose;
  const line = tyreSections(corner.model)[0]!.line;
  const profile = createProfile(line);
  const nearest = createNearest();
  const axis = [0, 1, 2].map((i) => data[Slot.hubAxis + i]!) as Triple;
  const centre = [0, 1, 2].map((i) => data[Slot.centre + i]!) as Triple;
  return {
    axis,
    centre,
    distance: ([x, y, z]: Triple): number => {
      const p = [x - centre[0], y - centre[1], z - centre[2]] as const;
      const s = p[0] * axis[0] + p[1] * axis[1] + p[2] * axis[2];
      const radius = Math.sqrt(Math.max(0, p[0] ** 2 + p[1] ** 2 + p[2] ** 2 - s * s));
      profileDistance(profile, s, radius, nearest);
      return nearest.distance;
    },
  };
}

/** Reached poses over the whole range, `count` a side, ends included. */
function posesOver(corner: Corner, count: number) {
  const { travel, rack } = sweptRange(corner.model, 'whole');
  const at = ([low, high]: readonly [number, number], i: number): number =>
    low + ((high - low) * i) / (count - 1);
  return Array.from({ length: count * count }, (_, i) =>
    posedDistance(corner, at(travel, Math.floor(i / count)), at(rack, i % count)),
  ).filter((posed) => posed !== null);
}

function run<T>(work: Generator<unknown, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

function meshOf(corner: Corner, margin = 0): SweptSurface {
  return run(meshSwept(createSweptField(corner, 'whole', STRAY)!, margin, STEP, TOLERANCE));
}

/** How often a ray from the point straight up leaves the surface, less how often it enters: 1 inside, 0 outside. */
function windingAbove({ positions, triangles }: SweptSurface, [x, y, z]: Triple): number {
  let winding = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * triangles[i + k]!) as Triple;
    const side = (p: number, q: number): number =>
      (positions[q]! - positions[p]!) * (y - positions[p + 1]!) -
      (positions[q + 1]! - positions[p + 1]!) * (x - positions[p]!);
    const [u, v, w] = [side(b, c), side(c, a), side(a, b)];
    if (u > 0 !== v > 0 || v > 0 !== w > 0) continue;
    const height =
      (u * positions[a + 2]! + v * positions[b + 2]! + w * positions[c + 2]!) / (u + v + w);
    if (height > z) winding += u > 0 ? 1 : -1;
  }
  return winding;
}

describe('the section as a signed distance', () => {
  it('agrees with its line everywhere, and has the distance’s gradient', () => {
    const { line } = tyreSections(shipped('half-ton-factory'))[0]!;
    const profile = createProfile(line);
    expect(profile.isConvex).toBe(true);
    const hollow = createProfile(Float64Array.of(-10, 0, -10, 9, 0, 4, 10, 9, 10, 0, -10, 0));
    expect(hollow.isConvex).toBe(false);
    const nearest = createNearest();
    const chance = chances(5);
    for (let i = 0; i < 400; i += 1) {
      const s = 400 * (chance() - 0.5);
      const radius = 500 * chance();
      profileDistance(profile, s, radius, nearest);
      expect(Math.abs(nearest.distance)).toBeCloseTo(distanceToLine(s, radius, line), 9);
      expect(Math.hypot(nearest.alongAxis, nearest.outward)).toBeCloseTo(1, 9);
      const { distance, alongAxis, outward } = nearest;
      profileDistance(profile, s - distance * alongAxis, radius - distance * outward, nearest);
      expect(Math.abs(nearest.distance)).toBeLessThan(1e-9);
    }
    profileDistance(hollow, 0, 5, nearest);
    expect(nearest.distance).toBeGreaterThan(0);
    profileDistance(hollow, 0, 3, nearest);
    expect(nearest.distance).toBeLessThan(0);
  });
});

describe.each(['half-ton-factory', 'rear-steer-saloon'] as const)(
  'the swept tyre of %s',
  (name) => {
    const corner = assemble(shipped(name));
    const surface = meshOf(corner);
    const poses = posesOver(corner, 9);

    it('is closed and faces outwards', () => {
      expect(openEdges(surface)).toBe(0);
      expect(volumeOf(surface)).toBeGreaterThan(0);
    });

    it('has every vertex on a posed tyre, and inside none', () => {
      const field = createSweptField(corner, 'whole', STRAY)!;
      for (let i = 0; i < surface.positions.length; i += 3 * 23) {
        const place = Array.from(surface.positions.subarray(i, i + 3)) as Triple;
        sweptDistance(field, ...place, 0.05);
        const { travel, rack } = field.found;
        const nearest = posedDistance(corner, travel, rack)!.distance(place);
        expect(Math.abs(nearest), String(place)).toBeLessThan(0.75);
        for (const posed of poses) expect(posed.distance(place)).toBeGreaterThan(-0.75);
        const normal = surface.normals.subarray(i, i + 3);
        expect(Math.hypot(...normal)).toBeCloseTo(1, 5);
      }
    });

    it('strays between its vertices by no more than a quarter of the grid', () => {
      const field = createSweptField(corner, 'whole', STRAY)!;
      const { positions, triangles } = surface;
      for (let i = 0; i < triangles.length; i += 3 * 19) {
        const corners = [0, 1, 2].map((k) => 3 * triangles[i + k]!);
        const middle = [0, 1, 2].map(
          (k) => corners.reduce((sum, at) => sum + positions[at + k]!, 0) / 3,
        ) as Triple;
        sweptDistance(field, ...middle, 0.05);
        expect(Math.abs(field.found.distance), String(middle)).toBeLessThan(STEP / 4);
      }
    });

    it('holds every point of posed tyres', () => {
      const { line } = tyreSections(corner.model)[0]!;
      const chance = chances(11);
      for (let i = 0; i < 250; i += 1) {
        const { axis, centre } = poses[Math.floor(chance() * poses.length)]!;
        const edge = 2 * Math.floor(chance() * (line.length / 2 - 1));
        const share = chance();
        // A little inside the posed tyre: half a chord's height at a crease of this coarse grid.
        const s = 0.96 * (line[edge]! + share * (line[edge + 2]! - line[edge]!));
        const radius = line[edge + 1]! + share * (line[edge + 3]! - line[edge + 1]!);
        const inner = radius > 320 ? radius - 4 : radius + 4;
        const turn = 2 * Math.PI * chance();
        const flat = Math.hypot(axis[0], axis[1]);
        const ahead = [axis[1] / flat, -axis[0] / flat, 0] as const;
        const up = [axis[2] * ahead[1], -axis[2] * ahead[0], flat] as const;
        const place = [0, 1, 2].map(
          (k) =>
            centre[k]! +
            s * axis[k]! +
            inner * (Math.cos(turn) * ahead[k]! + Math.sin(turn) * up[k]!),
        ) as Triple;
        expect(windingAbove(surface, place), String(place)).toBe(1);
      }
    });

    it('holds as much as random points say', () => {
      const chance = chances(3);
      const low = [0, 1, 2].map((k) =>
        surface.positions.reduce((least, v, i) => (i % 3 === k ? Math.min(least, v) : least), 1e9),
      ) as Triple;
      const high = [0, 1, 2].map((k) =>
        surface.positions.reduce((most, v, i) => (i % 3 === k ? Math.max(most, v) : most), -1e9),
      ) as Triple;
      const box = (high[0] - low[0]) * (high[1] - low[1]) * (high[2] - low[2]);
      const dense = posesOver(corner, 25);
      const count = 3000;
      let inside = 0;
      for (let i = 0; i < count; i += 1) {
        const place = low.map((least, k) => least + chance() * (high[k]! - least)) as Triple;
        if (dense.some((posed) => posed.distance(place) < 0)) inside += 1;
      }
      // Three standard deviations of a share of 3000 points are under 0.03.
      expect(volumeOf(surface) / box).toBeCloseTo(inside / count, 1);
      expect(Math.abs(volumeOf(surface) / box - inside / count)).toBeLessThan(0.03);
    });
  },
);

describe('the swept distance', () => {
  it('is below every sampled pose’s, and no farther below than samples are apart', () => {
    const corner = assemble(shipped('tall-knuckle-crossover'));
    const field = createSweptField(corner, 'whole', STRAY)!;
    const poses = posesOver(corner, 41);
    const chance = chances(21);
    const [x, y, z] = poses[840]!.centre;
    for (let i = 0; i < 60; i += 1) {
      const place: Triple = [
        x + 1000 * (chance() - 0.5),
        y + 500 * (chance() - 0.5),
        z + 1000 * (chance() - 0.5),
      ];
      const least = Math.min(...poses.map((posed) => posed.distance(place)));
      sweptDistance(field, ...place, TOLERANCE);
      if (least < 2 - field.profile.depth) continue;
      expect(field.found.distance).toBeLessThan(least + TOLERANCE + STRAY);
      expect(field.found.distance).toBeGreaterThan(least - 4);
      if (Math.abs(least) > 4) expect(isSwept(field, ...place, 0, TOLERANCE)).toBe(least < 0);
    }
  });

  it('leaves out poses that cannot be reached', () => {
    const model = shipped('half-ton-factory');
    const corner = assemble({ ...model, steering: { ...model.steering, limit: [120, 260] } });
    const poses = posesOver(corner, 15);
    expect(poses.length).toBeLessThan(15 * 15);
    const field = createSweptField(corner, 'whole', 1)!;
    const chance = chances(2);
    const [x, y, z] = poses[60]!.centre;
    let compared = 0;
    for (let i = 0; i < 40; i += 1) {
      const place: Triple = [
        x + 1200 * (chance() - 0.5),
        y + 900 * (chance() - 0.5),
        z + 1000 * (chance() - 0.5),
      ];
      sweptDistance(field, ...place, 1);
      const { distance, travel, rack } = field.found;
      if (distance < 2 - field.profile.depth) continue;
      expect(distance).toBeLessThan(Math.min(...poses.map((p) => p.distance(place))) + 2.5);
      const posed = posedDistance(corner, travel, rack);
      if (posed === null) continue;
      compared += 1;
      expect(Math.abs(posed.distance(place) - distance)).toBeLessThan(1);
    }
    expect(compared).toBeGreaterThan(10);
  });

  it('grows by the margin asked for', () => {
    const corner = assemble(shipped('rear-steer-saloon'));
    const [bare, wide] = [meshOf(corner), meshOf(corner, 25)];
    const top = ({ positions }: SweptSurface): number =>
      positions.reduce((most, v, i) => (i % 3 === 2 ? Math.max(most, v) : most), -1e9);
    expect(top(wide) - top(bare)).toBeCloseTo(25, 0);
    expect(openEdges(wide)).toBe(0);
  });
});

describe('the range', () => {
  it('is cut by stops only where asked', () => {
    const model = shipped('half-ton-factory');
    expect(sweptRange(model, 'whole').travel).toEqual([-model.travel.droop, model.travel.bump]);
    expect(sweptRange(model, 'stops').travel).toEqual([-model.stops!.droop!, model.stops!.bump!]);
    expect(stopsShorten(model)).toBe(true);
    const { stops: _, ...free } = model;
    expect(stopsShorten(free)).toBe(false);
  });
});

describe('what it cuts', () => {
  /** Arms that keep the wheel upright and straight ahead: the tread's top rises by the travel. */
  const model = ((): Model => {
    const { steering: _, ...rest } = shipped('planar-equal-arms');
    return rest;
  })();
  const pose = createPose();
  const corner = assemble(model);
  solve(corner, pose, model.travel.bump, 0);
  const centre = [0, 1, 2].map((i) => pose.data[Slot.centre + i]!) as Triple;
  const top = centre[2] + tyreDimensions(model.tyre, model.wheel).overallDiameter / 2;

  function gapTo(obstacle: NonNullable<Model['obstacles']>[number]) {
    const with_ = assemble({ ...model, obstacles: [obstacle] });
    const gaps = sweptGaps(with_, createSweptField(with_, 'whole', STRAY)!);
    return gaps.find(({ name }) => name === obstacle.name)!;
  }

  it('tells how deep a box hangs into the tread, and where', () => {
    const [x, y] = centre;
    for (const depth of [20, -30]) {
      const gap = gapTo({
        name: 'lip',
        shape: 'box',
        min: [x - 100, y - 20, top - depth],
        max: [x + 100, y + 20, top + 50],
      });
      expect(gap.gap).toBeCloseTo(-depth, 0);
      expect(gap.travel).toBeCloseTo(model.travel.bump, 0);
      expect(gap.at[2]).toBeCloseTo(top - depth, 1);
      expect(Math.abs(gap.at[0] - x)).toBeLessThan(12);
      expect(gap.isThrough).toBe(false);
    }
  });

  it('counts half a tube’s diameter, and says when it runs through', () => {
    const [x, y] = centre;
    const tube = (z: number) =>
      gapTo({
        name: 'hoop',
        shape: 'tube',
        points: [
          [x - 300, y, z],
          [x + 300, y, z],
        ],
        diameter: 40,
      });
    expect(tube(top + 50).gap).toBeCloseTo(30, 0);
    expect(tube(top + 10).gap).toBeCloseTo(-10, 0);
    const middle = tyreSections(model)[0]!.line;
    const height = (Math.min(...middle.filter((_, i) => i % 2 === 1)) + top - centre[2]) / 2;
    expect(tube(centre[2] + height).isThrough).toBe(true);
  });
});
