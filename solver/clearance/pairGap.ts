/** The gap of any watched pair in a pose, with its two nearest points. */
import { Slot } from '../linkage/slots.ts';
import type { Pose } from '../linkage/solve.ts';
import { boxGapInto, createBoxGap, writeOnBox } from './boxGap.ts';
import { createBoxOutline } from './boxOutline.ts';
import { searchBox } from './boxProfile.ts';
import { chainGapInto, createChainGap, writePointAt } from './chainGap.ts';
import { createMeshGap, type MeshGap, type MeshSurface } from './mesh.ts';
import type { WatchedPair } from './pairs.ts';
import { type PlacedChain, placedChain, placedSections, strandsOf } from './placed.ts';
import { createProfileSearch, projectPoints, writePoints } from './profile.ts';
import { searchProfile } from './profileSearch.ts';
import type { BoxShape, ChainShape, LineShape, RevolvedShape, Shape } from './shapes.ts';

/** The answer, refilled by `pairGapInto`; points in vehicle axes, mm. */
export interface PairGap {
  readonly pair: WatchedPair;
  /**
   * Least distance between the surfaces; negative when they overlap. Then it is minus the overlap of what is thickened:
   * both radii or half thicknesses, and of a centreline or mid-surface inside a solid (tyre, brake, box) its deepest
   * point's depth; of a box in a solid section the box's deepest point's depth. A mesh has no inside.
   */
  gap: number;
  /**
   * Nearest point of each part, in the order of the pair's names: of a chain's or line's centreline, of a section's
   * mid-surface or a solid section's surface, of a box, of a mesh's surface.
   */
  readonly pointA: Float64Array;
  readonly pointB: Float64Array;
  /** Half the thickness of each part there, mm: its surface lies so far from its point, towards the other. */
  halfA: number;
  halfB: number;
}

/** One side of an answer: written by what measures the pair, whichever way round the pair is named. */
interface Side {
  readonly point: Float64Array;
  half: number;
}

/** The gap last measured: a number that is returned would be boxed. */
const _measured = { gap: 0.5 };

/** Measures one kind of pair in a pose buffer, into both sides and `_measured`. */
type Measure = (pose: Float64Array) => void;

interface Work {
  readonly sideA: Side;
  readonly sideB: Side;
  readonly measure: Measure;
}

function chainWithChain(a: PlacedChain, b: PlacedChain, sideA: Side, sideB: Side): Measure {
  const answer = createChainGap();
  return (pose) => {
    a.place(pose);
    b.place(pose);
    chainGapInto(answer, a, b);
    writePointAt(a, answer.first, answer.firstLambda, sideA.point);
    writePointAt(b, answer.second, answer.secondLambda, sideB.point);
    sideA.half = a.radii[answer.first]!;
    sideB.half = b.radii[answer.second]!;
    _measured.gap = answer.gap;
  };
}

function chainWithSections(
  chain: PlacedChain,
  { sections }: RevolvedShape,
  sideA: Side,
  sideB: Side,
): Measure {
  const search = createProfileSearch(sections, chain.starts, chain.radii);
  return (pose) => {
    chain.place(pose);
    projectPoints(search, chain.points, pose);
    searchProfile(search);
    writePoints(search, pose, sideA.point, sideB.point);
    sideA.half = chain.radii[search.piece]!;
    sideB.half = sections[search.section]!.half;
    _measured.gap = search.gap;
  };
}

function chainWithBox(chain: PlacedChain, box: BoxShape, sideA: Side, sideB: Side): Measure {
  const answer = createBoxGap();
  return (pose) => {
    chain.place(pose);
    boxGapInto(answer, chain, box);
    writePointAt(chain, answer.piece, answer.lambda, sideA.point);
    writeOnBox(box, sideA.point, sideB.point);
    sideA.half = chain.radii[answer.piece]!;
    _measured.gap = answer.gap;
  };
}

function sectionsWithBox(
  { sections }: RevolvedShape,
  { min, max }: BoxShape,
  sideA: Side,
  sideB: Side,
): Measure {
  const box = createBoxOutline(min, max);
  const search = createProfileSearch(sections, box.starts, box.radii);
  return (pose) => {
    searchBox(search, box, pose, sideB.point, sideA.point);
    sideA.half = sections[search.section]!.half;
    _measured.gap = search.gap;
  };
}

function copyMeshAnswer(answer: MeshGap, part: Side, mesh: Side): void {
  part.point.set(answer.partPoint);
  mesh.point.set(answer.meshPoint);
}

function chainWithMesh(
  shape: ChainShape | LineShape,
  surface: MeshSurface,
  sideA: Side,
  sideB: Side,
): Measure {
  const strands = strandsOf(shape).map((placed) => ({ placed, answer: createMeshGap() }));
  return (pose) => {
    let gap = Number.POSITIVE_INFINITY;
    for (const { placed, answer } of strands) {
      placed.place(pose);
      surface.gapToChain(placed.points, placed.radii, answer, gap);
      if (answer.gap >= gap) continue;
      gap = answer.gap;
      copyMeshAnswer(answer, sideA, sideB);
      sideA.half = placed.radii[answer.piece]!;
    }
    _measured.gap = gap;
  };
}

function sectionsWithMesh(
  { sections }: RevolvedShape,
  surface: MeshSurface,
  sideA: Side,
  sideB: Side,
): Measure {
  const answer = createMeshGap();
  const axle = new Float64Array(6);
  return (pose) => {
    for (let i = 0; i < 3; i += 1) {
      axle[i] = pose[Slot.centre + i]!;
      axle[3 + i] = pose[Slot.hubAxis + i]!;
    }
    surface.gapToRevolved(sections, axle, answer);
    copyMeshAnswer(answer, sideA, sideB);
    sideA.half = sections[answer.piece]!.half;
    _measured.gap = answer.gap;
  };
}

function measureFor(a: Shape, b: Shape, sideA: Side, sideB: Side): Measure | null {
  if (b.kind === 'mesh' && b.surface !== null) {
    if (a.kind === 'revolved') return sectionsWithMesh(a, b.surface, sideA, sideB);
    return a.kind === 'chain' || a.kind === 'line'
      ? chainWithMesh(a, b.surface, sideA, sideB)
      : null;
  }
  if (a.kind === 'chain' || a.kind === 'line') {
    const chain = placedChain(a);
    if (b.kind === 'chain' || b.kind === 'line') {
      return chainWithChain(chain, placedChain(b), sideA, sideB);
    }
    if (b.kind === 'revolved') return chainWithSections(chain, b, sideA, sideB);
    return b.kind === 'box' ? chainWithBox(chain, b, sideA, sideB) : null;
  }
  if (a.kind !== 'revolved') return null;
  if (b.kind === 'box') return sectionsWithBox(a, b, sideA, sideB);
  return b.kind === 'revolved'
    ? chainWithSections(placedSections(a.sections), b, sideA, sideB)
    : null;
}

const _work = new WeakMap<PairGap, Work>();

function createSide(): Side {
  return { point: new Float64Array(3), half: 0 };
}

/** What measures the pair, either way round. */
function workFor({ first, second }: WatchedPair): Work {
  const sideA = createSide();
  const sideB = createSide();
  const measure =
    measureFor(first, second, sideA, sideB) ?? measureFor(second, first, sideB, sideA);
  if (measure === null)
    throw new Error(`${first.kind} against ${second.kind}: never a watched pair`);
  return { sideA, sideB, measure };
}

/** Makes an answer for a pair of `watchedPairs`; throws for two obstacles, which never are one. */
export function createPairGap(pair: WatchedPair): PairGap {
  const work = workFor(pair);
  const gap: PairGap = {
    pair,
    gap: Number.POSITIVE_INFINITY,
    pointA: work.sideA.point,
    pointB: work.sideB.point,
    halfA: 0,
    halfB: 0,
  };
  _work.set(gap, work);
  return gap;
}

/**
 * Fills `out` with the pair's gap in the pose of the buffer, whose parts must be placed (`placeParts` or `measureInto`).
 * Exact to 0.01 mm; allocates nothing, but what a mesh's surface does.
 */
export function pairGapInto(out: PairGap, pose: Pose): void {
  const { sideA, sideB, measure } = _work.get(out)!;
  measure(pose.data);
  out.gap = _measured.gap;
  out.halfA = sideA.half;
  out.halfB = sideB.half;
}
