/** Watched pairs as certifying needs them. */
import { createPairGap, pairGapInto } from '../clearance/pairGap.ts';
import type { WatchedPair } from '../clearance/pairs.ts';
import {
  type ChainShape,
  frameSlots,
  type LineEnd,
  type LineShape,
  type Shape,
} from '../clearance/shapes.ts';
import { Slot } from '../linkage/slots.ts';
import { carryPoint } from '../linkage/triad.ts';
import type { Chain, ProvablePair, ProvableShape } from './bounder.ts';
import type { TrackBody } from './track.ts';

/** Places a chain's break points, strand after strand. */
function placeChain({ body, strands }: ChainShape, pose: Float64Array, out: Float64Array): void {
  const slots = frameSlots(body);
  let to = 0;
  for (const { points } of strands) {
    for (let at = 0; at < points.length; at += 3, to += 3) {
      if (slots === null) {
        out[to] = points[at]!;
        out[to + 1] = points[at + 1]!;
        out[to + 2] = points[at + 2]!;
        continue;
      }
      _placed.set(pose.subarray(slots.origin, slots.origin + 3));
      _placed.set(pose.subarray(slots.frame, slots.frame + 9), FRAME);
      carryPoint(points, at, _placed, 0, FRAME, ANSWER);
      out.set(_placed.subarray(ANSWER, ANSWER + 3), to);
    }
  }
}

const FRAME = 3;
const ANSWER = 12;
const _placed = new Float64Array(15);

function chainOf(shape: ChainShape): Chain {
  const starts: number[] = [];
  let points = 0;
  for (const { radii } of shape.strands) {
    radii.forEach((_, piece) => {
      starts.push(points + piece);
    });
    points += radii.length + 1;
  }
  return {
    kind: 'chain',
    body: shape.body === 'vehicle' ? 'ground' : shape.body,
    radii: Float64Array.from(shape.strands.flatMap(({ radii }) => [...radii])),
    starts,
    points,
    place: (pose, out) => placeChain(shape, pose, out),
  };
}

/** Which part with two ends a line is. */
function lineBody(ends: LineShape['ends']): TrackBody {
  const slots = ends.map((end) => ('slot' in end ? end.slot : -1));
  if (slots.includes(Slot.leverEnd)) return 'link';
  return slots.includes(Slot.shaftOuter) ? 'shaft' : 'coilover';
}

function placeEnd(end: LineEnd, pose: Float64Array, out: Float64Array, to: number): void {
  if ('slot' in end) out.set(pose.subarray(end.slot, end.slot + 3), to);
  else out.set(end.fixed, to);
}

function lineOf({ ends, radius }: LineShape): Chain {
  return {
    kind: 'chain',
    body: lineBody(ends),
    radii: Float64Array.of(radius),
    starts: [0],
    points: 2,
    place: (pose, out) => {
      placeEnd(ends[0], pose, out, 0);
      placeEnd(ends[1], pose, out, 3);
    },
  };
}

function shapeOf(shape: Shape): ProvableShape {
  if (shape.kind === 'chain') return chainOf(shape);
  if (shape.kind === 'line') return lineOf(shape);
  if (shape.kind === 'mesh') return { kind: 'mesh', surface: shape.surface };
  return shape;
}

/** True when a shape is the drop link, which has no place where it cannot reach its lever. */
function isLink(shape: Shape): boolean {
  return shape.kind === 'line' && lineBody(shape.ends) === 'link';
}

/** Makes a watched pair ready to be proven. */
export function provable(pair: WatchedPair): ProvablePair {
  const gap = createPairGap(pair);
  const needsLink = isLink(pair.first) || isLink(pair.second);
  let isPlaced = true;
  return {
    names: pair.names,
    required: pair.required,
    isConstant: pair.isConstant,
    shapes: [shapeOf(pair.first), shapeOf(pair.second)],
    measure: {
      measure: (pose) => {
        isPlaced = !needsLink || pose.data[Slot.leverRoom]! > 0;
        if (isPlaced) pairGapInto(gap, pose);
      },
      gap: () => (isPlaced ? gap.gap : Number.POSITIVE_INFINITY),
      pointA: gap.pointA,
      pointB: gap.pointB,
    },
  };
}
