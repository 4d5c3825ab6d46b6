/** The only place that converts between degrees and radians, inches and millimetres, pounds-force and newtons. */

/** Radians per degree. */
export const RADIANS_PER_DEGREE: number = Math.PI / 180;
/** Degrees per radian. */
export const DEGREES_PER_RADIAN: number = 180 / Math.PI;
/** Millimetres per inch, exact by definition (international yard, 1959). */
export const MM_PER_INCH: number = 25.4;

/** Newtons per pound-force, exact: the pound of 0.45359237 kg times standard gravity of 9.80665 m/s². */
export const NEWTONS_PER_POUND: number = 0.45359237 * 9.80665;

/** Degrees to radians. */
export function radians(degrees: number): number {
  return degrees * RADIANS_PER_DEGREE;
}

/** Radians to degrees. */
export function degrees(rad: number): number {
  return rad * DEGREES_PER_RADIAN;
}
