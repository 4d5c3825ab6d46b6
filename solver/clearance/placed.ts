/** Centrelines of chains and lines, and lines of sections, written into vehicle axes for a pose. */
import { Slot } from '../linkage/slots.ts';
import type { Section } from './section.ts';
import {
  type ChainShape,
  frameSlots,
  type LineEnd,
  type LineShape,
  type ShapeBody,
} from './shapes.ts';
import type { Strand } from './strands.ts';

/** Straight thick pieces in vehicle axes, mm. */
export interface PlacedChain {
  /** Break points, three numbers each. */
  readonly points: Float64Array;
  /** The first break point of each piece; its second is the next one. */
  readonly starts: Int32Array;
  /** Half the diameter of each piece. */
  readonly radii: Float64Array;
  /** Writes the points for a pose whose parts are placed. Allocates nothing. */
  readonly place: (pose: Float64Array) => void;
}

function startsOf(counts: readonly number[]): Int32Array {
  const starts: number[] = [];
  let first = 0;
  for (const count of counts) {
    for (let i = 0; i + 1 < count; i += 1) starts.push(first + i);
    first += count;
  }
  return Int32Array.from(starts);
}

function joined(parts: readonly Float64Array[]): Float64Array {
  return Float64Array.from(parts.flatMap((part) => [...part]));
}

/** Strands fixed to a body. */
export function placedStrands(body: ShapeBody, strands: readonly Strand[]): PlacedChain {
  const own = joined(strands.map(({ points }) => points));
  const slots = frameSlots(body);
  const points = own.slice();
  return {
    points,
    starts: startsOf(strands.map((strand) => strand.points.length / 3)),
    radii: joined(strands.map(({ radii }) => radii)),
    place: (pose) => {
      if (slots === null) return;
      const { origin, frame: f } = slots;
      for (let at = 0; at < own.length; at += 3) {
        const x = own[at]!;
        const y = own[at + 1]!;
        const z = own[at + 2]!;
        for (let i = 0; i < 3; i += 1) {
          points[at + i] =
            pose[origin + i]! + x * pose[f + i]! + y * pose[f + 3 + i]! + z * pose[f + 6 + i]!;
        }
      }
    },
  };
}

function placeEnd(end: LineEnd, pose: Float64Array, points: Float64Array, at: number): void {
  for (let i = 0; i < 3; i += 1) {
    points[at + i] = 'slot' in end ? pose[end.slot + i]! : end.fixed[i]!;
  }
}

/** The one piece of a line. */
function placedLine({ ends, radius }: LineShape): PlacedChain {
  const points = new Float64Array(6);
  return {
    points,
    starts: Int32Array.of(0),
    radii: Float64Array.of(radius),
    place: (pose) => {
      placeEnd(ends[0], pose, points, 0);
      placeEnd(ends[1], pose, points, 3);
    },
  };
}

/** The pieces of a chain or line. */
export function placedChain(shape: ChainShape | LineShape): PlacedChain {
  return shape.kind === 'line' ? placedLine(shape) : placedStrands(shape.body, shape.strands);
}

/** The strands of a chain or line, each by itself. */
export function strandsOf(shape: ChainShape | LineShape): PlacedChain[] {
  if (shape.kind === 'line') return [placedLine(shape)];
  return shape.strands.map((strand) => placedStrands(shape.body, [strand]));
}

/**
 * Lines of sections of revolution as pieces in the meridian plane of the wheel's upright: all of two surfaces about the
 * same axis shows there.
 */
export function placedSections(sections: readonly Section[]): PlacedChain {
  const own = joined(sections.map(({ line }) => line));
  const points = new Float64Array((own.length / 2) * 3);
  return {
    points,
    starts: startsOf(sections.map(({ line }) => line.length / 2)),
    radii: joined(
      sections.map(({ line, half }) => new Float64Array(line.length / 2 - 1).fill(half)),
    ),
    place: (pose) => {
      for (let from = 0, to = 0; from < own.length; from += 2, to += 3) {
        for (let i = 0; i < 3; i += 1) {
          points[to + i] =
            pose[Slot.centre + i]! +
            own[from]! * pose[Slot.hubAxis + i]! +
            own[from + 1]! * pose[Slot.wheelUp + i]!;
        }
      }
    },
  };
}
