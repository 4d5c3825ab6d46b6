/** Which bound serves which pair of shapes. */
import type { MeshSurface } from '../clearance/mesh.ts';
import type { Section } from '../clearance/section.ts';
import type { Corner } from '../corner.ts';
import type { Pose } from '../linkage/solve.ts';
import type { Vector3 } from '../math/vec3.ts';
import { boxBounder } from './box.ts';
import type { Cell } from './cells.ts';
import { chainBounder } from './chains.ts';
import type { Bounder, Pieces, Track } from './element.ts';
import { hullBound } from './hull.ts';
import { chainMeshBounder, sectionsMeshBounder } from './meshes.ts';
import { revolvedBounder } from './revolved.ts';
import type { Frame } from './seen.ts';
import { frameOf, type TrackBody, trackOver } from './track.ts';
import { ringSwings, trackSwings, wholeBounder } from './whole.ts';

/** A part as certifying needs it. */
export type ProvableShape =
  | Chain
  | { readonly kind: 'revolved'; readonly sections: readonly Section[] }
  | { readonly kind: 'box'; readonly min: Vector3; readonly max: Vector3 }
  | { readonly kind: 'mesh'; readonly surface: MeshSurface | null };

/** Thick polylines. */
export interface Chain {
  readonly kind: 'chain';
  readonly body: TrackBody;
  /** Half diameter of each piece, mm, and which break point it starts from; it ends at the next. */
  readonly radii: Float64Array;
  readonly starts: readonly number[];
  /** Number of break points. */
  readonly points: number;
  /** Writes the break points of a placed pose, vehicle axes, three numbers each. */
  readonly place: (pose: Float64Array, out: Float64Array) => void;
}

/** A pair to be proven. */
export interface ProvablePair {
  readonly names: readonly [string, string];
  /** The least gap wanted, mm. */
  readonly required: number;
  /** True when the gap is the same in every pose. */
  readonly isConstant: boolean;
  readonly shapes: readonly [ProvableShape, ProvableShape];
  readonly measure: PairMeasure;
}

/** The gap of a pair in one pose with its parts placed, and its nearest points, of the first part and of the second. */
export interface PairMeasure {
  readonly measure: (pose: Pose) => void;
  readonly gap: () => number;
  readonly pointA: Float64Array;
  readonly pointB: Float64Array;
}

/** Numbers under which what is worked out of a cell is kept with it. */
export interface Keys {
  next: number;
}

/** The gap's own exactness, mm. */
const GAP_ROUNDING = 1e-6;

function trackOf(corner: Corner, keys: Keys, chain: Chain, frame: Frame): Track {
  const key = keys.next;
  keys.next += 1;
  const points = new Float64Array(3 * chain.points);
  return (cell) => {
    const known = cell.tracks.get(key);
    if (known !== undefined) return known;
    chain.place(cell.pose, points);
    const made = trackOver(corner, chain.body, points, cell, frame);
    cell.tracks.set(key, made);
    return made;
  };
}

/** A bounder by speed alone. */
function bySpeed(
  corner: Corner,
  keys: Keys,
  pose: Pose,
  shapes: readonly ProvableShape[],
  measure: PairMeasure,
): Bounder {
  const gapAt = (cell: Cell): number => {
    pose.data.set(cell.pose);
    measure.measure(pose);
    return measure.gap();
  };
  const revolved = shapes.find((shape) => shape.kind === 'revolved');
  const chain = shapes.find((shape) => shape.kind === 'chain');
  if (chain !== undefined) {
    const track = trackOf(corner, keys, chain, revolved === undefined ? 'ground' : 'knuckle');
    return wholeBounder(gapAt, (cell) => trackSwings(track(cell)), GAP_ROUNDING);
  }
  const sections = revolved?.sections ?? [];
  return wholeBounder(gapAt, (cell) => ringSwings(cell, sections), GAP_ROUNDING);
}

/** Sections of revolution against a box: their convex hull where it is clear of the box, else by speed. */
function hullBounder(
  slow: Bounder,
  pose: Pose,
  sections: readonly Section[],
  box: Extract<ProvableShape, { kind: 'box' }>,
  measure: PairMeasure,
  isFirst: boolean,
): Bounder {
  const bound: Bounder['bound'] = (cell, element, enough) => {
    const { motion } = cell;
    if (motion === null) return Number.NEGATIVE_INFINITY;
    pose.data.set(cell.pose);
    measure.measure(pose);
    const [from, to] = isFirst
      ? [measure.pointB, measure.pointA]
      : [measure.pointA, measure.pointB];
    const x = to[0]! - from[0]!;
    const y = to[1]! - from[1]!;
    const z = to[2]! - from[2]!;
    const length = Math.sqrt(x * x + y * y + z * z);
    if (!(length > 0)) return slow.bound(cell, element, enough);
    const n = { x: x / length, y: y / length, z: z / length };
    const apart = hullBound({ ...cell, motion }, sections, box.min, box.max, n);
    return apart >= enough ? apart : Math.max(apart, slow.bound(cell, element, enough));
  };
  return { ...slow, bound };
}

/** One bounder, and another where it can tell nothing. */
function backed(first: Bounder, second: Bounder): Bounder {
  return {
    ...first,
    bound: (cell, element, enough) => {
      const bound = first.bound(cell, element, enough);
      if (bound > Number.NEGATIVE_INFINITY) return bound;
      return second.bound(cell, element, enough);
    },
  };
}

function pieces({ radii, starts }: Chain, track: Track): Pieces {
  return { track, radii, starts };
}

/** The bounder of a pair of shapes. */
export function bounderOf(
  corner: Corner,
  keys: Keys,
  pose: Pose,
  [first, second]: readonly [ProvableShape, ProvableShape],
  measure: PairMeasure,
): Bounder {
  const slow = (): Bounder => bySpeed(corner, keys, pose, [first, second], measure);
  if (first.kind !== 'chain') {
    if (second.kind === 'chain') {
      return bounderOf(corner, keys, pose, [second, first], measure);
    }
    if (first.kind === 'revolved' && second.kind === 'box') {
      return hullBounder(slow(), pose, first.sections, second, measure, true);
    }
    if (first.kind === 'box' && second.kind === 'revolved') {
      return hullBounder(slow(), pose, second.sections, first, measure, false);
    }
    const surface = [first, second].find((shape) => shape.kind === 'mesh')?.surface ?? null;
    const sections = [first, second].find((shape) => shape.kind === 'revolved')?.sections;
    if (surface !== null && sections !== undefined) return sectionsMeshBounder(sections, surface);
    return slow();
  }
  if (second.kind === 'chain') {
    const frame = frameOf(first.body, second.body);
    return chainBounder(
      pieces(first, trackOf(corner, keys, first, frame)),
      pieces(second, trackOf(corner, keys, second, frame)),
    );
  }
  if (second.kind === 'revolved') {
    const seen = pieces(first, trackOf(corner, keys, first, 'knuckle'));
    return backed(revolvedBounder(seen, second.sections), slow());
  }
  const seen = pieces(first, trackOf(corner, keys, first, 'ground'));
  if (second.kind === 'box') return boxBounder(seen, second.min, second.max);
  if (second.surface === null) return slow();
  return chainMeshBounder(seen, second.surface);
}
