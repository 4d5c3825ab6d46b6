import { Matrix4 } from 'three';
import { describe, expect, it } from 'vitest';
import { type SectionPoint, tyreSections, wheelSections } from '../../solver/index.ts';
import { revolve } from '../../src/scene/geometry/revolve.ts';
import { createSolid } from '../../src/scene/geometry/solid.ts';
import { buildTyre, tyreOutline } from '../../src/scene/geometry/tyre.ts';
import {
  addCutFaces,
  barrelOutline,
  buildWheel,
  STANDING,
  weightsOutline,
} from '../../src/scene/geometry/wheel.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { SHIPPED, shipped } from '../support/models.ts';
import { distanceToLine, openEdges, volume } from '../support/surface.ts';

const MODELS = [
  ...SHIPPED.map((name) => ({ name, model: shipped(name) })),
  { name: 'full', model: FULL_MODEL },
];

/** Area and the radius of its centroid, of a closed outline [s, ρ]. */
function areaOf(outline: readonly SectionPoint[]): { area: number; radius: number } {
  let twice = 0;
  let moment = 0;
  for (let i = 1; i < outline.length; i += 1) {
    const [s0, r0] = outline[i - 1]!;
    const [s1, r1] = outline[i]!;
    const cross = s0 * r1 - s1 * r0;
    twice += cross;
    moment += (r0 + r1) * cross;
  }
  return { area: Math.abs(twice) / 2, radius: moment / (3 * twice) };
}

describe.each(MODELS)('the wheel of $name', ({ model }) => {
  const barrel = wheelSections(model).find(({ name }) => name === 'barrel')!;
  const disc = wheelSections(model).find(({ name }) => name === 'disc')!;
  const outline = barrelOutline(model);

  it("has the solver's barrel as its section at every station", () => {
    const solid = createSolid();
    revolve(solid, new Matrix4(), outline, { segments: 40 });
    let worst = 0;
    for (let at = 0; at < solid.positions.length; at += 3) {
      const [x, y, s] = solid.positions.slice(at, at + 3) as [number, number, number];
      const off = distanceToLine(s, Math.hypot(x, y), barrel.line) - barrel.half;
      worst = Math.max(worst, Math.abs(off));
    }
    expect(worst).toBeLessThan(1e-9);
  });

  it('is a closed ring that faces outwards, as large as Pappus says', () => {
    const solid = createSolid();
    const segments = 200;
    revolve(solid, new Matrix4(), outline, { segments });
    expect(openEdges(solid)).toBe(0);
    const { area, radius } = areaOf(outline);
    // A ring of flat steps holds n·sin(2π/n)/2π of the round one.
    const flat = (segments * Math.sin((2 * Math.PI) / segments)) / (2 * Math.PI);
    expect(volume(solid) / (2 * Math.PI * radius * area * flat)).toBeCloseTo(1, 9);
  });

  it('closes its cut faces', () => {
    const metal = createSolid();
    const faces = createSolid();
    revolve(metal, new Matrix4(), outline, { segments: 96, ...STANDING });
    addCutFaces(faces, outline, STANDING);
    expect(openEdges(metal, faces)).toBe(0);
    expect(openEdges(metal)).toBeGreaterThan(0);
    expect(volume(metal, faces)).toBeGreaterThan(0);
  });

  it('keeps spokes and pad out of the room inboard of disc and barrel', () => {
    const { alloy } = buildWheel(model, false);
    const line = disc.line;
    // The least s of the disc's mid-surface at a radius; its ends' own beyond them.
    const discAt = (radius: number): number => {
      const held = Math.min(line.at(-1)!, Math.max(line[1]!, radius));
      let least = Number.POSITIVE_INFINITY;
      for (let at = 0; at + 3 < line.length; at += 2) {
        const share = (held - line[at + 1]!) / (line[at + 3]! - line[at + 1]!);
        if (share >= 0 && share <= 1)
          least = Math.min(least, line[at]! + share * (line[at + 2]! - line[at]!));
      }
      return least;
    };
    let looked = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let at = 0; at < alloy!.positions.length; at += 3) {
      const [x, y, s] = alloy!.positions.slice(at, at + 3) as [number, number, number];
      const radius = Math.hypot(x, y);
      if (distanceToLine(s, radius, barrel.line) < barrel.half + 1e-6) continue;
      looked += 1;
      least = Math.min(least, s - discAt(radius) + disc.half);
    }
    expect(looked).toBeGreaterThan(100);
    // Across a bent disc a flat spoke may stand a hair off it.
    expect(least).toBeGreaterThan(line.length === 4 ? -1e-6 : -0.5);
  });
});

describe.each(MODELS)('the tyre of $name', ({ model }) => {
  const { line } = tyreSections(model)[0]!;
  const reach = Math.max(...Array.from({ length: line.length / 2 }, (_, i) => line[2 * i + 1]!));
  const lip = line[1]!;

  function isInside(s: number, radius: number): boolean {
    let inside = false;
    for (let at = 0; at + 3 < line.length; at += 2) {
      if (line[at + 1]! > radius === line[at + 3]! > radius) continue;
      const share = (radius - line[at + 1]!) / (line[at + 3]! - line[at + 1]!);
      if (s < line[at]! + share * (line[at + 2]! - line[at]!)) inside = !inside;
    }
    return inside || distanceToLine(s, radius, line) < 1e-6;
  }

  it("stays inside the solver's polygon above the rim's lip and reaches its full radius", () => {
    const { tyre } = buildTyre(model, false);
    let greatest = 0;
    const outside: string[] = [];
    for (let at = 0; at < tyre!.positions.length; at += 3) {
      const [x, y, s] = tyre!.positions.slice(at, at + 3) as [number, number, number];
      const radius = Math.hypot(x, y);
      greatest = Math.max(greatest, radius);
      if (radius > lip + 1e-6 && !isInside(s, radius)) outside.push(`${s}, ${radius}`);
    }
    expect(outside).toEqual([]);
    expect(greatest).toBeCloseTo(reach, 6);
  });

  it('is closed where it is cut, and its rubber is all there', () => {
    const { tyre, cutRubber } = buildTyre(model, true);
    expect(openEdges(tyre!, cutRubber!)).toBe(0);
    const { area, radius } = areaOf(tyreOutline(model));
    const ring = volume(tyre!, cutRubber!) / (STANDING.span * radius * area);
    // The blocks' grooves and the flat steps take a little.
    expect(ring).toBeGreaterThan(0.93);
    expect(ring).toBeLessThan(1);
  });
});

describe('stick-on weights', () => {
  it.each([false, true])(
    'are a closed ring whose inside is the line they are measured to, cut: %s',
    (isCut) => {
      const outline = weightsOutline(FULL_MODEL)!;
      const ring = createSolid();
      const faces = createSolid();
      revolve(ring, new Matrix4(), outline, { segments: 60, ...(isCut ? STANDING : {}) });
      if (isCut) addCutFaces(faces, outline, STANDING);
      expect(openEdges(ring, faces)).toBe(0);
      expect(volume(ring, faces)).toBeGreaterThan(0);
      const { line } = wheelSections(FULL_MODEL).find(({ name }) => name === 'weights')!;
      const radii = outline.map(([, radius]) => radius);
      expect(Math.min(...radii)).toBe(line[1]);
      expect(weightsOutline(shipped('half-ton-factory'))).toBeNull();
    },
  );
});
