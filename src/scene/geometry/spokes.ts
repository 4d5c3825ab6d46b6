/** The wheel's spokes: flat on the inboard side, along the solver's disc; thicker outboard, where nothing is near. */
import { Matrix4 } from 'three';
import { sectionPoints } from '../../../solver/clearance/rodGap.ts';
import {
  type Model,
  type Section,
  type SectionPoint,
  wheelSections,
} from '../../../solver/index.ts';
import { WHEEL } from '../proportions.ts';
import { addQuad, addVertex, type Solid } from './solid.ts';

/** One of the wheel's sections by its name. */
export function sectionOf(model: Model, name: Section['name']): Section {
  return wheelSections(model).find((section) => section.name === name)!;
}

/** One spoke's cross-section ring at a place of the disc: inboard edge wide, outboard face crowned. */
function spokeRing(at: Matrix4, solid: Solid, place: SpokePlace): number[] {
  const { radius, s, half, width, depth, reach } = place;
  const low = s - half;
  const corners: readonly SectionPoint[] = [
    [-width, low],
    [width, low],
    [width * 0.92, low + 0.55 * depth],
    [width * 0.55, low + depth],
    [-width * 0.55, low + depth],
    [-width * 0.92, low + 0.55 * depth],
  ];
  return corners.flatMap(([y, z], i) => {
    const edge = (k: number): SectionPoint => {
      const a = corners[(i + k + 6) % 6]!;
      const b = corners[(i + k + 7) % 6]!;
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
      return [(b[1] - a[1]) / size, -(b[0] - a[0]) / size];
    };
    const before = edge(-1);
    const after = edge(0);
    const x = reach(radius, z);
    return [
      addVertex(solid, at, x, y, z, 0, before[0], before[1]),
      addVertex(solid, at, x, y, z, 0, after[0], after[1]),
    ];
  });
}

interface SpokePlace {
  readonly radius: number;
  readonly s: number;
  readonly half: number;
  readonly width: number;
  readonly depth: number;
  /** Radius at which a corner at s lies: the place's own, or at the spoke's end the barrel's. */
  readonly reach: (radius: number, s: number) => number;
}

/** Places along a spoke from the hub pad to the barrel, following the disc's mid-surface. */
export function spokePlaces(model: Model): SpokePlace[] {
  const disc = sectionOf(model, 'disc');
  const line = sectionPoints(disc);
  const rim = line.at(-1)!;
  const start = Math.min(WHEEL.pad - 14, rim[1] * 0.5);
  const count = 7;
  const barrel = sectionPoints(sectionOf(model, 'barrel'));
  // Evenly, and wherever the disc has a corner, so that no spoke cuts across one.
  const even = Array.from({ length: count + 1 }, (_, i) => start + ((rim[1] - start) * i) / count);
  const corners = line.map(([, radius]) => radius).filter((r) => r > start + 2 && r < rim[1] - 2);
  const radii = [...even.filter((r) => corners.every((c) => Math.abs(c - r) > 1)), ...corners];
  radii.sort((a, b) => a - b);
  return radii.map((radius, i) => {
    const share = (radius - start) / (rim[1] - start);
    const waist = 1 - Math.sin(Math.PI * Math.min(1, share * 1.15));
    const width = 15 + 6 * waist + 7 * share * share;
    // Its inboard face is flat across: where the disc leans outboard, the edges decide.
    const s = Math.max(discAt(line, radius), discAt(line, Math.hypot(radius, width)));
    return {
      radius,
      s,
      half: disc.half,
      width,
      depth: 2 * disc.half + WHEEL.spokeDepth * (1 - 0.45 * share),
      reach:
        i === radii.length - 1
          ? (own: number, at: number) => Math.max(own, lineAt(barrel, at))
          : (own: number) => own,
    };
  });
}

/** s of the disc's mid-surface at a radius, the nearest end outside it. */
export function discAt(line: readonly SectionPoint[], radius: number): number {
  for (let i = 1; i < line.length; i += 1) {
    const [s0, r0] = line[i - 1]!;
    const [s1, r1] = line[i]!;
    if ((radius - r0) * (radius - r1) <= 0 && r0 !== r1)
      return s0 + ((radius - r0) / (r1 - r0)) * (s1 - s0);
  }
  return radius < line[0]![1] ? line[0]![0] : line.at(-1)![0];
}

/** ρ of the barrel's mid-surface at s, for s between its ends. */
function lineAt(line: readonly SectionPoint[], s: number): number {
  for (let i = 1; i < line.length; i += 1) {
    const [s0, r0] = line[i - 1]!;
    const [s1, r1] = line[i]!;
    if (s >= s0 && s <= s1 && s0 < s1) return r0 + ((s - s0) / (s1 - s0)) * (r1 - r0);
  }
  return 0;
}

/** Adds one spoke at an angle about the hub axis. */
export function addSpoke(solid: Solid, places: readonly SpokePlace[], angle: number): void {
  const at = new Matrix4().makeRotationZ(angle);
  let before: number[] | null = null;
  for (const place of places) {
    const ring = spokeRing(at, solid, place);
    if (before !== null)
      for (let i = 0; i < 6; i += 1) {
        const a = 2 * i + 1;
        const b = (2 * i + 2) % 12;
        addQuad(solid, ring[a]!, before[a]!, before[b]!, ring[b]!);
      }
    before = ring;
  }
}
