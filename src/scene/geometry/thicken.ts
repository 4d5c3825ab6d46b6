/** Outline of a polyline thickened by half a thickness: what the clearance is measured to. */
import type { SectionPoint } from '../../../solver/index.ts';

const ARC_STEP = Math.PI / 8;

function direction([s0, r0]: SectionPoint, [s1, r1]: SectionPoint): SectionPoint {
  const size = Math.hypot(s1 - s0, r1 - r0) || 1;
  return [(s1 - s0) / size, (r1 - r0) / size];
}

/** Points of an arc about `centre` from one direction's left side to the other's, turning clockwise. */
function arc(centre: SectionPoint, half: number, from: number, turn: number): SectionPoint[] {
  const steps = Math.max(1, Math.ceil(Math.abs(turn) / ARC_STEP));
  return Array.from({ length: steps + 1 }, (_, i): SectionPoint => {
    const angle = from + (turn * i) / steps;
    return [centre[0] + half * Math.cos(angle), centre[1] + half * Math.sin(angle)];
  });
}

/** The left side of the thickened line, then the round end. */
function side(line: readonly SectionPoint[], half: number): SectionPoint[] {
  const chain: SectionPoint[] = [];
  const first = direction(line[0]!, line[1]!);
  chain.push([line[0]![0] - half * first[1], line[0]![1] + half * first[0]]);
  for (let i = 1; i < line.length - 1; i += 1) {
    const a = direction(line[i - 1]!, line[i]!);
    const b = direction(line[i]!, line[i + 1]!);
    const turn = Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);
    const left = Math.atan2(a[0], -a[1]);
    if (turn < 0) chain.push(...arc(line[i]!, half, left, turn));
    else {
      // Inside of the corner: both sides meet at half/cos(turn/2) along the bisector.
      const reach = half / Math.cos(turn / 2);
      chain.push([
        line[i]![0] + reach * Math.cos(left + turn / 2),
        line[i]![1] + reach * Math.sin(left + turn / 2),
      ]);
    }
  }
  const last = direction(line.at(-2)!, line.at(-1)!);
  return [...chain, ...arc(line.at(-1)!, half, Math.atan2(last[0], -last[1]), -Math.PI)];
}

/** Closed outline (first point repeated), left side first, with round ends. */
export function thicken(line: readonly SectionPoint[], half: number): SectionPoint[] {
  const chain = [...side(line, half), ...side([...line].reverse(), half)];
  const outline = chain.filter((point, i) => gap(point, chain.at(i - 1)!) > 1e-6);
  return [...outline, outline[0]!];
}

/** An open polyline with corners cut by arcs of at most `radius`: the rounded line stays on the inner side of each corner. */
export function roundedLine(
  line: readonly SectionPoint[],
  radius: number,
  steps = 5,
): SectionPoint[] {
  const rounded: SectionPoint[] = [line[0]!];
  for (let i = 1; i < line.length - 1; i += 1) {
    const corner = line[i]!;
    const back = direction(corner, line[i - 1]!);
    const ahead = direction(corner, line[i + 1]!);
    const half = Math.acos(Math.max(-1, Math.min(1, back[0] * ahead[0] + back[1] * ahead[1]))) / 2;
    const room = 0.49 * Math.min(gap(corner, line[i - 1]!), gap(corner, line[i + 1]!));
    const reach = Math.min(room, radius / Math.tan(half));
    for (let k = 0; k <= steps; k += 1) {
      // A quadratic through the corner's hull: it never leaves the triangle.
      const t = k / steps;
      const a = reach * (1 - t) * (1 - t);
      const b = reach * t * t;
      rounded.push([
        corner[0] + a * back[0] + b * ahead[0],
        corner[1] + a * back[1] + b * ahead[1],
      ]);
    }
  }
  return [...rounded, line.at(-1)!];
}

function gap(a: SectionPoint, b: SectionPoint): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
