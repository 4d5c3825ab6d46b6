/**
 * A box as it is seen from a surface of revolution: straight pieces whose image in the (s, ρ) plane is the whole outline
 * of the box's image there. For a given s, ρ over the box is greatest at an edge, and least at an edge, or at a face's
 * point in the meridian plane normal to the face, or on the axis where that runs through the box. So the nearest point
 * of any section outside of the image is nearest to one of these pieces, which makes the box a case for profileSearch.ts.
 */
import { Slot } from '../linkage/slots.ts';
import type { Vector3 } from '../model/model.ts';
import type { PlacedChain } from './placed.ts';

const EDGES = 12;
/** Both halves of each face's line, on either side of the axis; then the axis itself. */
const HALVES = 12;
const PIECES: number = EDGES + HALVES + 1;
/** Distance, mm, at which a face's line ends before the axis: ρ has no kink along a piece then. */
const OFF_AXIS = 1e-6;
/** Part of a direction below which it runs along nothing. */
const NO_DIRECTION = 1e-12;

export interface BoxOutline extends PlacedChain {
  readonly min: Vector3;
  readonly max: Vector3;
}

function writeEdges(points: Float64Array, min: Vector3, max: Vector3): void {
  let at = 0;
  for (let axis = 0; axis < 3; axis += 1) {
    for (let corner = 0; corner < 4; corner += 1) {
      const j = (axis + 1) % 3;
      const k = (axis + 2) % 3;
      points[at + axis] = min[axis]!;
      points[at + 3 + axis] = max[axis]!;
      for (const end of [at, at + 3]) {
        points[end + j] = corner % 2 === 0 ? min[j]! : max[j]!;
        points[end + k] = corner < 2 ? min[k]! : max[k]!;
      }
      at += 6;
    }
  }
}

/** The part of a line that is left, and a piece of it, in the line's own parameter. Refilled for every line. */
const _line = { low: 0.5, high: 0.5, from: 0.5, to: 0.5 };
const _base = new Float64Array(3);
const _along = new Float64Array(3);

/** Cuts the line to where its coordinate `axis` lies in the box. */
function clip(axis: number, min: Vector3, max: Vector3): void {
  const along = _along[axis]!;
  const low = min[axis]! - _base[axis]!;
  const high = max[axis]! - _base[axis]!;
  if (Math.abs(along) < NO_DIRECTION) {
    if (low > 0 || high < 0) _line.high = Number.NEGATIVE_INFINITY;
    return;
  }
  _line.low = Math.max(_line.low, Math.min(low / along, high / along));
  _line.high = Math.min(_line.high, Math.max(low / along, high / along));
}

/** Writes the piece of the line between `from` and `to`; where nothing is left, the box's first corner twice. */
function writePiece(points: Float64Array, piece: number): void {
  const { from, to } = _line;
  const at = 6 * piece;
  for (let i = 0; i < 3; i += 1) {
    const isLeft = from < to;
    points[at + i] = isLeft ? _base[i]! + from * _along[i]! : points[i]!;
    points[at + 3 + i] = isLeft ? _base[i]! + to * _along[i]! : points[i]!;
  }
}

/**
 * Writes a face's line, the face's plane cut by the meridian plane normal to it, in two halves. It runs through the wheel
 * centre's foot on the face, along the hub axis's part in the face.
 */
function writeFaceLine(box: BoxOutline, pose: Float64Array, axis: number, side: 0 | 1): void {
  const { points, min, max } = box;
  const j = (axis + 1) % 3;
  const k = (axis + 2) % 3;
  const height = side === 0 ? min[axis]! : max[axis]!;
  for (let i = 0; i < 3; i += 1) {
    _base[i] = i === axis ? height : pose[Slot.centre + i]!;
    _along[i] = i === axis ? 0 : pose[Slot.hubAxis + i]!;
  }
  const size = Math.sqrt(_along[j]! * _along[j]! + _along[k]! * _along[k]!);
  const isAcross = size < NO_DIRECTION;
  if (isAcross) _along[j] = 1;
  _line.low = Number.NEGATIVE_INFINITY;
  _line.high = Number.POSITIVE_INFINITY;
  clip(j, min, max);
  clip(k, min, max);
  const piece = EDGES + 4 * axis + 2 * side;
  // The line meets the axis where that pierces the face's plane.
  const pierced = (height - pose[Slot.centre + axis]!) / pose[Slot.hubAxis + axis]!;
  const turn = isAcross ? 0 : pierced;
  const room = isAcross ? OFF_AXIS : OFF_AXIS / size;
  const isCut = turn > _line.low && turn < _line.high;
  _line.from = _line.low;
  _line.to = isCut ? turn - room : _line.high;
  writePiece(points, piece);
  _line.from = isCut ? turn + room : 0.5;
  _line.to = isCut ? _line.high : 0.5;
  writePiece(points, piece + 1);
}

function writeAxis({ points, min, max }: BoxOutline, pose: Float64Array): void {
  for (let i = 0; i < 3; i += 1) {
    _base[i] = pose[Slot.centre + i]!;
    _along[i] = pose[Slot.hubAxis + i]!;
  }
  _line.low = Number.NEGATIVE_INFINITY;
  _line.high = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 3; i += 1) clip(i, min, max);
  _line.from = _line.low;
  _line.to = _line.high;
  writePiece(points, PIECES - 1);
}

/** The outline's pieces, of no thickness, written anew for every pose. */
export function createBoxOutline(min: Vector3, max: Vector3): BoxOutline {
  const points = new Float64Array(6 * PIECES);
  writeEdges(points, min, max);
  const box: BoxOutline = {
    min,
    max,
    points,
    starts: Int32Array.from({ length: PIECES }, (_, i) => 2 * i),
    radii: new Float64Array(PIECES),
    place: (pose) => {
      for (let axis = 0; axis < 3; axis += 1) {
        writeFaceLine(box, pose, axis, 0);
        writeFaceLine(box, pose, axis, 1);
      }
      writeAxis(box, pose);
    },
  };
  return box;
}
