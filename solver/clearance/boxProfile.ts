/**
 * Sections of revolution against a box, whatever way the wheel stands: the distance of the sections to the box's image in
 * the (s, ρ) plane. Where they overlap, a thin section's gap is minus its half thickness, a solid one's minus the depth
 * of the box's deepest point in it. (Of a solid that is not convex, depths away from the image's outline are searched for
 * window by window, not proven.)
 */
import { Slot } from '../linkage/slots.ts';
import type { BoxOutline } from './boxOutline.ts';
import { type Deepest, placesOf } from './deepest.ts';
import { type ProfileSearch, projectPoints, writePoints } from './profile.ts';
import { searchProfile } from './profileSearch.ts';

/** Where the image's lower and upper bounds at some s are: on which pieces, at which shares, at which radii. */
const _slice = {
  low: 0.5,
  lowPiece: 0,
  lowLambda: 0.5,
  high: 0.5,
  highPiece: 0,
  highLambda: 0.5,
};

function takeSlice(radius: number, piece: number, lambda: number): void {
  if (radius < _slice.low) {
    _slice.low = radius;
    _slice.lowPiece = piece;
    _slice.lowLambda = lambda;
  }
  if (radius > _slice.high) {
    _slice.high = radius;
    _slice.highPiece = piece;
    _slice.highLambda = lambda;
  }
}

function radiusAt({ radial, starts }: ProfileSearch, piece: number, lambda: number): number {
  const at = 3 * starts[piece]!;
  let squared = 0;
  for (let i = 0; i < 3; i += 1) {
    const v = radial[at + i]! + lambda * (radial[at + 3 + i]! - radial[at + i]!);
    squared += v * v;
  }
  return Math.sqrt(squared);
}

/** True when (s, ρ) lies in the box's image; leaves the image's bounds at s in `_slice`. */
function isInImage(search: ProfileSearch, s: number, radius: number): boolean {
  const { axial, starts } = search;
  _slice.low = Number.POSITIVE_INFINITY;
  _slice.high = Number.NEGATIVE_INFINITY;
  for (let piece = 0; piece < starts.length; piece += 1) {
    const from = axial[starts[piece]!]!;
    const to = axial[starts[piece]! + 1]!;
    if (s < Math.min(from, to) || s > Math.max(from, to)) continue;
    const lambda = from === to ? 0 : (s - from) / (to - from);
    takeSlice(radiusAt(search, piece, lambda), piece, lambda);
    if (from === to) takeSlice(radiusAt(search, piece, 1), piece, 1);
  }
  return radius >= _slice.low && radius <= _slice.high;
}

/** Writes the radial vector of the box's point at the slice's s and a radius, between the slice's two bounds. */
function writeWithin(search: ProfileSearch, radius: number, out: Float64Array): void {
  const { radial, starts } = search;
  const { lowPiece, lowLambda, highPiece, highLambda } = _slice;
  const low = 3 * starts[lowPiece]!;
  const high = 3 * starts[highPiece]!;
  let vv = 0;
  let vw = 0;
  let ww = 0;
  for (let i = 0; i < 3; i += 1) {
    const v = radial[low + i]! + lowLambda * (radial[low + 3 + i]! - radial[low + i]!);
    const end = radial[high + i]! + highLambda * (radial[high + 3 + i]! - radial[high + i]!);
    vv += v * v;
    vw += v * (end - v);
    ww += (end - v) * (end - v);
  }
  const room = Math.max(0, vw * vw - ww * (vv - radius * radius));
  const share = ww > 0 ? Math.min(1, Math.max(0, (Math.sqrt(room) - vw) / ww)) : 0;
  for (let i = 0; i < 3; i += 1) {
    const v = radial[low + i]! + lowLambda * (radial[low + 3 + i]! - radial[low + i]!);
    const end = radial[high + i]! + highLambda * (radial[high + 3 + i]! - radial[high + i]!);
    out[i] = v + share * (end - v);
  }
}

/** True when the box is too far from the wheel centre to hold anything of the sections. */
function isOutOfReach(
  search: ProfileSearch,
  { min, max }: BoxOutline,
  pose: Float64Array,
): boolean {
  let squared = 0;
  for (let i = 0; i < 3; i += 1) {
    const x = pose[Slot.centre + i]!;
    const off = Math.max(0, min[i]! - x, x - max[i]!);
    squared += off * off;
  }
  for (const extent of search.extents) {
    const s = Math.max(Math.abs(extent[0]!), Math.abs(extent[1]!));
    if (s * s + extent[3]! * extent[3]! >= squared) return false;
  }
  return true;
}

/** Takes a place of a section inside the image for the answer. */
function takePlace(
  search: ProfileSearch,
  { s, radius }: Deepest,
  pose: Float64Array,
  onBox: Float64Array,
  onSection: Float64Array,
): void {
  search.s = s;
  search.radius = radius;
  writeWithin(search, radius, onBox);
  for (let i = 0; i < 3; i += 1) {
    const x = pose[Slot.centre + i]! + s * pose[Slot.hubAxis + i]! + onBox[i]!;
    onBox[i] = x;
    onSection[i] = x;
  }
}

/** Lowers the answer to that of a place deep inside the image, where it is less than what the outline gave. */
function searchWithin(
  search: ProfileSearch,
  pose: Float64Array,
  onBox: Float64Array,
  onSection: Float64Array,
): void {
  for (let which = 0; which < search.sections.length; which += 1) {
    const section = search.sections[which]!;
    const places = placesOf(section);
    for (let i = 0; i < places.length; i += 1) {
      const place = places[i]!;
      const gap = -place.depth - section.half;
      if (gap >= search.gap || !isInImage(search, place.s, place.radius)) continue;
      search.gap = gap;
      search.section = which;
      takePlace(search, place, pose, onBox, onSection);
    }
  }
}

/** Finds the least distance of the sections to the box, and both nearest points in vehicle axes. */
export function searchBox(
  search: ProfileSearch,
  box: BoxOutline,
  pose: Float64Array,
  onBox: Float64Array,
  onSection: Float64Array,
): void {
  box.place(pose);
  projectPoints(search, box.points, pose);
  searchProfile(search);
  writePoints(search, pose, onBox, onSection);
  if (!isOutOfReach(search, box, pose)) searchWithin(search, pose, onBox, onSection);
}
