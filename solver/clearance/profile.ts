/** What a search of pieces against sections of revolution works on: see profileSearch.ts. */
import { Slot } from '../linkage/slots.ts';
import { type Meridian, setMeridian } from './meridian.ts';
import type { Section } from './section.ts';

/** Pieces seen from the wheel, the sections, and the answer. Made once, refilled for every pose; lengths mm. */
export interface ProfileSearch {
  readonly sections: readonly Section[];
  /** Of each section: least and greatest s, least and greatest ρ. */
  readonly extents: readonly Float64Array[];
  /** Of each break point: axial place s, and the radial vector, in vehicle axes from the wheel centre. */
  readonly axial: Float64Array;
  readonly radial: Float64Array;
  /** Of each piece: its first break point (its second is the next one), and half its diameter. */
  readonly starts: Int32Array;
  readonly radii: Float64Array;
  readonly leastRadius: number;
  /** Least distance between the surfaces; inside a solid minus the depth of the deepest centreline's point too. */
  gap: number;
  /** Where: which piece, what share of it; which section, and its nearest point (s, ρ). */
  piece: number;
  lambda: number;
  section: number;
  s: number;
  radius: number;
  /** The piece tried first: where the least was the last time. It makes the rest quick to rule out. */
  hint: number;
}

function extentOf(line: Float64Array): Float64Array {
  const extent = Float64Array.of(line[0]!, line[0]!, line[1]!, line[1]!);
  for (let at = 2; at < line.length; at += 2) {
    extent[0] = Math.min(extent[0]!, line[at]!);
    extent[1] = Math.max(extent[1]!, line[at]!);
    extent[2] = Math.min(extent[2]!, line[at + 1]!);
    extent[3] = Math.max(extent[3]!, line[at + 1]!);
  }
  return extent;
}

export function createProfileSearch(
  sections: readonly Section[],
  starts: Int32Array,
  radii: Float64Array,
): ProfileSearch {
  const points = Math.max(...starts) + 2;
  return {
    sections,
    extents: sections.map(({ line }) => extentOf(line)),
    axial: new Float64Array(points),
    radial: new Float64Array(3 * points),
    starts,
    radii,
    leastRadius: Math.min(...radii),
    gap: Number.POSITIVE_INFINITY,
    piece: 0,
    lambda: 0.5,
    section: 0,
    s: 0.5,
    radius: 0.5,
    hint: 0,
  };
}

/** Writes s and the radial vector of every break point, given flat in vehicle axes. */
export function projectPoints(
  { axial, radial }: ProfileSearch,
  points: Float64Array,
  pose: Float64Array,
): void {
  const ax = pose[Slot.hubAxis]!;
  const ay = pose[Slot.hubAxis + 1]!;
  const az = pose[Slot.hubAxis + 2]!;
  for (let i = 0, at = 0; i < axial.length; i += 1, at += 3) {
    const x = points[at]! - pose[Slot.centre]!;
    const y = points[at + 1]! - pose[Slot.centre + 1]!;
    const z = points[at + 2]! - pose[Slot.centre + 2]!;
    const s = x * ax + y * ay + z * az;
    axial[i] = s;
    radial[at] = x - s * ax;
    radial[at + 1] = y - s * ay;
    radial[at + 2] = z - s * az;
  }
}

/** Loads a piece into a meridian. */
export function loadPiece(search: ProfileSearch, piece: number, meridian: Meridian): void {
  meridian.half = search.radii[piece]!;
  setMeridian(meridian, search.axial, search.radial, search.starts[piece]!);
}

/** Writes the nearest point of the centreline, and of the section's mid-surface in the same meridian plane, vehicle axes. */
export function writePoints(
  search: ProfileSearch,
  pose: Float64Array,
  onPiece: Float64Array,
  onSection: Float64Array,
): void {
  const { lambda, axial, radial } = search;
  const at = search.starts[search.piece]!;
  const s = axial[at]! + lambda * (axial[at + 1]! - axial[at]!);
  let squared = 0;
  for (let i = 0; i < 3; i += 1) {
    const v = (1 - lambda) * radial[3 * at + i]! + lambda * radial[3 * at + 3 + i]!;
    onPiece[i] = v;
    squared += v * v;
  }
  const stretch = squared > 0 ? search.radius / Math.sqrt(squared) : 0;
  for (let i = 0; i < 3; i += 1) {
    const a = pose[Slot.hubAxis + i]!;
    const centre = pose[Slot.centre + i]!;
    onSection[i] = centre + search.s * a + stretch * onPiece[i]!;
    onPiece[i] = centre + s * a + onPiece[i]!;
  }
}
