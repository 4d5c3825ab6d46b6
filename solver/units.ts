/** The only place that converts between degrees and radians, and inches and millimetres. */

/** Radians per degree. */
export const RADIANS_PER_DEGREE: number = Math.PI / 180;
/** Degrees per radian. */
export const DEGREES_PER_RADIAN: number = 180 / Math.PI;
/** Millimetres per inch, exact by definition (international yard, 1959). */
export const MM_PER_INCH: number = 25.4;

/** Degrees to radians. */
export function radians(degrees: number): number {
  return degrees * RADIANS_PER_DEGREE;
}

/** Radians to degrees. */
export function degrees(rad: number): number {
  return rad * DEGREES_PER_RADIAN;
}
