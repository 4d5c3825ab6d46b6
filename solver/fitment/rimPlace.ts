/** Where a wheel's lips and a tyre's sides stand, mm. Signed lengths along the hub axis are positive outboard. */
import { wheelSpacer, wheelThickness } from '../model/defaults.ts';
import type { Model, SectionPoint, Wheel } from '../model/model.ts';
import { wheelSection } from '../model/rim.ts';
import { tyreDimensions } from '../model/tyre.ts';

/** A place in the hub's section, mm: along the hub axis from the hub face, positive outboard; and its radius. */
export interface HubPlace {
  readonly fromFace: number;
  readonly radius: number;
}

function least(section: readonly SectionPoint[]): SectionPoint {
  return section.reduce((best, point) => (point[0] < best[0] ? point : best));
}

function greatest(section: readonly SectionPoint[]): SectionPoint {
  return section.reduce((best, point) => (point[0] > best[0] ? point : best));
}

/**
 * Distance from the wheel centre plane inboard to the inner lip's edge, mm: the section's innermost point and half the metal.
 * For the default section that is half the rim's width and half an inch, as the trade counts (common practice); for a drawn
 * contour it is what was drawn.
 */
export function innerReach(wheel: Wheel): number {
  return wheelThickness(wheel) / 2 - least(wheelSection(wheel))[0];
}

/** Position of the wheel centre plane along the hub axis from the hub face, mm: spacer less offset, positive outboard. */
export function centrePlane(wheel: Wheel): number {
  return wheelSpacer(wheel) - wheel.offset;
}

export interface RimPlaces {
  /** Edges of the lips: the section's ends, with half the metal beyond them. */
  readonly innerLip: HubPlace;
  readonly outerLip: HubPlace;
  /** What stands farthest inboard and farthest outboard of the hub face, tyre or wheel, mm. */
  readonly innermost: number;
  readonly outermost: number;
}

/** Lips and sides of a model's wheel and tyre, from the hub face. */
export function rimPlaces({ wheel, tyre }: Model): RimPlaces {
  const half = wheelThickness(wheel) / 2;
  const plane = centrePlane(wheel);
  const section = wheelSection(wheel);
  const [inner, outer] = [least(section), greatest(section)];
  const innerLip = { fromFace: plane + inner[0] - half, radius: inner[1] + half };
  const outerLip = { fromFace: plane + outer[0] + half, radius: outer[1] + half };
  const side = tyreDimensions(tyre, wheel).sectionWidth / 2;
  return {
    innerLip,
    outerLip,
    innermost: Math.min(innerLip.fromFace, plane - side),
    outermost: Math.max(outerLip.fromFace, plane + side),
  };
}
