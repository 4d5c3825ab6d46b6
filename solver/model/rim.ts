/** Rims: diameters and flange heights by the rim tables, and the sections a wheel has when its file draws none. Lengths mm. */
import { MM_PER_INCH } from '../units.ts';
import { wheelThickness } from './defaults.ts';
import type { SectionPoint, Wheel } from './model.ts';

/** Specified diameters of 5° drop-centre rims by inch code. ISO 4000-2 and the ETRTO rim tables, from memory. */
const SPECIFIED_DIAMETERS: Readonly<Record<number, number>> = {
  14: 354.8,
  15: 380.2,
  16: 405.6,
  17: 436.6,
  18: 462.0,
  19: 487.4,
  20: 512.8,
  22: 563.6,
};

/**
 * Specified diameter of a rim, mm, over its bead seats. The table where it has the code; a half-inch code (16.5, 19.5, 22.5: a 15°
 * drop-centre rim) is its inches exactly; other codes follow the table's pattern, the inches less 0.8 below code 17 and plus 4.8
 * from it. Source: ISO 4000-2 and ETRTO, from memory.
 */
export function specifiedRimDiameter(code: number): number {
  const listed = SPECIFIED_DIAMETERS[code];
  if (listed !== undefined) return listed;
  if (code % 1 === 0.5) return code * MM_PER_INCH;
  return code * MM_PER_INCH + (code < 17 ? -0.8 : 4.8);
}

/** Height of a J flange above the specified diameter, mm. Rim tables, from memory; older tables have 17.5. */
export const FLANGE_HEIGHT = 17.3;

/** Width of a flange outboard of its bead seat, mm: half the inch by which a wheel is wider than its code. Common practice. */
const FLANGE_WIDTH: number = MM_PER_INCH / 2;

/** Diameter over the flanges' lips, mm. */
export function lipDiameter(wheel: Wheel): number {
  return specifiedRimDiameter(wheel.diameter) + 2 * FLANGE_HEIGHT;
}

/** Distance from the inner lip's edge to the mounting face, mm: half the overall width plus the offset. Common practice. */
export function backspacing(wheel: Wheel): number {
  return (wheel.width * MM_PER_INCH) / 2 + FLANGE_WIDTH + wheel.offset;
}

/** Where the barrel drops from the bead seats, from the width's ends, and how deep. Common practice, no source. */
const BEAD_SEAT = 22;
const DROP_START = 34;
const DROP_DEPTH = 17;

/** The metal's mid-surface from inner lip to outer lip, as [s, ρ] with s positive outboard of the wheel centre plane, mm. */
export function defaultWheelSection(wheel: Wheel): readonly SectionPoint[] {
  const half = (wheel.width * MM_PER_INCH) / 2;
  const rim = specifiedRimDiameter(wheel.diameter) / 2;
  const inset = wheelThickness(wheel) / 2;
  const edge = half + FLANGE_WIDTH - inset;
  const lip = rim + FLANGE_HEIGHT - inset;
  return [
    [-edge, lip],
    [-half, rim - inset],
    [-half + BEAD_SEAT, rim - inset],
    [-half + DROP_START, rim - DROP_DEPTH],
    [half - DROP_START, rim - DROP_DEPTH],
    [half - BEAD_SEAT, rim - inset],
    [half, rim - inset],
    [edge, lip],
  ];
}

/** Radius at which the default disc ends at the hub, mm. */
const DISC_INNER_RADIUS = 60;

/** The disc from mounting face to barrel, spokes filled in, as [s, ρ], mm. */
export function defaultDisc(wheel: Wheel): readonly SectionPoint[] {
  const half = (wheel.width * MM_PER_INCH) / 2;
  return [
    [wheel.offset, DISC_INNER_RADIUS],
    [half - DROP_START, specifiedRimDiameter(wheel.diameter) / 2 - DROP_DEPTH],
  ];
}

/** The mid-surface in force: the file's, or else the default. */
export function wheelSection(wheel: Wheel): readonly SectionPoint[] {
  return wheel.section ?? defaultWheelSection(wheel);
}

/** The disc in force: the file's, or else the default. */
export function wheelDisc(wheel: Wheel): readonly SectionPoint[] {
  return wheel.disc ?? defaultDisc(wheel);
}
