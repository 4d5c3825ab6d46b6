/**
 * Tie rod against a surface of revolution of its own wheel (metal or tyre): exact least distance and the two nearest
 * points (profileSearch.ts). Bends and the rod's diameters by length included.
 */
import type { Corner } from '../corner.ts';
import type { Pose } from '../linkage/solve.ts';
import type { SectionPoint } from '../model/model.ts';
import { type PlacedChain, placedStrands } from './placed.ts';
import { createProfileSearch, type ProfileSearch, projectPoints, writePoints } from './profile.ts';
import { searchProfile } from './profileSearch.ts';
import { type RodPieces, rodPieces } from './rodPieces.ts';
import { type Section, tyreSections, wheelSections } from './section.ts';

/** What the rod is nearest to. */
export type Place = Section['name'];

/** The answer, refilled by `rodGapInto`. Lengths mm, points in vehicle axes. */
export interface RodGap {
  readonly pieces: RodPieces;
  readonly sections: readonly Section[];
  /** Least distance between the surfaces; negative when they overlap, then minus the overlap. */
  gap: number;
  place: Place;
  /** Nearest point of the section, [s, ρ]. */
  readonly sectionPoint: [number, number];
  /** Point of the rod's centreline, and of the section's mid-surface in the same meridian plane. */
  readonly rodPoint: Float64Array;
  readonly wheelPoint: Float64Array;
  /** Distance along the rod from its outer joint to that point. */
  fromOuter: number;
  readonly placed: PlacedChain;
  readonly search: ProfileSearch;
}

export function createRodGap(corner: Corner, against: 'wheel' | 'tyre'): RodGap {
  const { model } = corner;
  const pieces = rodPieces(corner);
  const sections = against === 'wheel' ? wheelSections(model) : tyreSections(model);
  const placed = placedStrands('tieRod', [pieces]);
  return {
    pieces,
    sections,
    gap: Number.POSITIVE_INFINITY,
    place: against === 'wheel' ? 'barrel' : 'tyre',
    sectionPoint: [0, 0],
    rodPoint: new Float64Array(3),
    wheelPoint: new Float64Array(3),
    fromOuter: 0,
    placed,
    search: createProfileSearch(sections, placed.starts, placed.radii),
  };
}

/**
 * Fills `rod` with the exact least distance of the tie rod to its wheel sections in the pose of the buffer, whose parts
 * must be placed (`placeParts` or `measureInto`). Allocates nothing.
 */
export function rodGapInto(rod: RodGap, pose: Pose): void {
  const { placed, search, pieces } = rod;
  const { data } = pose;
  placed.place(data);
  projectPoints(search, placed.points, data);
  searchProfile(search);
  writePoints(search, data, rod.rodPoint, rod.wheelPoint);
  const { piece } = search;
  const start = pieces.lengths[piece]!;
  rod.gap = search.gap;
  rod.place = rod.sections[search.section]!.name;
  rod.sectionPoint[0] = search.s;
  rod.sectionPoint[1] = search.radius;
  rod.fromOuter = start + search.lambda * (pieces.lengths[piece + 1]! - start);
}

/** Section points for a picture or a table. */
export function sectionPoints(section: Section): SectionPoint[] {
  const { line } = section;
  return Array.from(
    { length: line.length / 2 },
    (_, i) => [line[2 * i]!, line[2 * i + 1]!] as const,
  );
}
