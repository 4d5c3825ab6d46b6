/** Pairs to be certified, made without the table of pairs: plain tubes with their own distance, and the exact rod gap. */

import type { Chain, PairMeasure, ProvablePair } from '../../solver/certify/bounder.ts';
import type { TrackBody } from '../../solver/certify/track.ts';
import { rodPieces } from '../../solver/clearance/rodPieces.ts';
import {
  type Corner,
  createRodGap,
  type Pose,
  rodGapInto,
  Slot,
  tyreSections,
  wheelSections,
} from '../../solver/index.ts';

type Place = (pose: Float64Array, out: Float64Array) => void;

/** Distance of two segments given by their ends, by alternating projection refined from several starts. */
export function segmentDistance(p: Float64Array, i: number, q: Float64Array, j: number): number {
  const at = (v: Float64Array, k: number, share: number, axis: number) =>
    (1 - share) * v[3 * k + axis]! + share * v[3 * k + 3 + axis]!;
  const foot = (v: Float64Array, k: number, point: readonly number[]): number => {
    let along = 0;
    let squared = 0;
    for (let axis = 0; axis < 3; axis += 1) {
      const d = v[3 * k + 3 + axis]! - v[3 * k + axis]!;
      along += d * (point[axis]! - v[3 * k + axis]!);
      squared += d * d;
    }
    return Math.min(1, Math.max(0, squared > 0 ? along / squared : 0));
  };
  const pointOf = (v: Float64Array, k: number, share: number) =>
    [0, 1, 2].map((axis) => at(v, k, share, axis));
  // The distance is convex in both shares: a golden section over one, the foot for the other, finds the least.
  const apart = (share: number): number => {
    const point = pointOf(p, i, share);
    const other = pointOf(q, j, foot(q, j, point));
    return Math.hypot(...point.map((x, axis) => x - other[axis]!));
  };
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [0, 1];
  while (high - low > 1e-9) {
    const a = high - golden * (high - low);
    const b = low + golden * (high - low);
    if (apart(a) < apart(b)) high = b;
    else low = a;
  }
  return Math.min(apart(0), apart(1), apart((low + high) / 2));
}

function tubeMeasure(first: Chain, second: Chain): PairMeasure {
  const a = new Float64Array(3 * first.radii.length + 3);
  const b = new Float64Array(3 * second.radii.length + 3);
  let gap = 0;
  return {
    pointA: new Float64Array(3),
    pointB: new Float64Array(3),
    gap: () => gap,
    measure: (pose) => {
      first.place(pose.data, a);
      second.place(pose.data, b);
      gap = Number.POSITIVE_INFINITY;
      first.radii.forEach((r, i) => {
        second.radii.forEach((s, j) => {
          gap = Math.min(gap, segmentDistance(a, i, b, j) - r - s);
        });
      });
    },
  };
}

function chain(body: TrackBody, radii: Float64Array, place: Place): Chain {
  const starts = Array.from(radii, (_, piece) => piece);
  return { kind: 'chain', body, radii, starts, points: radii.length + 1, place };
}

function tube(body: TrackBody, radius: number, pieces: number, place: Place): Chain {
  return chain(body, new Float64Array(pieces).fill(radius), place);
}

const copy = (pose: Float64Array, at: number, out: Float64Array, to: number): void =>
  out.set(pose.subarray(at, at + 3), to);

/** A plain tube for every kind of body that a part can have. */
export function tubes(corner: Corner): Record<string, Chain> {
  const { model, linkage } = corner;
  const { pivots } = linkage;
  const pieces = rodPieces(corner);
  return {
    lowerArm: tube('lowerArm', 18, 2, (pose, out) => {
      out.set(pivots.lowerFront);
      copy(pose, Slot.lower, out, 3);
      out.set(pivots.lowerRear, 6);
    }),
    upperArm: tube('upperArm', 15, 2, (pose, out) => {
      out.set(pivots.upperFront);
      copy(pose, Slot.upper, out, 3);
      out.set(pivots.upperRear, 6);
    }),
    coilover: tube('coilover', 28, 1, (pose, out) => {
      out.set(model.coilover!.top);
      copy(pose, Slot.damperBottom, out, 3);
    }),
    link: tube('link', 8, 1, (pose, out) => {
      copy(pose, Slot.leverEnd, out, 0);
      copy(pose, Slot.link, out, 3);
    }),
    shaft: tube('shaft', 16, 1, (pose, out) => {
      out.set(model.halfShaft!.inner);
      copy(pose, Slot.shaftOuter, out, 3);
    }),
    tieRod: chain('tieRod', pieces.radii, (pose, out) => {
      const { points } = pieces;
      for (let at = 0; at < points.length; at += 3) {
        for (let i = 0; i < 3; i += 1) {
          let x = pose[Slot.outer + i]!;
          for (let axis = 0; axis < 3; axis += 1) {
            x += points[at + axis]! * pose[Slot.rodFrame + 3 * axis + i]!;
          }
          out[at + i] = x;
        }
      }
    }),
    knuckle: tube('knuckle', 20, 2, (pose, out) => {
      copy(pose, Slot.upper, out, 0);
      copy(pose, Slot.lower, out, 3);
      copy(pose, Slot.outer, out, 6);
    }),
    rail: tube('ground', 30, 2, (_, out) => {
      const { inner } = model.tieRod;
      const [x, y, z] = inner;
      out.set([x - 300, y - 60, z + 110, x + 40, y - 40, z + 100, x + 60, y - 20, z + 200]);
    }),
  };
}

/** Two of the plain tubes as a pair. */
export function tubePair(corner: Corner, a: string, b: string, required: number): ProvablePair {
  const all = tubes(corner);
  const shapes = [all[a]!, all[b]!] as const;
  return { names: [a, b], required, isConstant: false, shapes, measure: tubeMeasure(...shapes) };
}

/** The tie rod against its own wheel or tyre, by the exact rod gap. */
export function rodPair(corner: Corner, against: 'wheel' | 'tyre', required: number): ProvablePair {
  const rod = createRodGap(corner, against);
  const sections = against === 'wheel' ? wheelSections(corner.model) : tyreSections(corner.model);
  return {
    names: ['tieRod', against],
    required,
    isConstant: false,
    shapes: [tubes(corner)['tieRod']!, { kind: 'revolved', sections }],
    measure: {
      measure: (pose: Pose) => rodGapInto(rod, pose),
      gap: () => rod.gap,
      pointA: rod.rodPoint,
      pointB: rod.wheelPoint,
    },
  };
}
