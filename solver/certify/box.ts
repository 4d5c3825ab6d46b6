/** A thick polyline against a box fixed to the body, seen from the ground: a convex solid, inside of which gaps are negative. */
import type { Vector3 } from '../math/vec3.ts';
import type { Cell } from './cells.ts';
import { type Bounder, type Element, type Pieces, stretches, swingsOf } from './element.ts';
import { aim, createSeparation, POINT, type Separation, tiltedBound } from './separation.ts';

const REST = 9;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Share of a stretch to which its nearest point is looked for: any direction bounds, a good one bounds better. */
const CLOSE = 1e-7;
/** Length below which no stretch is halved, mm. */
const SHORTEST_STRETCH = 0.02;

const _space = createSeparation();
const _offset = new Float64Array(3);

function writeCorners({ second }: Separation, min: Vector3, max: Vector3): void {
  second.fill(0);
  for (let corner = 0; corner < 8; corner += 1) {
    for (let i = 0; i < 3; i += 1) {
      second[corner * POINT + i] = (corner >> i) % 2 === 0 ? min[i]! : max[i]!;
    }
  }
}

/** Writes the vector from the box to the point at a share of the stretch; answers its square. */
function offsetAt(share: number, min: Vector3, max: Vector3): number {
  const p = _space.first;
  let squared = 0;
  for (let i = 0; i < 3; i += 1) {
    const x = p[i]! + share * (p[POINT + i]! - p[i]!);
    const off = x - Math.min(max[i]!, Math.max(min[i]!, x));
    _offset[i] = off;
    squared += off * off;
  }
  return squared;
}

/** Aims from the box at the stretch's nearest point; the distance to a convex body is convex along it. */
function aimAtBox(min: Vector3, max: Vector3): void {
  let low = 0;
  let high = 1;
  while (high - low > CLOSE) {
    const a = high - GOLDEN * (high - low);
    const b = low + GOLDEN * (high - low);
    if (offsetAt(a, min, max) <= offsetAt(b, min, max)) high = b;
    else low = a;
  }
  const ends = offsetAt(0, min, max) <= offsetAt(1, min, max) ? 0 : 1;
  const inner = offsetAt((low + high) / 2, min, max);
  if (offsetAt(ends, min, max) > inner) offsetAt((low + high) / 2, min, max);
  aim(_space, _offset[0]!, _offset[1]!, _offset[2]!);
}

/** Tilts so that the stretch stays square to ν, across no axis along which the box's face or edge is met. */
function squareToStretch({ tilt, first, nx, ny, nz }: Separation): boolean {
  const n = [nx, ny, nz];
  const along = n.map((part, i) => (part === 0 ? 0 : first[POINT + i]! - first[i]!));
  const lean = along.reduce((total, part, i) => total + part * n[i]!, 0);
  const edge = along.map((part, i) => part - lean * n[i]!);
  const squared = edge.reduce((total, part) => total + part * part, 0);
  if (!(squared > 0)) return false;
  for (const slope of [3, 6]) {
    const grown = n.reduce(
      (total, part, i) => total + part * (first[POINT + slope + i]! - first[slope + i]!),
      0,
    );
    edge.forEach((part, i) => {
      tilt[slope - 3 + i] = (-grown * part) / squared;
    });
  }
  return true;
}

/** Bounds the height of the whole stretch over the face it is highest above. */
function heightOver(min: Vector3, max: Vector3): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < 3; i += 1) {
    best = Math.max(best, overFace(i, 1, max[i]!), overFace(i, -1, -min[i]!));
  }
  return best;
}

function overFace(axis: number, sign: number, face: number): number {
  const p = _space.first;
  let least = Number.POSITIVE_INFINITY;
  for (const at of [axis, POINT + axis]) {
    const swing = Math.abs(p[at + 3]!) + Math.abs(p[at + 6]!) + p[at - axis + REST]!;
    least = Math.min(least, sign * p[at]! - face - swing);
  }
  return least;
}

function takeStretch(track: Float64Array, start: number, { from, to }: Element): void {
  const at = start * POINT;
  for (let i = 0; i < POINT; i += 1) {
    const near = track[at + i]!;
    const along = track[at + POINT + i]! - near;
    _space.first[i] = near + from * along;
    _space.first[POINT + i] = near + to * along;
  }
}

function swingOfStart(): number {
  const p = _space.first;
  return Math.hypot(p[3]!, p[4]!, p[5]!) + Math.hypot(p[6]!, p[7]!, p[8]!) + p[REST]!;
}

function lengthOfStretch(): number {
  const p = _space.first;
  return Math.hypot(p[POINT]! - p[0]!, p[POINT + 1]! - p[1]!, p[POINT + 2]! - p[2]!);
}

/** Bounds the gap of a chain, whose break points are seen from the ground, to a box. */
export function boxBounder({ track, radii, starts }: Pieces, min: Vector3, max: Vector3): Bounder {
  let coarse = false;
  const boundStretch = (enough: number): number => {
    aimAtBox(min, max);
    const height = heightOver(min, max);
    if (!(_space.distance > 0)) return height;
    _space.tilt.fill(0);
    let apart = tiltedBound(_space);
    if (apart < enough && squareToStretch(_space)) apart = Math.max(apart, tiltedBound(_space));
    return apart > 0 ? Math.max(apart, height) : height;
  };
  return {
    elements: stretches(radii.length, 1),
    isCoarse: () => coarse,
    swings: (cell) => swingsOf(track(cell)),
    bound: (cell: Cell, element, enough) => {
      const points = track(cell);
      if (points === null) return Number.NEGATIVE_INFINITY;
      if (points.length === 0) return Number.POSITIVE_INFINITY;
      const thick = radii[element.first]!;
      _space.secondCount = 8;
      writeCorners(_space, min, max);
      takeStretch(points, starts[element.first]!, element);
      const best = boundStretch(enough + thick);
      coarse = best <= 0 && lengthOfStretch() > SHORTEST_STRETCH + swingOfStart();
      return best - thick;
    },
  };
}
